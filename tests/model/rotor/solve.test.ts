import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { hover, Rotor } from "#model/rotor/bemt";
import { sections } from "#model/rotor/section";
import { collectiveForThrust, speedForPower } from "#model/rotor/solve";

const air = { density: 1.225, viscosity: 1.789e-5, soundSpeed: 340.3 };
const geometry = {
  blades: 2,
  radius: 0.7,
  rootCutout: 0.1,
  chordRoot: 0.06,
  chordTip: 0.06,
  section: sections["symmetric-12"],
};

describe("collective for a thrust", () => {
  const rotor = new Rotor(geometry, air);

  it("gives that thrust back, either sign, in climb and descent", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 60, max: 260, noNaN: true }),
        fc.double({ min: -0.09, max: 0.09, noNaN: true }),
        fc.double({ min: -0.05, max: 0.1, noNaN: true }),
        (speed, loading, ratio) => {
          const tip = speed * 0.7;
          const thrust = loading * rotor.blade.solidity * air.density * Math.PI * 0.49 * tip * tip;
          const found = collectiveForThrust(rotor.fly(speed, ratio * tip), thrust);
          if (!found.ok) throw new Error(found.words);
          const back = hover(geometry, air, { speed, collective: found.collective, climb: ratio * tip });
          expect(Math.abs(back.thrust - thrust)).toBeLessThanOrEqual(1e-6 * Math.abs(thrust) + 1e-6);
        },
      ),
    );
  });

  it.each([1, -1])("finds the last newton below the stall, and says how much there is beyond it (%s)", (sign) => {
    const none = collectiveForThrust(rotor.fly(120, 0), sign * 1e4);
    if (none.ok) throw new Error("no rotor lifts that");
    expect(none.why).toBe("stalled");
    expect(Math.sign(none.most)).toBe(sign);
    expect(none.words).toMatch(/stall.*N at .* degrees/);
    const peak = hover(geometry, air, { speed: 120, collective: none.at });
    expect(peak.thrust).toBeCloseTo(none.most, 9);
    for (const step of [-0.001, 0.001]) {
      expect(Math.abs(hover(geometry, air, { speed: 120, collective: none.at + step }).thrust)).toBeLessThan(
        Math.abs(none.most),
      );
    }
    const near = collectiveForThrust(rotor.fly(120, 0), 0.999 * none.most);
    expect(near.ok).toBe(true);
    expect(rotor.thrust / none.most).toBeCloseTo(0.999, 6);
    expect(collectiveForThrust(rotor.fly(120, 0), 1.001 * none.most).ok).toBe(false);
  });

  it("has no answer for a rotor that stands still", () => {
    const none = collectiveForThrust(rotor.fly(0, 0), 10);
    expect(none).toMatchObject({ ok: false, why: "standing still", most: 0 });
  });
});

describe("speed for a power", () => {
  it("takes that power", () => {
    for (const [power, collective] of [
      [0.01, 0],
      [50, 0],
      [1000, 0.12],
      [2000, -0.15],
    ] as const) {
      const found = speedForPower(geometry, air, { power, collective });
      if (!found.ok) throw new Error(found.words);
      expect(hover(geometry, air, { speed: found.speed, collective }).power / power).toBeCloseTo(1, 8);
    }
  });

  it("says why there is none", () => {
    expect(speedForPower(geometry, air, { power: 0, collective: 0.1 })).toMatchObject({ ok: false });
    const much = speedForPower(geometry, air, { power: 1e7, collective: 0.1 });
    expect(much.ok ? "" : much.words).toContain("Mach");
  });
});
