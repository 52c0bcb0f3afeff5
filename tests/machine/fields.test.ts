import { describe, expect, it } from "vitest";
import { fieldAt, fields, findField, patternOf, shapeAt, voltageField } from "#machine/fields";

describe("the table of fields", () => {
  it("names every field once, in the order of the machine file", () => {
    const paths = fields.map((field) => field.path);
    expect(new Set(paths).size).toBe(paths.length);
    expect(paths[0]).toBe("name");
    expect([...new Set(paths.map((path) => path.split(".")[0]))]).toEqual(
      "name pack motor controller gears mainRotor tailRotor airframe place modes".split(" "),
    );
  });

  it.each([...fields, voltageField].map((field) => [field.path, field] as const))("is complete at %s", (_, field) => {
    expect(field.name).toMatch(/^[A-Z].*[^.]$/);
    expect(field.read).toMatch(/^[A-Z][^\n]*\.$/);
    expect(field.read.length).toBeLessThan(160);
    expect(field.min).toBeLessThanOrEqual(field.low);
    expect(field.low).toBeLessThan(field.high);
    expect(field.high).toBeLessThanOrEqual(field.max);
    expect(field.step).toBeGreaterThan(0);
    if (typeof field.default === "number") {
      expect(field.default).toBeGreaterThanOrEqual(field.low);
      expect(field.default).toBeLessThanOrEqual(field.high);
    }
    for (const size of Object.values(field.tolerance)) expect(size).toBeGreaterThan(0);
    if (field.kind === "integer") expect(field.tolerance).toEqual({});
  });

  it("has the units that the names of the fields end in", () => {
    const endings: Record<string, string> = { Mm: "mm", G: "g", Percent: "%", Deg: "°", Milliohm: "mΩ", Mah: "mAh" };
    const more: Record<string, string> = { Hz: "Hz", Seconds: "s", RpmPerVolt: "rpm/V", Rpm: "rpm", Gcm2: "g cm²" };
    for (const [ending, unit] of Object.entries({ ...endings, ...more })) {
      const named = fields.filter(({ path }) => path.endsWith(ending));
      expect(named.length, ending).toBeGreaterThan(0);
      for (const field of named) expect(field.unit, field.path).toBe(unit);
    }
  });

  // Common practice, no source: the smallest and the largest of the common electric machines.
  it.each([
    ["pack.cells", 2, 14],
    ["mainRotor.diameterMm", 300, 1600],
    ["mainRotor.bladeMassG", 4, 260],
    ["motor.kvRpmPerVolt", 400, 5500],
    ["airframe.massG", 120, 6500],
    ["modes.*.headRpm", 1000, 4500],
  ])("lets a slider of %s reach from %d to %d", (path, smallest, largest) => {
    expect(fieldAt(path).low).toBeLessThanOrEqual(smallest);
    expect(fieldAt(path).high).toBeGreaterThanOrEqual(largest);
  });

  it("finds a field by its path, in any flight mode", () => {
    expect(fieldAt("modes.3.headRpm")).toMatchObject({ path: "modes.3.headRpm", part: "modes", unit: "rpm" });
    expect(findField("modes.*.headRpm")?.path).toBe("modes.*.headRpm");
    expect(fieldAt("controller.learned.motorRpm")).toMatchObject({ part: "controller", kind: "nullable number" });
    expect(fieldAt("gears.secondStage.driverTeeth").part).toBe("gears");
    expect(fieldAt("name").part).toBe("");
    expect(fieldAt("motor.poles").wholeEven).toBe(true);
    expect(patternOf("modes.12.name")).toBe("modes.*.name");
  });

  it("has nothing at a path that is none", () => {
    for (const path of ["", "gears", "gears.x", "__proto__", "gears.constructor", "modes.x.name", "name.length"]) {
      expect(findField(path), path).toBeNull();
    }
    expect(() => fieldAt("gears.pinion")).toThrow("gears.pinion");
    for (const path of ["gears.toString", "modes.-1", "modes.01.name", "name.x"])
      expect(shapeAt(path), path).toBeNull();
    expect(shapeAt("modes")?.kind).toBe("list");
  });
});
