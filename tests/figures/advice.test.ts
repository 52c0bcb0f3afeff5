import { describe, expect, it } from "vitest";
import { figuresOf } from "#figures/figures";
import type { WarningName } from "#figures/warning";
import { machineWith } from "./machines.ts";

describe("advice", () => {
  const fast = { "modes.0.headRpm": 2950, "modes.0.collectiveMinDeg": -11, "modes.0.collectiveMaxDeg": 11 };
  const words = (changes: Readonly<Record<string, unknown>>, name: WarningName) =>
    figuresOf(machineWith(changes)).warnings.find((each) => each.name === name)?.words ?? "";

  it("never tells how to reach a speed that the blades must not turn", () => {
    expect(words(fast, "blade-speed-over-limit")).toContain("Don't fly it.");
    for (const name of ["above-usable-band", "no-headroom"] as const) {
      expect(words(fast, name)).toMatch(/[Aa]sk for (less|[\d,]+\s)/);
      expect(words(fast, name)).not.toMatch(/pinion|cells|charge the pack/);
    }
  });

  it("names a pinion for a mode above the band only where the learning run is within the limits", () => {
    const above = { "modes.0.headRpm": 2750, "modes.0.collectiveMaxDeg": 4, "motor.ratedRpm": 100_000 };
    expect(words(above, "above-usable-band")).toContain("or fit a bigger pinion, learn again");
    const run = figuresOf(machineWith({ "gears.pinionTeeth": 14 })).number("learning-head-speed")!;
    // Learning at nearly full throttle, with one tooth more the rotor would pass its limit, which the mode doesn't.
    const late = { ...above, "controller.learned.throttlePercent": 100 };
    const faster = figuresOf(machineWith({ ...late, "gears.pinionTeeth": 14 })).number("learning-head-speed")!;
    expect([run < 2800, faster > 2800]).toEqual([true, true]);
    expect(words(late, "above-usable-band")).toMatch(/Ask for less\.$/);
  });

  it("leads no mode below the band past a limit", () => {
    const below = { "modes.0.headRpm": 1700 };
    expect(words(below, "below-usable-band")).toMatch(/Fit a smaller pinion, .*, or ask for more\.$/);
    expect(words({ ...below, "mainRotor.ratedRpm": 1750 }, "below-usable-band")).toMatch(/new throttle\.$/);
    const motor = { ...below, "motor.ratedRpm": (1750 * 120) / 13 };
    expect(words(motor, "below-usable-band")).not.toMatch(/pinion|ask for more/);
  });

  it("asks a rotor that stalls to turn faster only where it may", () => {
    const heavy = { "airframe.massG": 4000, "modes.0.headRpm": 800 };
    expect(words(heavy, "no-headroom")).toContain("ask for more head speed");
    expect(words({ ...heavy, "mainRotor.ratedRpm": 850 }, "no-headroom")).not.toContain("more head speed");
  });
});
