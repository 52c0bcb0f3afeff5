import { describe, expect, it } from "vitest";
import { figuresOf } from "#figures/figures";
import { contactLimit, currentRateLimit, machLimit } from "#figures/limits";
import type { WarningName } from "#figures/warning";
import type { Machine } from "#machine/machine";
import { undercutContactRatio } from "#model/undercut";
import { learnedAt, machineWith, standardPlace, tenToOne } from "./machines.ts";

const rpm = (2 * Math.PI) / 60;

/** The warnings of the first mode and of the whole machine. */
const warningsOf = (machine: Machine) => figuresOf(machine).warnings.filter(({ mode }) => mode === null || mode === 0);
const find = (machine: Machine, name: WarningName) => warningsOf(machine).find((warning) => warning.name === name);

/** A machine whose first mode asks for a head speed; the reference is 3000 rpm at the rotor. */
const asking = (headRpm: number, changes: Readonly<Record<string, unknown>> = {}) =>
  learnedAt(15_000, 50, machineWith({ ...tenToOne, ...changes, "modes.0.headRpm": headRpm }));

const machRpm = (radius: number) => (0.65 * 340.294) / radius / rpm;
const standard = (headRpm: number) => asking(headRpm, standardPlace);
/** The club trainer with a pack that gives the current of full pitch at so many times its capacity in an hour. */
function drawing(times: number): Machine {
  const current = figuresOf(machineWith({})).number("full-pitch-pack-current", 0)!;
  return machineWith({ "pack.capacityMah": (1000 * current) / times });
}
/** The club trainer with a tail arm so long that its tail can give this share of what full pitch asks of it. */
function tail(share: number): Machine {
  const { rig } = figuresOf(machineWith({}));
  const { headSpeed, collectiveMax } = rig.parts.modes[0]!;
  const speed = headSpeed * rig.tail.ratio;
  // Where more pitch of the tail blades gives no more thrust: from 6 to 20 degrees in steps of one.
  const pitches = Array.from({ length: 15 }, (_, i) => ((6 + i) * Math.PI) / 180);
  const most = Math.max(...pitches.map((collective) => rig.tail.rotor.thrustAt({ speed, collective })));
  const torque = rig.main.torqueAt({ speed: headSpeed, collective: collectiveMax });
  // Balance of torques, by definition: thrust x arm.
  return machineWith({ "tailRotor.armMm": (1000 * share * torque) / most });
}
const pitch = (most: number) => machineWith({ "modes.0.collectiveMaxDeg": most });
const hoverDeg = figuresOf(machineWith({})).number("hover-collective", 0)!;
const hovering = (headRpm: number) => machineWith({ "modes.0.headRpm": headRpm, "modes.0.collectiveMaxDeg": 7 });
/** The most that the club trainer turns in hover on the charge at which one lands: 20 %, common practice, no source. */
const atReserve = figuresOf(machineWith({ "pack.chargePercent": 20 })).number("ceiling-hover", 0)!;
const rated = (limit: number) => machineWith({ "mainRotor.ratedRpm": limit });
const learningRpm = figuresOf(machineWith({})).number("learning-head-speed")!;
const ceiling = figuresOf(machineWith({})).number("ceiling-full-pitch", 0)!;

/** Name, a machine that raises it, one just inside the limit, the limit, what the words must hold. */
const cases: [name: WarningName, beyond: Machine, inside: Machine, limit: number, ...words: string[]][] = [
  // Common practice, no source: a band of 60 to 90 %.
  ["above-usable-band", asking(2703), asking(2700), 90, '"gentle"', "90.1", "90"],
  ["below-usable-band", asking(1797), asking(1800), 60, '"gentle"', "59.9", "60"],
  ["no-headroom", machineWith({ "modes.0.headRpm": ceiling + 1 }), machineWith({ "modes.0.headRpm": ceiling }), 0],
  ["stale-reference", machineWith({ "gears.pinionTeeth": 13 }, asking(2000)), asking(2000), 0, "pinion", "8.3"],
  ["blade-speed-over-limit", asking(2801), asking(2800), 2800, '"gentle"', "2,801", "2,800"],
  ["motor-speed-over-limit", asking(3600.1), asking(3600), 36_000, "36,001", "36,000"],
  ["electrical-speed-over-limit", asking(4801), asking(4800), 240_000, "240,050", "240,000"],
  // From memory: drag climbs steeply above a tip Mach number of 0.65. Speed of sound 340.294 m/s: ISO 2533:1975.
  ["tip-mach-high", standard(machRpm(0.485) + 1), standard(machRpm(0.485) - 1), 0.65, "0.65"],
  // Common practice, no source: 35 times the capacity in an hour.
  ["pack-current-high", drawing(35.1), drawing(34.9), Number.NaN, "35"],
  // Closed form from the interference point of ISO 21771: 1.191 with 9 teeth, 1.264 with 10. 1.2: any gear handbook.
  ["pinion-mesh-poor", machineWith({ "gears.pinionTeeth": 9 }), machineWith({ "gears.pinionTeeth": 10 }), 1.2, "1.19"],
  ["tail-thrust-short", tail(0.9), tail(1.1), Number.NaN, '"gentle"', "ease the pitch"],
  ["hover-pitch-short", pitch(hoverDeg - 0.02), pitch(hoverDeg + 0.02), hoverDeg - 0.02, '"gentle"', "won't lift off"],
  [
    "hover-speed-lost",
    hovering(atReserve + 1),
    hovering(atReserve - 1),
    20,
    '"gentle"',
    "in hover only down to",
    "counts to there",
  ],
  ["learning-speed-over-limit", rated(learningRpm - 1), rated(learningRpm), learningRpm - 1, "the rotor at"],
  ["tail-speed-high", standard(machRpm(0.091) / 4.6 + 1), standard(machRpm(0.091) / 4.6 - 1), machRpm(0.091), "tail"],
];

const ofAll: readonly WarningName[] = ["stale-reference", "learning-speed-over-limit", "pinion-mesh-poor"];

describe("a warning", () => {
  it.each(cases)("%s is raised beyond its limit and not at it", (name, beyond, inside, limit, ...words) => {
    const warning = find(beyond, name);
    expect(warning).toBeDefined();
    expect(find(inside, name)).toBeUndefined();
    if (!Number.isNaN(limit)) expect(warning!.limit).toBeCloseTo(limit, 2);
    for (const word of words) expect(warning!.words).toContain(word);
    expect(warning!.mode).toBe(ofAll.includes(name) ? null : 0);
  });

  it("has all the names that other programs know", () => {
    expect(cases.map(([name]) => name).sort()).toEqual([
      "above-usable-band",
      "below-usable-band",
      "blade-speed-over-limit",
      "electrical-speed-over-limit",
      "hover-pitch-short",
      "hover-speed-lost",
      "learning-speed-over-limit",
      "motor-speed-over-limit",
      "no-headroom",
      "pack-current-high",
      "pinion-mesh-poor",
      "stale-reference",
      "tail-speed-high",
      "tail-thrust-short",
      "tip-mach-high",
    ]);
  });

  it("carries the figure that is over the limit, in its unit", () => {
    const of = (name: WarningName) => {
      const machine = cases.find(([each]) => each === name)![1];
      const { value, unit } = find(machine, name)!;
      return [value, unit] as const;
    };
    expect(of("above-usable-band")[0]).toBeCloseTo(90.1, 6);
    expect(of("no-headroom")[0]).toBeCloseTo(-1, 5);
    expect(of("motor-speed-over-limit")[0]).toBeCloseTo(36_001, 6);
    expect(of("electrical-speed-over-limit")[0]).toBeCloseTo(240_050, 6);
    expect(of("pinion-mesh-poor")[0]).toBeCloseTo(undercutContactRatio(9), 12);
    const units = cases.map(([name]) => of(name)[1]);
    expect(units.join(" ")).toBe("percent percent rpm percent rpm rpm rpm 1 A 1 N deg percent rpm rpm");
  });

  it("measures current against the capacity of the pack", () => {
    const { value, limit } = find(drawing(40), "pack-current-high")!;
    expect(value! / limit).toBeCloseTo(40 / currentRateLimit, 9);
  });

  it("goes on telling of the current where the mode isn't held any more, at full duty", () => {
    const at = (headRpm: number) =>
      machineWith({ "pack.capacityMah": 1800, "modes.0.headRpm": headRpm, "modes.0.collectiveMaxDeg": 12 });
    const [held, lost] = [2720, 2790].map((headRpm) => find(at(headRpm), "pack-current-high"));
    expect(figuresOf(at(2790)).number("full-pitch-pack-current", 0)).toBeNull();
    expect(held!.words).not.toContain("full duty");
    expect(lost!.words).toMatch(/^Full pitch in "gentle" draws 66\sA at full duty\. .* 35 C \(63\sA\), which most/);
    expect(lost!.value! > held!.value!).toBe(true);
    // All of the pack's volts on the motor: I = (U - k G w) / R, by definition.
    const { train } = figuresOf(at(2790)).rig;
    const speed = figuresOf(at(2790)).number("ceiling-full-pitch", 0)! * rpm;
    const resistance = train.motorResistance + train.controllerResistance + train.packResistance;
    expect(lost!.value).toBeCloseTo(
      (train.openVoltage - train.torqueConstant * train.gearRatio * speed) / resistance,
      6,
    );
  });

  it("looks at the current in hover too, and tells of the larger one", () => {
    const current = figuresOf(machineWith({})).number("hover-pack-current", 0)!;
    const machine = machineWith({ "pack.capacityMah": (1000 * current) / 40, "modes.0.collectiveMaxDeg": 3 });
    const { value, words } = find(machine, "pack-current-high")!;
    expect(value).toBe(figuresOf(machine).number("hover-pack-current", 0));
    expect(words).toMatch(/^Hover in "gentle" draws/);
  });

  it("of a hover that needs more pitch is given where all of the mode's pitch is negative", () => {
    const machine = machineWith({ "modes.0.collectiveMinDeg": -14, "modes.0.collectiveMaxDeg": -10 });
    const { value, limit, words } = find(machine, "hover-pitch-short")!;
    expect([value! > 0, limit]).toEqual([true, -10]);
    expect(words).toContain("at most −10°");
    // No speed lifts with that.
    expect(words).toMatch(/Allow more pitch or less weight\.$/);
    expect(find(pitch(hoverDeg - 0.02), "hover-pitch-short")!.words).toContain("more head speed");
  });

  it("calls a mode without a name by its number", () => {
    const named = tail(0.9);
    const words = find(machineWith({ "modes.0.name": "" }, named), "tail-thrust-short")!.words;
    expect(words).toMatch(/^At full pitch in "1" /);
  });

  it("of the blades isn't given where no limit is printed", () => {
    expect(find(asking(4000, { "mainRotor.ratedRpm": null }), "blade-speed-over-limit")).toBeUndefined();
  });

  it("belongs to the mode that raises it, in the order of the modes", () => {
    const machine = machineWith({ "modes.0.headRpm": 2900, "modes.2.headRpm": 3000 });
    const blades = figuresOf(machine).warnings.filter(({ name }) => name === "blade-speed-over-limit");
    expect(blades.map(({ mode }) => mode)).toEqual([0, 2]);
    expect(blades.map(({ words }) => /^"(\w+)"/.exec(words)?.[1])).toEqual(["gentle", "sporty"]);
  });

  it("of the learning run names motor and field too", () => {
    const motor = learningRpm * (120 / 13);
    const words = (changes: Readonly<Record<string, unknown>>) =>
      find(machineWith(changes), "learning-speed-over-limit")?.words;
    expect(words({ "motor.ratedRpm": Math.floor(motor) })).toContain("the motor at");
    expect(words({ "controller.electricalRpmLimit": Math.floor(5 * motor) })).toContain("the motor's field at");
    expect(words({ "controller.electricalRpmLimit": Math.ceil(5 * motor) })).toBeUndefined();
  });

  it("follows a band that the reader has set", () => {
    const band = { "controller.usableLowPercent": 50, "controller.usableHighPercent": 80 };
    expect(find(asking(2500, band), "above-usable-band")?.limit).toBe(80);
    expect(find(asking(1600, band), "below-usable-band")).toBeUndefined();
  });
});

describe("a stale reference", () => {
  it("names the parts that differ", () => {
    const words = find(
      machineWith({ "pack.cells": 5, "gears.mainTeeth": 118 }, asking(2000)),
      "stale-reference",
    )!.words;
    expect(words).toContain("(cells, main gear)");
    // Same throttle, 120 against 118 teeth: definition of the set speed.
    expect(words).toMatch(/gives 1\.7\s% more/);
  });

  it("keeps the spelling of a name", () => {
    expect(find(machineWith({ "motor.kvRpmPerVolt": 1000 }, asking(2000)), "stale-reference")!.words).toContain(
      "(motor Kv)",
    );
  });

  it("says that head speeds stay where the gears are the same", () => {
    const warning = find(machineWith({ "motor.kvRpmPerVolt": 1000 }, asking(2000)), "stale-reference")!;
    expect(warning.value).toBe(0);
    expect(warning.words).toContain("The head speeds stay");
  });
});

describe("a mode that can't be held", () => {
  it.each([
    ["it is too fast", { "modes.0.headRpm": 3200 }, /in hover: it asks for 3,200\srpm, and with full duty there is/],
    ["full pitch is too much", { "modes.0.headRpm": 2900 }, /at full pitch: it asks for/],
    [
      "the blades would stall",
      { "airframe.massG": 4000, "modes.0.headRpm": 800 },
      /in hover: at this speed the blades/,
    ],
    [
      "the motor doesn't turn",
      { "pack.cells": 1, "motor.noLoadCurrentA": 60, "motor.resistanceMilliohm": 5000 },
      /own no-load/,
    ],
    ["no speed carries it", { "airframe.massG": 50_000 }, /in hover: at no speed/],
  ])("says why: %s", (_, changes, words) => {
    const found = warningsOf(machineWith(changes)).filter(({ name }) => name === "no-headroom");
    expect(found).toHaveLength(1);
    expect(found[0]!.words).toMatch(words);
  });
});

it("the limits are those that the words name", () => {
  expect([machLimit, currentRateLimit, contactLimit]).toEqual([0.65, 35, 1.2]);
});
