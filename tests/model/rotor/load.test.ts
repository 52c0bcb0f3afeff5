import { describe, expect, it } from "vitest";
import { hover } from "#model/rotor/bemt";
import { rotorLoad } from "#model/rotor/load";
import { sections } from "#model/rotor/section";

const air = { density: 1.225, viscosity: 1.789e-5, soundSpeed: 340.3 };
const geometry = {
  blades: 2,
  radius: 0.7,
  rootCutout: 0.1,
  chordRoot: 0.06,
  chordTip: 0.06,
  section: sections["symmetric-12"],
};

describe("a rotor as its shaft sees it", () => {
  const load = rotorLoad(geometry, air);

  it("is the rotor, whatever it was asked before", () => {
    for (const state of [
      { speed: 200, collective: 0.1 },
      { speed: 200, collective: 0.1, climb: 3 },
      { speed: 150, collective: -0.05 },
      { speed: 200, collective: 0.1 },
      { speed: 0, collective: 0.1 },
    ]) {
      const r = hover(geometry, air, state);
      expect(load.torqueAt(state)).toBe(r.torque);
      expect(load.thrustAt(state)).toBe(r.thrust);
    }
  });

  it("turns thrust into collective and torque", () => {
    const task = { speed: 200, thrust: 60, climb: 1 };
    const collective = load.collectiveForThrust(task)!;
    expect(load.torqueAt({ speed: 200, collective: 0.2 })).toBeGreaterThan(0);
    const r = hover(geometry, air, { speed: 200, collective, climb: 1 });
    expect(r.thrust).toBeCloseTo(60, 4);
    expect(load.torqueForThrust(task)).toBeCloseTo(r.torque, 9);
    expect(load.torqueForThrust(task)).toBeCloseTo(r.torque, 9);
  });

  it("has no answer beyond stall or standing still, but for no thrust at all", () => {
    expect(load.collectiveForThrust({ speed: 200, thrust: 1e4 })).toBeNull();
    expect(load.torqueForThrust({ speed: 200, thrust: 1e4 })).toBeNull();
    expect(load.torqueForThrust({ speed: 0, thrust: 10 })).toBeNull();
    expect(load.torqueForThrust({ speed: 0, thrust: 0 })).toBe(0);
  });

  it("answers beside a stall as a rotor does that was never asked before", () => {
    // Speeds close together and thrusts about the stall: whoever remembers one stall must not take it for another.
    const used = rotorLoad(geometry, air);
    let nulls = 0;
    for (let i = 0; i < 120; i++) {
      const speed = 160 + ((i * 37) % 41);
      const thrust = (0.75 + ((i * 13) % 29) / 40) * 200 * (speed / 180) ** 2;
      const mine = used.collectiveForThrust({ speed, thrust });
      const fresh = rotorLoad(geometry, air).collectiveForThrust({ speed, thrust });
      if (fresh === null) nulls += 1;
      expect(mine).toBe(fresh);
    }
    expect(nulls).toBeGreaterThan(20);
    expect(nulls).toBeLessThan(100);
  });
});
