/**
 * What pages say in words against the machines that they say it of. Claims that a page can test in a frame are tied to their
 * condition where they stand (`holds`); here they must hold for the machine that the pages open with, before any site is
 * built. What it takes flights or whole curves to tell stands in a list: the words as they are on the page, and the check.
 */
import { readdirSync, readFileSync } from "node:fs";
import { beforeEach, describe, expect, it } from "vitest";
import { learningFacts } from "#blocks/learning-run";
import { carriedByPinion, carriedByThrottle, leastCurrent } from "#figures/curves-band";
import { ceilingByPinion } from "#figures/curves-gears";
import { longestHover } from "#figures/curves-hover";
import { withCells } from "#figures/curves-pack";
import { figuresOf } from "#figures/figures";
import { type FlightRequest, flightOf } from "#flights/flight";
import { ceilingsWith } from "#flights/packs";
import type { Scenario } from "#flights/scenarios";
import { packOutcome, packRequest } from "#flights/whole-pack";
import { demos } from "#machine/demos";
import { defaultMachine, type Machine } from "#machine/machine";
import { withValue } from "#machine/paths";
import type { CellRecord } from "#notebook/record";
import { runHeadless } from "#notebook/runtime";
import { failed } from "#view/claims";
import { isShown } from "#view/shown";

const notebooks = import.meta.glob<CellRecord[]>("../../notebooks/*.md", {
  query: "?cells&lang.ts",
  import: "records",
  eager: true,
});

/** Claims of a notebook that don't hold for a machine, and how many it has where prose can be seen. */
async function claimsOf(records: readonly CellRecord[], machine: Machine): Promise<{ all: number; fail: string[] }> {
  failed.clear();
  const figures = figuresOf(machine);
  const shown = (await runHeadless(records, { machine, whatIf: null, figures, whatIfFigures: null, answers: {} }))
    .flatMap(({ value }) => (isShown(value) && value.view.name === "claim" ? [value.state] : []))
    .map((state) => state as { holds: boolean; claim: string });
  return { all: shown.length, fail: [...shown.filter(({ holds }) => !holds).map(({ claim }) => claim), ...failed] };
}

describe("claims tied to their conditions", () => {
  it("hold for the machine that the pages open with", async () => {
    const found = await Promise.all(Object.values(notebooks).map((each) => claimsOf(each, defaultMachine)));
    expect(found.flatMap(({ fail }) => fail)).toEqual([]);
    expect(found.reduce((sum, { all }) => sum + all, 0)).toBeGreaterThan(20);
  });

  it("are said otherwise for a machine for which they don't hold", async () => {
    const learnsAtMore = withValue(defaultMachine, "controller.learned.throttlePercent", 60);
    const page = notebooks["../../notebooks/12-learn-it-again.md"] ?? [];
    expect((await claimsOf(page, learnsAtMore)).fail).toEqual(["Twice that", "half throttle"]);
  });
});

const folder = new URL("../../notebooks/", import.meta.url);
const pages = new Map(
  readdirSync(folder).map((name) => [name.slice(0, 2), readFileSync(new URL(name, folder), "utf8")]),
);

const rpm = Math.PI / 30;

/** Deepest below and highest above the speed that is asked for, rpm, once the start has settled; and the most duty. */
function flown(machine: Machine, mode: number, scenario: Scenario, more: Partial<FlightRequest> = {}) {
  const result = flightOf({ machine, mode, scenario, ...more });
  if (!result.ok) throw new Error(result.why);
  const { time, rotorSpeed, duty } = result.trace;
  const speeds = [...rotorSpeed].filter((_, i) => time[i]! > 0.5).map((speed) => (speed - result.setSpeed) / rpm);
  return {
    dip: -Math.min(...speeds),
    over: Math.max(...speeds),
    duty: Math.max(...[...duty].filter((_, i) => time[i]! > 0.5)),
  };
}

/** The head speed that is asked for where a page flies beyond a tired pack, rpm. */
function beyond(machine: Machine, mode: number): number {
  const { hover, fullPitch } = ceilingsWith(machine, mode, "tired");
  return 0.3 * fullPitch! + 0.7 * hover!;
}

const last = ({ modes }: Machine): number => modes.length - 1;
const punch: Scenario = { kind: "punch", hold: 1.6, after: 1 };
const never = (values: readonly (number | null)[]): number[] => values.filter((value) => value !== null);

/** Page, its words, and whether they are true of a machine. */
const claims: readonly [page: string, words: string, isTrue: (machine: Machine) => boolean][] = [
  [
    "04",
    "It starts out like the upper one and bends away from it.",
    (machine) => {
      const { free, full } = ceilingByPinion(figuresOf(machine), last(machine));
      const share = full.map((speed, i) => speed! / free[i]!);
      return share[0]! > 0.95 && share.at(-1)! < 0.6;
    },
  ],
  [
    "05",
    "so leads and controller keep a quarter of theirs",
    (machine) => {
      const [one, two] = [1, 2].map((times) =>
        withCells(figuresOf(machine), times * machine.pack.cells, "full-pitch", last(machine)),
      );
      return (
        Math.abs(two!.wiring! / one!.wiring! - 0.25) < 0.02 && Math.abs(two!.current! / one!.current! - 0.5) < 0.02
      );
    },
  ],
  [
    "08",
    "then take a fresh pack: the room is back",
    (machine) => {
      const mode = last(machine);
      const headRpm = beyond(machine, mode);
      const hold: Scenario = { kind: "punch", hold: 1.6, after: 1.6 };
      return (
        flown(machine, mode, hold, { pack: "tired", headRpm }).duty === 1 &&
        flown(machine, mode, hold, { pack: "full", headRpm }).duty < 1
      );
    },
  ],
  [
    "06",
    "the motor gets warmer while the pack lasts longer",
    (machine) => {
      const figures = figuresOf(machine);
      const least = leastCurrent(carriedByThrottle(figures, "hover", 0)!)!;
      return (least.throttle / 100) * figures.number("learned-head-speed")! > 1.1 * longestHover(figures)!.speed;
    },
  ],
  [
    "08",
    "With room left, look at the tops as well as the dips.",
    (machine) => flown(machine, last(machine), { kind: "pumps" }, { pack: "full" }).over > 20,
  ],
  [
    "09",
    "The pack's current falls and falls.",
    (machine) => {
      const pack = never(carriedByThrottle(figuresOf(machine), "hover", 0)!.pack);
      return pack[0]! < 1.03 * Math.min(...pack) && pack[0]! < 0.6 * pack.at(-1)!;
    },
  ],
  [
    "09",
    "At full pitch there is no such point",
    (machine) => !leastCurrent(carriedByThrottle(figuresOf(machine), "full-pitch", 0)!)!.turns,
  ],
  [
    "09",
    "More current always flows low in the band.",
    (machine) => {
      const motor = never(carriedByPinion(figuresOf(machine), 0).motor);
      return motor.every((current, i) => i === 0 || current > motor[i - 1]!);
    },
  ],
  [
    "09",
    "With the same gears a slow mode dips less than a fast one.",
    (machine) => {
      const dips = machine.modes.map((_, mode) => flown(machine, mode, { kind: "punch" }).dip);
      return dips.every((dip, i) => i === 0 || dip > dips[i - 1]!);
    },
  ],
  [
    "09",
    "with the same gains the dip gets deeper",
    (machine) => {
      const more = withValue(machine, "gears.pinionTeeth", machine.gears.pinionTeeth + 4);
      return flown(more, 0, { kind: "punch" }).dip > flown(machine, 0, { kind: "punch" }).dip;
    },
  ],
  [
    "10",
    "With room left, more gain makes the dip smaller. At the limit the two runs are one.",
    (machine) => {
      const mode = last(machine);
      const { proportionalGain, integralGain } = machine.controller;
      const more = { proportionalGain: 4 * proportionalGain, integralGain: 4 * integralGain };
      const limit = { pack: "tired", headRpm: beyond(machine, mode) } as const;
      const [own, strong] = [flown(machine, mode, punch), flown(machine, mode, punch, more)];
      const [a, b] = [flown(machine, mode, punch, limit), flown(machine, mode, punch, { ...limit, ...more })];
      return strong.dip < 0.6 * own.dip && Math.abs(a.dip - b.dip) < 0.02 * a.dip;
    },
  ],
  [
    "10",
    "the head runs over long after the pitch is back",
    (machine) => {
      const mode = last(machine);
      const run = (antiWindup: "none" | "clamping") =>
        flown(
          machine,
          mode,
          { kind: "punch", hold: 1.8, after: 1.8 },
          { pack: "tired", headRpm: beyond(machine, mode), antiWindup },
        );
      return run("none").over > run("clamping").over + 20;
    },
  ],
  [
    "11",
    "Pitch matters for another reason.",
    (machine) => learningFacts(machine, last(machine), true).heaviest === "pack",
  ],
  [
    "15",
    "they keep their heat, whatever the count",
    (machine) => {
      const [one, two] = [machine.pack.cells, machine.pack.cells + 4].map((cells) =>
        withCells(figuresOf(machine), cells, "full-pitch", last(machine)),
      );
      return Math.abs((two!.heat! - two!.wiring!) / (one!.heat! - one!.wiring!) - 1) < 0.05;
    },
  ],
  [
    "16",
    "Fast modes get there first, old and cold packs sooner.",
    (machine) => {
      const lost = machine.modes.map(
        (_, mode) => packOutcome(flightOf(packRequest(machine, mode, "mixed")))?.lost?.percent ?? 0,
      );
      return lost.every((percent, i) => i === 0 || percent >= lost[i - 1]!) && lost.at(-1)! > 0;
    },
  ],
];

describe("claims that flights and curves bear out", () => {
  beforeEach(() => failed.clear());

  it.each(claims)("page %s: '%s'", (page, words, isTrue) => {
    expect(pages.get(page)).toContain(words);
    expect(demos.filter((demo) => !isTrue(demo)).map(({ name }) => name)).toEqual([]);
  });
});
