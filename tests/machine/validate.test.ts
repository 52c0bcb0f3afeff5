import fc from "fast-check";
import * as v from "valibot";
import { describe, expect, it } from "vitest";
import { clubTrainer, demos } from "#machine/demos";
import { fieldAt } from "#machine/fields";
import { defaultMachine, fittedNow, machineSchema } from "#machine/machine";
import { changedBetween, same, valueAt, withValue } from "#machine/paths";
import { brokenRules } from "#machine/rules";
import { checkAt, readMachine } from "#machine/validate";
import { anyMachine } from "./arbitrary.ts";

const large = demos[2] ?? clubTrainer;

/** The default record as plain data, with some of it replaced, or taken out by undefined. */
function record(changes: Record<string, unknown>): Record<string, unknown> {
  const plain = structuredClone(defaultMachine) as unknown as Record<string, unknown>;
  for (const [path, value] of Object.entries(changes)) {
    const keys = path.split(".");
    const last = keys.pop() as string;
    const node = keys.reduce<Record<string, unknown>>((at, key) => at[key] as Record<string, unknown>, plain);
    if (value === undefined) delete node[last];
    else node[last] = value;
  }
  return plain;
}

const read = (changes: Record<string, unknown>, fallback = large) => readMachine(record(changes), fallback);

const withoutNulls = (value: unknown): unknown =>
  JSON.parse(JSON.stringify(value, (_, each) => (each === null ? undefined : each)));

describe("reading a machine", () => {
  it("takes every good one as it is", () => {
    fc.assert(
      fc.property(anyMachine, (machine) => {
        const reading = readMachine(JSON.parse(JSON.stringify(machine)), large);
        expect(reading.problems).toEqual([]);
        expect(reading.machine).toEqual(machine);
      }),
    );
  });

  it.each([
    ["gears.pinionTeeth", "abc", "Pinion: holds the text “abc”. Allowed: a whole number from 5 to 80 teeth."],
    ["gears.pinionTeeth", "", "Pinion: holds nothing. Allowed: a whole number from 5 to 80 teeth."],
    ["gears.pinionTeeth", 12.5, "Pinion: holds 12.5 teeth. Allowed: a whole number from 5 to 80 teeth."],
    ["gears.pinionTeeth", "13", "Pinion: holds the text “13”. Allowed: a whole number from 5 to 80 teeth."],
    ["pack.cells", 0, "Cells in series: holds 0. Allowed: a whole number from 1 to 24."],
    ["pack.chemistry", "nimh", "Cell chemistry: holds the text “nimh”. Allowed: one of lipo, lihv, life."],
    ["motor.poles", 7, "Magnet poles: holds 7. Allowed: an even number from 2 to 60."],
    ["motor.kvRpmPerVolt", -5, "Motor Kv: holds −5 rpm/V. Allowed: a number from 20 to 20,000 rpm/V."],
    ["airframe.massG", 1e300, "Mass, ready to fly: holds 1e+300. Allowed: a number from 10 to 50,000 g."],
    ["pack.chargePercent", null, "State of charge: holds nothing. Allowed: a number from 0 to 100 %."],
    ["place", [], "Place: holds a list. Allowed: a group of fields."],
    ["modes.1.headRpm", true, "Flight mode 2, head speed: holds yes. Allowed: a number from 50 to 20,000 rpm."],
    ["gears.mainTeeth", undefined, "Main gear: missing. Allowed: a whole number from 10 to 500 teeth."],
  ])("names %s when it holds %j, and keeps the rest", (path, value, words) => {
    const { machine, problems } = read({ [path]: value });
    expect(problems.map((problem) => problem.words)).toEqual([words]);
    expect(problems[0]?.path).toBe(path);
    const kept = value === undefined ? valueAt(defaultMachine, path) : valueAt(large, path);
    expect(machine).toEqual(withValue(defaultMachine, path, kept));
  });

  it("does not miss what its owner may leave open", () => {
    const open = [
      "mainRotor.ratedRpm",
      "gears.secondStage",
      "controller.learned.motorRpm",
      "controller.learned.fittedWith",
    ];
    const { machine, problems } = read(Object.fromEntries(open.map((path) => [path, undefined])));
    expect(problems).toEqual([]);
    expect(open.map((path) => valueAt(machine, path))).toEqual([null, null, null, null]);
  });

  it("takes the learned parts whole or not at all", () => {
    const half = { ...fittedNow(defaultMachine), cells: 0 };
    const { machine, problems } = read({ "controller.learned.fittedWith": half });
    expect(problems.map((problem) => problem.path)).toEqual(["controller.learned.fittedWith.cells"]);
    expect(machine.controller.learned.fittedWith).toBeNull();
  });

  it("notes fields that a machine does not have, and leaves them out", () => {
    const { machine, problems } = read({ "gears.pinionTeth": 13, colour: "red", $schema: "machine.schema.json" });
    expect(problems).toEqual([
      { path: "gears.pinionTeth", value: undefined, words: expect.stringContaining("gears.pinionTeth"), note: true },
      { path: "colour", value: undefined, words: expect.stringContaining("colour"), note: true },
    ]);
    expect(machine).toEqual(defaultMachine);
  });

  it("counts them when there are many", () => {
    const many = Object.fromEntries(Array.from({ length: 5000 }, (_, i) => [`x${i}`, i]));
    const { problems } = readMachine({ ...defaultMachine, ...many });
    expect(problems).toHaveLength(21);
    expect(problems[20]?.words).toContain("4980 more");
  });

  it("has one to six flight modes", () => {
    const mode = { name: "x", headRpm: 2000, collectiveMinDeg: -5, collectiveMaxDeg: 10 };
    expect(read({ modes: [] }).problems[0]?.words).toBe("Flight modes: there are 0. Allowed: 1 to 6 of them.");
    expect(read({ modes: [] }).machine.modes).toEqual(large.modes);
    const seven = read({ modes: Array(7).fill(mode) });
    expect(seven.problems[0]?.words).toBe("Flight modes: there are 7. Allowed: 1 to 6 of them.");
    expect(seven.machine.modes).toEqual(Array(6).fill(mode));
    expect(read({ modes: Array(6).fill(mode) }).problems).toEqual([]);
  });

  it.each<[string, Record<string, unknown>, Record<string, unknown>, string[]]>([
    [
      "the low end, and keeps a good high one",
      { "controller.usableLowPercent": 95, "controller.usableHighPercent": 93 },
      { "controller.usableLowPercent": 60, "controller.usableHighPercent": 93 },
      ["Low end of the usable band: holds 95 %. Allowed: less than the high end of the usable band, 93 %."],
    ],
    [
      "the tail rotor, and keeps a main rotor with all that fits it",
      { "tailRotor.diameterMm": 1300, "mainRotor.diameterMm": 1200, "mainRotor.bladeCentreMm": 520 },
      { "tailRotor.diameterMm": 182, "mainRotor.diameterMm": 1200, "mainRotor.bladeCentreMm": 520 },
      ["Tail rotor diameter: holds 1,300 mm. Allowed: less than the rotor diameter, 1,200 mm."],
    ],
    [
      "the blade's centre alone",
      { "mainRotor.bladeCentreMm": 650, "mainRotor.diameterMm": 1200 },
      { "mainRotor.bladeCentreMm": 255, "mainRotor.diameterMm": 1200 },
      ["Blade's centre of mass: holds 650 mm. Allowed: less than half of the rotor diameter, 600 mm."],
    ],
    [
      "the one diameter that breaks two rules, rather than both that it breaks them with",
      { "mainRotor.diameterMm": 97, "tailRotor.diameterMm": 180, "mainRotor.bladeCentreMm": 256 },
      { "mainRotor.diameterMm": 970, "tailRotor.diameterMm": 180, "mainRotor.bladeCentreMm": 256 },
      ["Rotor diameter: holds 97 mm. Allowed: more than twice the blade's centre of mass, 512 mm."],
    ],
    [
      "both where neither goes with the last good one, and tells of both",
      { "controller.usableLowPercent": 95, "controller.usableHighPercent": 40 },
      { "controller.usableLowPercent": 60, "controller.usableHighPercent": 90 },
      [
        "Low end of the usable band: holds 95 %. Allowed: less than the high end of the usable band, 40 %.",
        "High end of the usable band: holds 40 %. Allowed: more than the low end of the usable band, 95 %.",
      ],
    ],
  ])("of fields that do not go together puts back %s", (_, given, taken, words) => {
    const { machine, problems } = read(given, defaultMachine);
    expect(problems.map((problem) => problem.words)).toEqual(words);
    expect(Object.keys(taken).map((path) => valueAt(machine, path))).toEqual(Object.values(taken));
    expect(machine).toEqual(Object.entries(taken).reduce((now, [path, v]) => withValue(now, path, v), defaultMachine));
  });

  it("tells of every field that it changes, once, and of no other", () => {
    const pairs = fc.constantFrom(
      ..."controller.usableLowPercent controller.usableHighPercent mainRotor.rootCutoutMm mainRotor.bladeCentreMm mainRotor.diameterMm mainRotor.chordMm tailRotor.chordMm tailRotor.diameterMm modes.0.collectiveMinDeg modes.0.collectiveMaxDeg".split(
        " ",
      ),
    );
    const change = pairs.chain((path) => {
      const { min, max } = fieldAt(path);
      return fc.tuple(fc.constant(path), fc.double({ min, max, noNaN: true }));
    });
    fc.assert(
      fc.property(anyMachine, anyMachine, fc.array(change, { maxLength: 5 }), (good, fallback, changes) => {
        const given = changes.reduce((now, [path, value]) => withValue(now, path, value + 0), good);
        const { machine, problems } = readMachine(given, fallback);
        expect(problems.map(({ path }) => path).sort()).toEqual(changedBetween(given, machine).sort());
        for (const { path, value } of problems) expect(value).toBe(valueAt(given, path));
        expect(brokenRules(machine)).toEqual([]);
      }),
    );
  });

  it("refuses what is no machine, and other versions, whole", () => {
    for (const input of [null, 5, "x", [], undefined]) {
      expect(readMachine(input, large)).toMatchObject({ machine: large, problems: [{ path: "" }] });
    }
    expect(readMachine(record({ version: 2 }), large)).toMatchObject({
      machine: large,
      problems: [{ path: "version" }],
    });
    expect(readMachine(record({ version: undefined }), large).problems).toHaveLength(1);
  });

  it("never throws and always gives a valid machine, with a word for all that is not as it was", () => {
    const value = fc.oneof(fc.jsonValue(), fc.constantFrom(Number.NaN, Number.POSITIVE_INFINITY, undefined, -0, 1e308));
    const paths = fc.constantFrom(
      ..."name pack pack.cells motor.kvRpmPerVolt gears gears.secondStage modes modes.0 modes.1.name controller.learned.fittedWith mainRotor.diameterMm tailRotor.diameterMm controller.usableLowPercent place.elevationM".split(
        " ",
      ),
    );
    fc.assert(
      fc.property(anyMachine, fc.array(fc.tuple(paths, value), { maxLength: 4 }), (fallback, changes) => {
        let input: unknown = defaultMachine;
        try {
          input = record(Object.fromEntries(changes));
        } catch {
          // A later change has lost its place by an earlier one: the record as it was will do.
        }
        const { machine, problems } = readMachine(input, fallback);
        expect(v.is(machineSchema, machine)).toBe(true);
        expect(brokenRules(machine)).toEqual([]);
        // What was taken without a word is what was given; only fields that may be left open are filled in, with null.
        if (problems.length === 0) expect(withoutNulls(machine)).toEqual(withoutNulls(input));
        for (const { words } of problems) expect(words).not.toMatch(/NaN|Infinity|undefined|\[object/);
      }),
    );
    fc.assert(fc.property(fc.jsonValue(), (input) => v.is(machineSchema, readMachine(input).machine)));
  });

  it("leaves prototypes alone", () => {
    const text = JSON.stringify(defaultMachine).replace(
      '"pack":{',
      '"__proto__":{"dirty":1},"constructor":{"x":1},"pack":{"__proto__":{"cells":9},',
    );
    const { machine, problems } = readMachine(JSON.parse(text));
    expect(machine).toEqual(defaultMachine);
    expect(Object.getPrototypeOf(machine)).toBe(Object.prototype);
    expect(problems.map((problem) => problem.path)).toEqual(["pack.__proto__", "__proto__", "constructor"]);
    expect(({} as Record<string, unknown>).dirty).toBeUndefined();
  });
});

describe("checking one value", () => {
  it("gives the value to put there, or says what is wrong", () => {
    expect(checkAt("gears.pinionTeeth", 14)).toEqual({ ok: true, value: 14 });
    expect(checkAt("place.temperatureC", -0)).toEqual({ ok: true, value: 0 });
    expect(checkAt("gears.pinionTeeth", Number.NaN)).toMatchObject({
      ok: false,
      problem: { path: "gears.pinionTeeth" },
    });
    expect(checkAt("gears.secondStage", { driverTeeth: 20, drivenTeeth: 30 }).ok).toBe(true);
    expect(checkAt("gears.secondStage", { driverTeeth: 20, drivenTeeth: 30, extra: 1 }).ok).toBe(false);
  });

  it.each(["", "gears.x", "modes.*.name", "__proto__", "pack.voltage"])("knows no field %j", (path) => {
    const checked = checkAt(path, 1);
    expect(!checked.ok && checked.problem.words).toContain("no field");
  });

  it("agrees with the reading of a whole machine", () => {
    fc.assert(
      fc.property(anyMachine, fc.constantFrom("modes.0.headRpm", "name"), (machine, path) => {
        const checked = checkAt(path, valueAt(machine, path));
        expect(checked.ok && same(checked.value, valueAt(machine, path))).toBe(true);
      }),
    );
  });
});
