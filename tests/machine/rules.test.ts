import { describe, expect, it } from "vitest";
import { demos } from "#machine/demos";
import { defaultMachine, fittedNow } from "#machine/machine";
import { withValue } from "#machine/paths";
import { brokenRules, nameOf } from "#machine/rules";

const withAll = (changes: Record<string, unknown>) =>
  Object.entries(changes).reduce((machine, [path, value]) => withValue(machine, path, value), defaultMachine);

describe("rules between fields", () => {
  it("hold in every demo machine", () => {
    expect(demos.flatMap(brokenRules)).toEqual([]);
  });

  it.each([
    ["usable band upside down", { "controller.usableLowPercent": 90 }, "controller.usableLowPercent"],
    ["root cut-out beyond the blade's centre", { "mainRotor.rootCutoutMm": 255 }, "mainRotor.rootCutoutMm"],
    ["blade's centre beyond the tip", { "mainRotor.bladeCentreMm": 485 }, "mainRotor.bladeCentreMm"],
    ["chord as long as the radius", { "mainRotor.chordMm": 485 }, "mainRotor.chordMm"],
    ["tail chord as long as its radius", { "tailRotor.chordMm": 91 }, "tailRotor.chordMm"],
    ["tail rotor as large as the main one", { "tailRotor.diameterMm": 970 }, "tailRotor.diameterMm"],
    ["collective upside down", { "modes.1.collectiveMinDeg": 10 }, "modes.1.collectiveMinDeg"],
    [
      "chord as long as the radius while it learned",
      { "controller.learned.fittedWith": { ...fittedNow(defaultMachine), chordMm: 485 } },
      "controller.learned.fittedWith.chordMm",
    ],
  ])("notice: %s", (_, changes, path) => {
    expect(brokenRules(withAll(changes)).map((broken) => broken.paths[0])).toEqual([path]);
  });

  it("say what a field holds and what is allowed, from the side of either field", () => {
    const [broken] = brokenRules(withAll({ "mainRotor.bladeCentreMm": 490 }));
    expect(broken?.paths).toEqual(["mainRotor.bladeCentreMm", "mainRotor.diameterMm"]);
    expect(broken?.words).toEqual([
      "Blade's centre of mass: holds 490 mm. Allowed: less than half of the rotor diameter, 485 mm.",
      "Rotor diameter: holds 970 mm. Allowed: more than twice the blade's centre of mass, 980 mm.",
    ]);
  });

  it("name a field with its flight mode", () => {
    expect(nameOf("modes.1.headRpm")).toBe("Flight mode 2, head speed");
    expect(nameOf("gears.pinionTeeth")).toBe("Pinion");
  });
});
