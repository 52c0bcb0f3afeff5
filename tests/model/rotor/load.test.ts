import { describe, expect, it } from "vitest";
import { hover } from "#model/rotor/bemt";
import { rotorLoad } from "#model/rotor/load";
import { sections } from "#model/rotor/section";
import { shaftTorque, tailThrust } from "#model/rotor-load";
import { linearSection } from "../oracle/ideal.ts";

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

describe("a tail rotor, as a load on the main shaft", () => {
  it("of a 10 t helicopter in hover: 6,337 N, 147 kW, 8 % of the main rotor's power (closed form there)", () => {
    // Eli-TAARG, University of Naples Federico II: R 1.7 m, sigma 0.188, tip 208.79 m/s, arm 10.73 m.
    const chord = (0.188 * Math.PI * 1.7) / 4;
    const speed = 220.98 / 8.18;
    const [torque, arm, ratio] = [1_836_933 / speed, 10.73, 208.79 / 1.7 / speed];
    const section = linearSection(5.73, 0.01);
    const rotor = rotorLoad(
      { blades: 4, radius: 1.7, rootCutout: 0.3, chordRoot: chord, chordTip: chord, section },
      air,
    );
    expect(Math.abs(tailThrust(torque, arm) / 6337.15 - 1)).toBeLessThan(1e-4);
    const power = (shaftTorque(speed, torque, { rotor, arm, ratio })! - torque) * speed;
    // Theirs has kappa 1.15; the annuli here lose more.
    expect(power / 146_800).toBeGreaterThan(0.95);
    expect(power / 146_800).toBeLessThan(1.15);
  });

  it("pushes the other way with the other torque", () => {
    const small = { ...geometry, radius: 0.13, rootCutout: 0.03, chordRoot: 0.028, chordTip: 0.028 };
    const rotor = rotorLoad(small, air);
    const at = (torque: number) => rotor.torqueForThrust({ speed: 690, thrust: tailThrust(torque, 0.8) })!;
    expect(at(-3)).toBeCloseTo(at(3), 9);
  });
});
