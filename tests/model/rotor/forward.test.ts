import { describe, expect, it } from "vitest";
import { Rotor } from "#model/rotor/bemt";
import {
  advanceRatio,
  advancingTipMach,
  type Craft,
  craftOf,
  levelInducedVelocity,
  levelPower,
  parasitePower,
  retreatingMargin,
} from "#model/rotor/forward";
import { sections } from "#model/rotor/section";

/** A 10 t helicopter: inputs of Eli-TAARG, University of Naples Federico II (after Tognaccini's lectures). */
const [weight, radius, tipSpeed, density, sigma, cd] = [9979.03 * 9.81, 8.18, 220.98, 1.225, 0.082, 0.01];
const area = Math.PI * radius ** 2;
const heavy: Craft = {
  weight,
  radius,
  tipSpeed,
  density,
  dragArea: 0.007 * area,
  inducedFactor: 1.15,
  profilePower: (density * area * tipSpeed ** 3 * sigma * cd) / 8,
};

/** Airspeed of least power, m/s, from a hundred steps to the metre. */
const leastPowerSpeed = (craft: Craft): number => {
  const speeds = Array.from({ length: 13_000 }, (_, i) => i / 100);
  return speeds.reduce((best, speed) =>
    levelPower(craft, speed).total < levelPower(craft, best).total ? speed : best,
  );
};

describe("level flight", () => {
  it("Glauert: vi/vh = 1, 0.7861514, 0.4858683, 0.2495150 at V/vh = 0, 1, 2, 4 (closed form)", () => {
    const at = (airspeed: number) => levelInducedVelocity({ hoverVelocity: 1, airspeed });
    expect(at(0)).toBeCloseTo(1, 12);
    expect(at(1)).toBeCloseTo(0.7861513778, 9);
    expect(at(2)).toBeCloseTo(0.4858682718, 9);
    expect(at(4)).toBeCloseTo(0.2495150262, 9);
    expect(at(1e5)).toBeCloseTo(1e-5, 15);
  });

  it("power by causes of a 10 t helicopter at 0 and 60 m/s (Eli-TAARG, University of Naples)", () => {
    const [hover, fast] = [levelPower(heavy, 0), levelPower(heavy, 60)];
    expect(hover.induced / 1_552_200).toBeCloseTo(1, 3);
    expect(hover.profile / 284_800).toBeCloseTo(1, 3);
    expect(hover.total / 1_837_000).toBeCloseTo(1, 3);
    // There thrust is the weight alone; drag makes it 0.7 % more here.
    expect(Math.abs(fast.induced / 356_100 - 1)).toBeLessThan(0.01);
    expect(fast.profile / 383_500).toBeCloseTo(1, 3);
    expect(fast.parasite / 194_700).toBeCloseTo(1, 3);
    expect(Math.abs(fast.total / 934_300 - 1)).toBeLessThan(0.004);
  });

  it("speed for least power: 53.04 m/s in closed form, less with profile growth (Leishman ch. 5)", () => {
    const vh = Math.sqrt(weight / (2 * density * area));
    const closed = vh * ((4 * 1.15 * area) / (3 * heavy.dragArea)) ** 0.25;
    expect(closed).toBeCloseTo(53.0398173506, 6);
    expect(Math.abs(leastPowerSpeed({ ...heavy, profilePower: 0 }) / closed - 1)).toBeLessThan(0.01);
    const real = leastPowerSpeed(heavy);
    expect(real).toBeLessThan(closed);
    expect(real).toBeGreaterThan(0.8 * closed);
  });

  it("profile power grows by 1.423 at mu 0.3 (K = 4.7, Stepniewski and Keys)", () => {
    expect(levelPower(heavy, 0.3 * tipSpeed).profile / heavy.profilePower).toBeCloseTo(1.423, 9);
  });

  it("tip speed 146.6 m/s, mu 0.2046, advancing tip Mach 0.5190 (R 0.7 m, 2,000 rpm, 30 m/s)", () => {
    const tip = ((2000 * Math.PI) / 30) * 0.7;
    expect(tip).toBeCloseTo(146.6077, 4);
    expect(advanceRatio({ airspeed: 30, tipSpeed: tip })).toBeCloseTo(0.2046278, 6);
    expect(advancingTipMach({ tipSpeed: tip, airspeed: 30, soundSpeed: 340.294 })).toBeCloseTo(0.5189855, 6);
    expect(parasitePower({ density: 1.2, airspeed: 10, dragArea: 0.01 })).toBeCloseTo(6, 12);
  });
});

describe("a model in level flight", () => {
  const section = sections["symmetric-12"];
  const geometry = { blades: 2, radius: 0.7, rootCutout: 0.1, chordRoot: 0.06, chordTip: 0.06, section };
  const rotor = new Rotor(geometry, { density: 1.2, viscosity: 1.8e-5, soundSpeed: 340 }).fly(200, 0);

  it("takes its induced factor and profile power from its own hover", () => {
    const craft = craftOf(rotor, 50, 0.02)!;
    const hover = levelPower(craft, 0);
    expect(hover.induced).toBeCloseTo(rotor.inducedPower, 9);
    expect(hover.profile).toBeCloseTo(rotor.profilePower, 9);
    const best = leastPowerSpeed(craft);
    expect(levelPower(craft, best).total).toBeLessThan(0.85 * hover.total);
    expect(craftOf(rotor, 5000, 0.02)).toBeNull();
  });

  it("comes nearer to the retreating blades' stall with speed and with load", () => {
    const at = (loading: number, ratio: number) =>
      retreatingMargin(section, { loading, advanceRatio: ratio, tipReynolds: 5e5, tipMach: 0.4 })!;
    expect(at(0.04, 0)).toBeGreaterThan(at(0.04, 0.2));
    expect(at(0.04, 0.2)).toBeGreaterThan(at(0.06, 0.2));
    expect(at(0.08, 0.05)).toBeGreaterThan(0);
    // Common practice: rotors at CT / sigma 0.08 are stalled on the retreating side by mu 0.35.
    expect(at(0.08, 0.35)).toBeLessThan(0);
    expect(retreatingMargin(section, { loading: 0.05, advanceRatio: 1, tipReynolds: 5e5, tipMach: 0.4 })).toBeNull();
  });
});
