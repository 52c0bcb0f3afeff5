import { describe, expect, it } from "vitest";
import { meshOf, undercutLimit } from "#model/gears-mesh";
import { undercutContactRatio } from "#model/undercut";

const degree = Math.PI / 180;

describe("contact of an undercut pinion", () => {
  it.each([
    // Worked by hand: sqrt((z + 2)² - (z cos 20°)²) / (2 pi cos 20°), the line of action from the pinion's base circle to
    // its tip; interference point of ISO 21771.
    [8, 1.1169],
    [10, 1.264],
    [12, 1.4053],
    [13, 1.4743],
  ])("%i teeth: %d", (teeth, ratio) => {
    expect(undercutContactRatio(teeth)).toBeCloseTo(ratio, 3);
  });

  it.each([14.5, 20, 25])("at the limit of undercut joins the contact with a rack, at %d degrees", (angle) => {
    // z = 2 / sin²(alpha), any gear handbook: there the rack's tips reach exactly the base circle, so both ways agree.
    const teeth = undercutLimit(angle * degree);
    const rack = meshOf({ module: 1, pinionTeeth: teeth, mainTeeth: 1e7, angle: angle * degree });
    expect(undercutContactRatio(teeth, angle * degree)).toBeCloseTo(rack!.contactRatio, 4);
  });

  it("is less than the closed form promises for 12 and 120 teeth: 1.6459 without undercut", () => {
    // ISO 21771 closed form, Maitra, Handbook of Gear Design.
    const mesh = meshOf({ module: 1, pinionTeeth: 12, mainTeeth: 120 })!;
    expect(mesh.contactRatio).toBeCloseTo(1.6459, 4);
    expect(mesh.undercut).toBe(true);
    expect(undercutContactRatio(12)).toBeLessThan(mesh.contactRatio);
  });

  it("grows with every tooth", () => {
    for (let teeth = 5; teeth < 17; teeth++) {
      expect(undercutContactRatio(teeth + 1)).toBeGreaterThan(undercutContactRatio(teeth));
    }
  });
});
