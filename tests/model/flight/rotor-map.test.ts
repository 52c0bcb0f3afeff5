import { describe, expect, it } from "vitest";
import { mapOfLoad, tailTorqueOf } from "#model/flight/rotor-map";
import { type RotorLoad, shaftTorque } from "#model/rotor-load";
import { closedRotor } from "../oracle/closed-rotor.ts";

const rotor = closedRotor({ blades: 2, radius: 0.5, chord: 0.04, rootCutout: 0.08, density: 1.2 });
const tail = {
  rotor: closedRotor({ blades: 2, radius: 0.09, chord: 0.02, rootCutout: 0.02, density: 1.2 }),
  arm: 0.6,
  ratio: 4.5,
};

describe("rotors as maps", () => {
  it("give what the rotor gives", () => {
    const map = mapOfLoad(rotor);
    expect(map.thrust(220, 0.1, 3)).toBe(rotor.thrustAt({ speed: 220, collective: 0.1, climb: 3 }));
    expect(map.torque(220, 0.1, 3)).toBe(rotor.torqueAt({ speed: 220, collective: 0.1, climb: 3 }));
    expect(mapOfLoad(rotor)).toBe(map);
  });

  it("give the tail's share of the shaft's torque", () => {
    const torque = tailTorqueOf(tail);
    for (const main of [-0.4, 0, 0.3, 1.2, 2]) {
      expect(Math.abs(main + torque(main, 220) - shaftTorque(220, main, tail)!)).toBeLessThan(1e-3 * torque(2, 220));
    }
    expect(torque(500, 220)).toBeNaN();
    expect(tailTorqueOf(tail)).toBe(torque);
  });

  it("hold no more than a tail's thrust at its stall, either way", () => {
    // Thrust that rises as a sine and falls past its peak at 0.2 rad; torque that goes on rising.
    const stalling: RotorLoad = {
      thrustAt: ({ collective }) => Math.sin((collective / 0.2) * (Math.PI / 2)),
      torqueAt: ({ collective }) => 1 + collective * collective,
      collectiveForThrust: () => null,
      torqueForThrust: () => null,
    };
    const torque = tailTorqueOf({ rotor: stalling, arm: 0.5, ratio: 4 });
    for (const share of [-0.9, -0.5, 0, 0.5, 0.9]) {
      const collective = (0.2 * Math.asin(share)) / (Math.PI / 2);
      expect(torque(0.5 * share, 200)).toBeCloseTo(4 * (1 + collective ** 2), 3);
    }
    expect(torque(0.55, 200)).toBeNaN();
    expect(torque(-0.55, 200)).toBeNaN();
  });
});
