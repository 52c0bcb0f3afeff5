import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { collectivePad, flightPlot } from "#blocks/flight-plot";
import { learningPlot } from "#blocks/learning-run";
import { learningStored } from "#blocks/learning-stored";
import { together } from "#blocks/together";
import { wholePackModes } from "#blocks/whole-pack-modes";
import { flightOf, knownFlight } from "#flights/flight";
import { clubTrainer } from "#machine/demos";
import type { Machine } from "#machine/machine";
import { withValue } from "#machine/paths";
import type { Shown } from "#view/shown";
import { type Mounted, mounted, plain, wordsOf } from "./mounted.ts";

const more = withValue(clubTrainer, "gears.pinionTeeth", 15);
const noGain = withValue(clubTrainer, "controller.integralGain", 0);

/** What one machine shows with another one pinned. */
function beside<S>(make: (machine: Machine) => Shown<S>, now: Machine, pinned: Machine): Shown<S> {
  const shown = make(now);
  const other = make(pinned) as unknown as Shown;
  return { ...shown, state: together(shown as unknown as Shown, { pinned: other }, { now, pinned }) as S };
}

const punch = (machine: Machine, over: object = {}) =>
  flightPlot({
    id: "punch",
    machine,
    whatIf: null,
    answers: {},
    mode: 2,
    scenario: { kind: "punch", after: 1 },
    ...over,
  });
const lines = (block: Mounted, ink: string) =>
  block
    .all("path.ink")
    .filter((path) => path.classList.contains(ink) && (path.getAttribute("d") ?? "").length > 20)
    .map((path) => path.getAttribute("d"));
const said = (block: Mounted) => block.all(".flight-said:not([hidden])").map((line) => plain(line.textContent));

beforeEach(() => vi.stubGlobal("IntersectionObserver", undefined));
afterEach(() => vi.unstubAllGlobals());

describe("the flight of a pinned machine", () => {
  it("is the one that it would fly itself, dashed in all lanes, and told by its main sentence", () => {
    const block = mounted(beside(punch, more, clubTrainer));
    const alone = mounted(punch(clubTrainer));
    const sentence = /^.*?\.(?= )/.exec(said(alone)[0] ?? "")?.[0];
    const again = mounted(beside(punch, more, clubTrainer));
    expect(lines(again, "pinned-now")).toHaveLength(4);
    expect(lines(again, "now")).toHaveLength(4);
    expect(lines(again, "pinned-now")[0]).not.toBe(lines(again, "now")[0]);
    expect(said(again)).toEqual([expect.stringMatching(/^Now: Dips/), `Pinned (13 t): ${sentence}`]);
    const spoken = plain(again.one("svg[role=img]").getAttribute("aria-label"));
    expect(spoken).toContain(`Pinned (13 t): ${sentence}`);
    expect(plain(wordsOf(beside(punch, more, clubTrainer)))).toBe(spoken);
    expect(block.host.textContent).toContain("pinned");
  });

  it("goes when the pin goes, and says when it is just the same", () => {
    const block = mounted(beside(punch, more, clubTrainer));
    block.update(punch(more));
    expect(lines(block, "pinned-now")).toEqual([]);
    expect(said(block)).toHaveLength(1);
    block.update(beside(punch, withValue(more, "controller.usableLowPercent", 31), more));
    expect(said(block)[1]).toMatch(/^Pinned \(.*\): Flies just the same\.$/);
    block.update(beside(punch, { ...more, name: "the same, renamed" }, more));
    expect(said(block)).toHaveLength(1);
  });

  it("has its numbers in the table", () => {
    const block = mounted(beside(punch, more, clubTrainer));
    const table = block.one<HTMLDetailsElement>("details:not(.flight-told)");
    table.open = true;
    table.dispatchEvent(new Event("toggle"));
    const heads = block.all("thead th").map((head) => plain(head.textContent));
    expect(heads).toHaveLength(9);
    expect(heads.filter((head) => head.includes("(pinned)"))).toHaveLength(4);
  });

  it("is told in words alone where another flight is dashed", () => {
    const compare = [{ key: "quick", label: "quick one alone", integralGain: 0 }];
    const make = (machine: Machine) => punch(machine, { compare });
    const without = lines(mounted(make(more)), "pinned-now");
    const block = mounted(beside(make, more, clubTrainer));
    expect(lines(block, "pinned-now")).toEqual(without);
    expect(said(block).at(-1)).toMatch(/^Pinned \(13 t\): Dips/);
  });

  it("gives way to a run that is pinned here", () => {
    const block = mounted(beside(punch, more, clubTrainer));
    const before = lines(block, "pinned-now");
    block.button("pin this run").click();
    expect(lines(block, "pinned-now")).toHaveLength(4);
    expect(lines(block, "pinned-now")).not.toEqual(before);
    block.button("drop the pin").click();
    expect(lines(block, "pinned-now")).toEqual(before);
  });

  it("waits for the guess", () => {
    const make = (machine: Machine) => punch(machine, { predict: true });
    expect(lines(mounted(beside(make, more, clubTrainer)), "pinned-now")).toEqual([]);
  });

  it("flies what the reader draws for this machine", () => {
    const answers = { "own-hand": "run" };
    const pad = (machine: Machine) => collectivePad({ id: "own-hand", machine, whatIf: null, answers, mode: 2 });
    const heavy = withValue(clubTrainer, "airframe.massG", 4000);
    const { state } = beside(pad, clubTrainer, heavy);
    expect(state.pinned?.request.machine).toBe(heavy);
    expect(state.pinned?.request.scenario).toBe(state.runs[0]?.request.scenario);
    expect(pad(heavy).state.runs[0]?.request.scenario).not.toEqual(state.runs[0]?.request.scenario);
  });

  it("tells what a learning run stores for it", () => {
    const block = mounted(beside((machine) => learningPlot(machine, null, {}), more, clubTrainer));
    const told = said(block);
    expect(told).toHaveLength(2);
    expect(told[0]).toMatch(/^Now: The head turns/);
    expect(told[1]).toMatch(/^Pinned \(13 t\): The head turns .* Stored as 100 %/);
  });

  it("is flown elsewhere when it takes long, while this machine's stands already", async () => {
    const fast = withValue(clubTrainer, "controller.loopHz", 4000);
    const block = mounted(beside(punch, noGain, fast));
    expect(lines(block, "now")).toHaveLength(4);
    expect(lines(block, "pinned-now")).toEqual([]);
    expect(block.one("figure").dataset.busy).toBeUndefined();
    await vi.waitFor(() => expect(lines(block, "pinned-now")).toHaveLength(4), 20_000);
    expect(said(block).at(-1)).toMatch(/^Pinned \(/);
  });

  it("is dropped on the way when the pin has gone", async () => {
    const fast = withValue(clubTrainer, "controller.loopHz", 3900);
    const both = beside(punch, noGain, fast);
    const block = mounted(both);
    block.update(punch(noGain));
    await new Promise((resolve) => setTimeout(resolve, 1500));
    expect(knownFlight(both.state.pinned!.request)).toBeNull();
    expect(said(block)).toHaveLength(1);
  });

  it("is flown once, however often this machine changes", async () => {
    const fast = withValue(clubTrainer, "controller.loopHz", 3800);
    const block = mounted(beside(punch, noGain, fast));
    await vi.waitFor(() => expect(lines(block, "pinned-now")).toHaveLength(4), 20_000);
    const dashed = lines(block, "pinned-now")[1];
    const { state } = beside(punch, withValue(noGain, "controller.proportionalGain", 3), fast);
    const result = knownFlight(state.pinned!.request);
    block.update({ ...punch(noGain), state });
    expect(lines(block, "pinned-now")[1]).toBe(dashed);
    expect(knownFlight(state.pinned!.request)).toBe(result);
  });
});

describe("the whole packs of a pinned machine", () => {
  const small: Machine = {
    ...clubTrainer,
    pack: { ...clubTrainer.pack, capacityMah: 600, cellResistanceMilliohm: 6 },
    modes: [clubTrainer.modes[0]!, clubTrainer.modes[2]!],
  };
  const older = withValue(small, "pack.cellResistanceMilliohm", 12);
  const given = { "whole-pack-hard-1": 95 };
  const packs = (machine: Machine) => wholePackModes(machine, null, given, 1, "hard");
  const names = (block: Mounted) => block.all("tbody th").map((cell) => plain(cell.textContent));

  it("come below each mode once all of them are flown, dashed, and are told", async () => {
    for (const { request } of packs(small).state.rows) flightOf(request);
    const block = mounted(beside(packs, small, older));
    expect(names(block).slice(-2)).toEqual(["gentle", "sporty"]);
    const alone = plain(block.one("figcaption").textContent);
    await vi.waitFor(() => expect(names(block)).toContain("sporty (pinned)"), 20_000);
    expect(names(block).slice(-4)).toEqual(["gentle", "gentle (pinned)", "sporty", "sporty (pinned)"]);
    const inked = block.all(".whole-pack-ink").filter((line) => line.getAttribute("display") !== "none");
    expect(inked.map((line) => line.classList.contains("pinned-now"))).toEqual([false, true, false, true]);
    const words = plain(block.one("figcaption").textContent);
    const lost = (name: string, text = words) => Number(new RegExp(`${name} is lost at (\\d+) %`).exec(text)?.[1]);
    expect(lost("sporty")).toBe(lost("sporty", alone));
    expect(lost("sporty \\(pinned\\)")).toBeGreaterThan(lost("sporty"));
    block.update(packs(small));
    expect(names(block).slice(-2)).toEqual(["gentle", "sporty"]);
    expect(plain(block.one("figcaption").textContent)).toBe(alone);
  });
});

describe("what a pinned machine's learning run stores", () => {
  const half = { "learning-pack": 50 };
  const lines = (block: Mounted) => block.all(".pinned-value:not([hidden])").map((line) => plain(line.textContent));

  it("is a second line in each cell that differs, and only after the guess", () => {
    const stored = (answers: object) => (machine: Machine) => learningStored(machine, answers as typeof half);
    expect(lines(mounted(beside(stored(half), more, clubTrainer)))).toEqual([]);
    const guessed = { ...half, "learning-guess-pack": "low" };
    const [own, pinned] = [more, clubTrainer].map((machine) =>
      mounted(stored(guessed)(machine))
        .all("tbody td")
        .map((cell) => plain(cell.textContent)),
    ) as [string[], string[]];
    const told = lines(mounted(beside(stored(guessed), more, clubTrainer))).filter((line) => line !== "pinned");
    expect(told).toEqual(pinned.filter((text, i) => text !== own[i]));
    expect(told.length).toBeGreaterThan(1);
  });
});
