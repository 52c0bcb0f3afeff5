import { describe, expect, it } from "vitest";
import { rotorTestChoice, rotorTestPlot } from "#blocks/rotor-test-plot";
import { rotorTests } from "#blocks/rotor-tests";
import { broadBlades, ownRotorsTable, trustFacts, trustPlot } from "#blocks/trust-plots";
import { figuresOf } from "#figures/figures";
import { expectedError } from "#model/rotor/doubt";
import { bounds } from "#validation/check";
import { testSets } from "#validation/published";
import { everyRotor, overall } from "#validation/summary";
import { machineWith } from "../figures/machines.ts";
import { mounted, plain, wordsOf } from "./mounted.ts";

describe("the picture of every published rotor", () => {
  const judged = everyRotor().flatMap(({ rows }) => rows.filter((row) => row.judged));

  it("has a dot for every figure that counts, at model over measurement", () => {
    const { all } = mounted(rotorTests());
    const dots = all(".tests-dot");
    expect(dots).toHaveLength(judged.length);
    const places = dots.map((dot) => Number(dot.getAttribute("cx")));
    const line = Number(/^M(\d+),/.exec(all(".tests-perfect")[0]?.getAttribute("d") ?? "")?.[1]);
    const [low, high] = [Math.min(...judged.map((row) => row.error)), Math.max(...judged.map((row) => row.error))];
    // One scale for all: the widest error to one side lies as far out as its size says.
    const unit = (Math.max(...places) - line) / high;
    expect((Math.min(...places) - line) / unit).toBeCloseTo(low, 1);
  });

  it("names what is beyond the bounds as plainly as the rest, in words and in the table", () => {
    const words = plain(wordsOf(rotorTests()));
    const { median } = overall(everyRotor());
    expect(words).toContain(`half are met within ${(100 * median).toFixed(1)} %`);
    for (const { set, spreads } of everyRotor()) {
      for (const spread of spreads) if (!spread.within) expect(words).toContain(`${set.name} (`);
    }
    const { one, all } = mounted(rotorTests());
    const details = one<HTMLDetailsElement>("details");
    details.open = true;
    details.dispatchEvent(new Event("toggle"));
    expect(all("tbody tr")).toHaveLength(everyRotor().flatMap(({ spreads }) => spreads).length);
    expect(plain(one("svg").textContent)).toContain(`more than ${100 * bounds.ninetieth} % too much`);
  });
});

describe("one published rotor", () => {
  const shown = (name: string) => rotorTestPlot({ "published-rotor": name }).state;

  it("shows all its points, and the model's curve where the comparison has it", () => {
    for (const { set, rows } of everyRotor()) {
      const { points = [], curves } = shown(set.name);
      const byPitch = set.rows.every((row) => row.collectiveDeg !== null);
      expect(points).toHaveLength(set.rows.length);
      // A second curve where the tips were turned at speeds far apart.
      expect(curves.length).toBe(["TM-81232", "TN 2318, rotor 2"].includes(set.name) ? 2 : 1);
      const row = rows.filter(({ what }) => what.startsWith(byPitch ? "thrust" : "torque")).at(-1)!;
      const curve = curves.at(-1)!;
      const at = byPitch ? (row.collectiveDeg ?? 0) : 1e3 * row.thrustCoefficient;
      const i = Array.from(curve.xs).findIndex((x) => x >= at - 1e-9);
      const near = [curve.ys[Math.max(0, i - 1)] ?? 0, curve.ys[i] ?? 0];
      const model = (byPitch ? 1e3 : 1e5) * row.model;
      expect(model).toBeGreaterThan(Math.min(...near) * 0.9);
      expect(model).toBeLessThan(Math.max(...near) * 1.1);
      // Only graphs that were read off have a bar.
      expect(points.every((point) => (point.low === undefined) === byPitch)).toBe(true);
    }
  });

  it("says its error first and its source last", () => {
    for (const { name, source } of testSets) {
      expect(plain(shown(name).words)).toMatch(/^The model's (thrust|torque) is within \d+\.\d % of half of them/);
      expect(shown(name).words).toContain(source);
    }
    expect(mounted(rotorTestChoice({})).all("input")).toHaveLength(testSets.length);
  });
});

describe("the reader's own rotors among them", () => {
  const at = (changes: Readonly<Record<string, unknown>>) => trustPlot(figuresOf(machineWith(changes)), null, 0).state;
  const point = (state: ReturnType<typeof at>, key: string) => (state.points ?? []).find((each) => each.key === key)!;

  it("stand on the line at their own Reynolds number, and move with the machine", () => {
    const now = at({});
    // Re = rho V c / mu: 94 m/s on 42 mm in air of 15 to 20 degrees is near 2.6e5.
    expect(10 ** point(now, "main").x).toBeGreaterThan(2.5e5);
    expect(10 ** point(now, "main").x).toBeLessThan(2.75e5);
    expect(point(now, "tail").y).toBeCloseTo(100 * expectedError(10 ** point(now, "tail").x), 9);
    const half = at({ "mainRotor.chordMm": 21 });
    expect(point(half, "main").x).toBeCloseTo(point(now, "main").x - Math.log10(2), 6);
  });

  it("get words and ticks on an axis of logarithms that hold every machine", () => {
    const small = at({ "modes.0.headRpm": 60, "tailRotor.chordMm": 5 });
    const { low = 0, high = 0 } = small.x;
    for (const { x } of small.points ?? []) expect(x > low && x < high).toBe(true);
    expect(small.words).toMatch(/^Expect \d+.% on your main rotor and \d+.% on your tail\./);
    expect(small.x.tickTexts?.slice(2, 5)).toEqual(["10", "30", "100"]);
  });

  it("are told in a table, with what the tail's error comes to in the whole", () => {
    const table = ownRotorsTable(figuresOf(machineWith({})), 1);
    expect(plain(wordsOf(table))).toMatch(/In hover the tail takes \d % of the cells' power, so \d+ % of error there/);
    const none = ownRotorsTable(figuresOf(machineWith({ "modes.1.headRpm": 500 })), 1);
    expect(wordsOf(none)).not.toContain("In hover");
  });

  it("are compared with the broadest blades that were tested, and warned where the model is beyond its bound there", () => {
    // NASA TM-81232: radius 1.143 m, chord 0.1905 m. Here 485 mm and 42 mm.
    const words = broadBlades(figuresOf(machineWith({})));
    expect(words).toMatch(/^The blades of TM-81232 are 6\.0 times as long as they are wide; yours are 11\.5 times\./);
    const tested = everyRotor().find(({ set }) => set.name === "TM-81232")!;
    expect(words.includes("the less you should trust")).toBe(overall([tested]).median > bounds.median);
  });

  it("give the page its answers: the median of all, and the worst rotor", () => {
    const facts = trustFacts();
    expect(facts.median).toBeCloseTo(100 * overall(everyRotor()).median, 9);
    const worst = everyRotor().toSorted((a, b) => overall([b]).median - overall([a]).median)[0];
    expect(facts.worstName).toBe(worst?.set.name);
    expect(facts.words).toContain(facts.worstName);
  });
});
