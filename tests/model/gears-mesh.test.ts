import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { demos } from "#machine/demos";
import {
  centreDistance,
  inverseInvolute,
  involute,
  meshOf,
  pinionFit,
  shiftedDistance,
  undercutLimit,
} from "#model/gears-mesh";

const degree = Math.PI / 180;
const inch = 0.0254;

describe("published pairs", () => {
  it("the profile-shifted pair of Bolsover (items 1-20)", () => {
    const mesh = meshOf({
      module: 3e-3,
      pinionTeeth: 12,
      mainTeeth: 24,
      pinionShift: 0.6,
      mainShift: 0.36,
      pinionTip: 44.84e-3,
      mainTip: 79.4e-3,
      distance: 56.5e-3,
    })!;
    expect(centreDistance({ module: 3, pinionTeeth: 12, mainTeeth: 24 })).toBe(54);
    expect(Math.abs(involute(20 * degree) - 0.014904)).toBeLessThan(5e-7);
    expect(Math.abs(mesh.workingAngle / degree - 26.0888)).toBeLessThan(6e-5);
    expect(Math.abs(involute(mesh.workingAngle) - 0.034317)).toBeLessThan(1.5e-6);
    expect(Math.abs(mesh.pinionBase * 1e3 - 33.8289)).toBeLessThan(5e-5);
    expect(Math.abs(mesh.mainBase * 1e3 - 67.6579)).toBeLessThan(6e-5);
    expect(Math.abs(mesh.pinionWorking * 1e3 - 37.667)).toBeLessThan(5e-4);
    expect(Math.abs(mesh.mainWorking * 1e3 - 75.333)).toBeLessThan(5e-4);
    expect(Math.abs(mesh.contactRatio - 1.202)).toBeLessThan(6e-4);
  });

  it("the distance that follows from its shift (general gear handbook, from memory)", () => {
    expect(Math.abs(shiftedDistance(3, 36, 0.96) - 56.4999)).toBeLessThan(1e-4);
  });

  it("the pair of Shigley, example 13-1 (from memory)", () => {
    // Diametral pitch 2 per inch, 16 and 40 teeth; then the distance grows by a quarter inch.
    const module = inch / 2;
    const pair = { module, pinionTeeth: 16, mainTeeth: 40 };
    expect(centreDistance(pair) / inch).toBeCloseTo(14, 9);
    const mesh = meshOf({ ...pair, distance: 14.25 * inch })!;
    expect(Math.abs(mesh.pinionBase / 2 / inch - 3.76)).toBeLessThan(0.005);
    expect(Math.abs(mesh.mainBase / 2 / inch - 9.4)).toBeLessThan(0.005);
    expect(Math.abs(mesh.pinionWorking / inch - 8.143)).toBeLessThan(5e-4);
    expect(Math.abs(mesh.mainWorking / inch - 20.357)).toBeLessThan(5e-4);
    expect(Math.abs(mesh.workingAngle / degree - 22.59)).toBeLessThan(0.03);
  });
});

describe("contact ratio", () => {
  it("follows the closed form of ISO 21771 and its limit", () => {
    const mesh = meshOf({ module: 1e-3, pinionTeeth: 20, mainTeeth: 40 })!;
    expect(Math.abs(mesh.contactRatio - 1.63519)).toBeLessThan(1e-4);
    // Rack on rack: 4 / (pi sin 2a) = 1.98081.
    const racks = meshOf({ module: 1, pinionTeeth: 1e6, mainTeeth: 1e6 })!;
    expect(Math.abs(racks.contactRatio - 1.98081)).toBeLessThan(1e-4);
  });

  it("warns of a pinion that the cutter undercuts", () => {
    // z = 2 / sin² a: 17, 32 and 12 teeth in any gear handbook.
    expect(Math.abs(undercutLimit() - 17.097)).toBeLessThan(1e-3);
    expect(Math.abs(undercutLimit(14.5 * degree) - 31.903)).toBeLessThan(0.01);
    expect(Math.abs(undercutLimit(25 * degree) - 11.198)).toBeLessThan(0.01);
    expect(meshOf({ module: 7e-4, pinionTeeth: 12, mainTeeth: 120 })!.undercut).toBe(true);
    expect(meshOf({ module: 7e-4, pinionTeeth: 12, mainTeeth: 120, pinionShift: 0.3 })!.undercut).toBe(false);
    expect(meshOf({ module: 7e-4, pinionTeeth: 18, mainTeeth: 120 })!.undercut).toBe(false);
  });

  it("has no answer for gears that don't touch or are pressed into each other", () => {
    const pair = { module: 1e-3, pinionTeeth: 20, mainTeeth: 40 };
    expect(meshOf({ ...pair, distance: 33e-3 })).toBeNull();
    expect(meshOf({ ...pair, distance: 20e-3 })).toBeNull();
  });
});

describe("the involute", () => {
  it("is undone by its inverse", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1.4, noNaN: true }), (angle) => {
        expect(inverseInvolute(involute(angle))).toBeCloseTo(angle, angle < 0.01 ? 4 : 9);
      }),
    );
    // General gear handbook, table 4.3 (from memory): 26.0886 degrees.
    const value = involute(20 * degree) + (2 * Math.tan(20 * degree) * 0.96) / 36;
    expect(Math.abs(inverseInvolute(value) / degree - 26.0886)).toBeLessThan(2e-4);
  });
});

describe("another pinion", () => {
  it("moves the motor by half a module a tooth", () => {
    // a = m (z1 + z2) / 2: module 0.7 mm, 12 to 13 teeth.
    expect(pinionFit(0.7e-3, 12, 13).shift).toBeCloseTo(0.35e-3, 12);
    const shift = (z: number) => centreDistance({ module: 0.7e-3, pinionTeeth: z, mainTeeth: 120 });
    expect(pinionFit(0.7e-3, 15, 11).shift).toBeCloseTo(shift(11) - shift(15), 12);
  });

  it("fits while the mount can follow", () => {
    expect(pinionFit(1e-3, 12, 14, 1e-3, 0).fits).toBe(true);
    expect(pinionFit(1e-3, 12, 15, 1e-3, 0).fits).toBe(false);
    expect(pinionFit(1e-3, 12, 11, 1e-3, 0).fits).toBe(false);
    expect(pinionFit(1e-3, 12, 11, 0, 0.5e-3).fits).toBe(true);
  });
});

describe("the demo machines", () => {
  // ISO 54:1996 from 1 mm up, DIN 780 and JIS B 1701 below, first and second choice, mm (from memory).
  const first = [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.8, 1, 1.25, 1.5, 2, 2.5, 3];
  const second = [0.15, 0.25, 0.35, 0.45, 0.55, 0.7, 0.75, 0.9, 1.125, 1.375, 1.75, 2.25, 2.75];

  it.each(demos)("have a standard module: $name", ({ gears }) => {
    expect([...first, ...second]).toContain(gears.moduleMm);
  });
});
