import { describe, expect, it } from "vitest";
import { figuresOf } from "#figures/figures";
import { obstacle, whyNone } from "#figures/why";
import { obstacleWords } from "#figures/words";
import { machineWith } from "./machines.ts";

const dead = { "pack.cells": 1, "motor.noLoadCurrentA": 60, "motor.resistanceMilliohm": 5000 };
const of = (changes: Readonly<Record<string, unknown>>) => figuresOf(machineWith(changes));

describe("what keeps a speed from being held", () => {
  it.each([
    ["nothing", {}, null, null],
    ["a motor without volts", dead, "motor does not turn", "motor does not turn"],
    ["a speed above the ceiling in hover", { "modes.0.headRpm": 3300 }, "too fast", "too fast"],
    ["a speed above the ceiling at full pitch", { "modes.0.headRpm": 2890 }, null, "too fast"],
    ["a weight that no speed carries", { "airframe.massG": 50_000 }, "rotor cannot carry it", null],
    [
      "a weight that the set speed doesn't carry",
      { "airframe.massG": 4000, "modes.0.headRpm": 800 },
      "blades stall",
      null,
    ],
  ] as const)("%s", (_, changes, hover, full) => {
    expect(obstacle(of(changes), "hover", 0)).toBe(hover);
    expect(obstacle(of(changes), "full-pitch", 0)).toBe(full);
  });

  it("is nothing at the ceiling itself", () => {
    const ceiling = of({}).number("ceiling-full-pitch", 0)!;
    expect(obstacle(of({ "modes.0.headRpm": ceiling }), "full-pitch", 0)).toBeNull();
    expect(obstacle(of({ "modes.0.headRpm": ceiling + 0.001 }), "full-pitch", 0)).toBe("too fast");
  });
});

describe("why a figure has no value", () => {
  it.each([
    ["no-load-head-speed", dead, /no-load current/],
    ["learned-motor-speed", dead, /learning throttle/],
    ["throttle", dead, /learning throttle/],
    ["ceiling-hover", dead, /no-load current/],
    ["ceiling-hover", { "airframe.massG": 50_000 }, /at no speed/],
    ["hover-power", { "airframe.massG": 4000, "modes.0.headRpm": 800 }, /stall/],
    ["hover-power", { "airframe.massG": 50_000 }, /stall/],
    ["hover-collective", { "airframe.massG": 4000, "modes.0.headRpm": 800 }, /stall/],
    ["duty-hover", { "modes.0.headRpm": 3300 }, /even full duty/],
    ["hover-duration", { "modes.0.headRpm": 3300 }, /even full duty/],
    ["full-pitch-pack-current", { "modes.0.headRpm": 2890 }, /even full duty/],
    ["lowest-charge", { "modes.0.headRpm": 3300 }, /not even a full pack/],
  ] as const)("%s with %o", (name, changes, words) => {
    expect(of(changes).value(name, 0)).toBeNull();
    expect(whyNone(of(changes), name, 0)).toMatch(words);
  });

  it("is a sentence for every obstacle", () => {
    for (const words of Object.values(obstacleWords)) expect(words).toMatch(/^[a-z].*\.$/);
  });
});
