import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { collectivePad, flightPlot } from "#blocks/flight-plot";
import type { FlightState } from "#blocks/flight-state";
import { learningPlot } from "#blocks/learning-run";
import { together } from "#blocks/together";
import { clubTrainer } from "#machine/demos";
import type { Machine } from "#machine/machine";
import { withValue } from "#machine/paths";
import type { Shown } from "#view/shown";
import { type Mounted, mounted, plain, wordsOf } from "./mounted.ts";

const more = withValue(clubTrainer, "gears.pinionTeeth", 15);
const noGain = withValue(clubTrainer, "controller.integralGain", 0);

/** A flight of one machine with another one pinned. */
function beside(make: (machine: Machine) => Shown<FlightState>, now: Machine, pinned: Machine): Shown<FlightState> {
  const shown = make(now);
  const other = make(pinned) as unknown as Shown;
  return { ...shown, state: together(shown as unknown as Shown, { pinned: other }, { now, pinned }) as FlightState };
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
    const block = mounted(beside(punch, noGain, fast));
    block.update(punch(noGain));
    await new Promise((resolve) => setTimeout(resolve, 1500));
    expect(lines(block, "pinned-now")).toEqual([]);
    expect(said(block)).toHaveLength(1);
  });
});
