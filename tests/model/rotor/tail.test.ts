import { describe, expect, it } from "vitest";
import { Rotor } from "#model/rotor/bemt";
import { linearSection, sections } from "#model/rotor/section";
import { tailRotor } from "#model/rotor/tail";

const air = { density: 1.225, viscosity: 1.789e-5, soundSpeed: 340.3 };

describe("the tail rotor", () => {
  /** A 10 t helicopter: Eli-TAARG, University of Naples Federico II: R 1.7 m, sigma 0.188, tip 208.79 m/s, arm 10.73 m. */
  it("of a 10 t helicopter in hover: 6,337 N, 147 kW, 8 % of the main rotor's power (closed form there)", () => {
    const chord = (0.188 * Math.PI * 1.7) / 4;
    const geometry = {
      blades: 4,
      radius: 1.7,
      rootCutout: 0.3,
      chordRoot: chord,
      chordTip: chord,
      section: linearSection(5.73, 0.01),
    };
    const speed = 220.98 / 8.18;
    const held = tailRotor(new Rotor(geometry, air), {
      torque: 1_836_933 / speed,
      speed,
      arm: 10.73,
      ratio: 208.79 / 1.7 / speed,
    });
    if (!held.ok) throw new Error(held.words);
    expect(Math.abs(held.thrust / 6337.15 - 1)).toBeLessThan(1e-4);
    // Theirs has kappa 1.15; the annuli here lose more.
    expect(held.power / 146_800).toBeGreaterThan(0.95);
    expect(held.power / 146_800).toBeLessThan(1.15);
    expect(held.share).toBeCloseTo(held.power / 1_836_933, 9);
  });

  const model = new Rotor(
    { blades: 2, radius: 0.13, rootCutout: 0.03, chordRoot: 0.028, chordTip: 0.028, section: sections["symmetric-12"] },
    air,
  );

  it("of a model: 1,000 W at 1,500 rpm on a 0.8 m arm is 6.36620 N m and 7.95775 N (definition)", () => {
    const speed = (1500 * Math.PI) / 30;
    const held = tailRotor(model, { torque: 1000 / speed, speed, arm: 0.8, ratio: 4.6 });
    if (!held.ok) throw new Error(held.words);
    expect(held.thrust).toBeCloseTo(7.957747, 6);
    expect(held.shaftTorque * speed).toBeCloseTo(held.power, 9);
    // Share of main power in hover: 10 % for full-scale helicopters, give or take 6 (Leishman, from memory).
    expect(Math.abs(held.share - 0.1)).toBeLessThan(0.06);
  });

  it("that can't hold says how much it has", () => {
    const held = tailRotor(model, { torque: 200, speed: 150, arm: 0.8, ratio: 4.6 });
    expect(held.ok).toBe(false);
    if (held.ok) return;
    expect(held.why).toBe("stalled");
    expect(held.most).toBeGreaterThan(5);
    expect(held.words).toContain("stall");
  });

  it("pushes the other way with the other torque", () => {
    const at = (torque: number) => tailRotor(model, { torque, speed: 150, arm: 0.8, ratio: 4.6 });
    const [one, other] = [at(3), at(-3)];
    if (!one.ok || !other.ok) throw new Error("it holds");
    expect(other.collective).toBeCloseTo(-one.collective, 9);
    expect(other.power).toBeCloseTo(one.power, 6);
  });
});
