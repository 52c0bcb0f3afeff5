import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { collectivePad, type FlightPlotOptions, flightPlot } from "#blocks/flight-plot";
import { clubTrainer, demos } from "#machine/demos";
import { withValue } from "#machine/paths";
import { type Answers, answer, answersNow, onAnswer } from "#view/answers";
import type { Shown } from "#view/shown";
import { leavesElements, type Mounted, mounted, plain, wordsOf } from "./mounted.ts";

const punch = (over: Partial<FlightPlotOptions> = {}) =>
  flightPlot({
    id: "punch",
    machine: clubTrainer,
    whatIf: null,
    answers: {},
    mode: 2,
    scenario: { kind: "punch", after: 1 },
    ...over,
  });
const guessed = (answers: Answers) => punch({ predict: true, answers });
const pad = (answers: Answers) =>
  collectivePad({ id: "own-hand", machine: clubTrainer, whatIf: null, answers, mode: 2 });

let stop = () => {};
function following<S>(make: (answers: Answers) => Shown<S>) {
  const block = mounted(make(answersNow()));
  stop = onAnswer(() => block.update(make(answersNow())));
  return block;
}

const said = (block: Mounted) => plain(block.one("figcaption").textContent);
const lines = (block: Mounted, ink: string) =>
  block.all<HTMLElement>(`path.${ink}`).filter((path) => (path.getAttribute("d") ?? "").length > 20);
const shown = (block: Mounted) =>
  block
    .all<HTMLButtonElement>(".flight-buttons button")
    .filter((button) => !button.hidden)
    .map((button) => button.textContent);
const press = (block: Mounted, key: string, init: KeyboardEventInit = {}) =>
  block.one(".pencil-point").dispatchEvent(new KeyboardEvent("keydown", { key, bubbles: true, ...init }));

beforeEach(() => {
  // A figure that nobody scrolls to would wait for ever.
  vi.stubGlobal("IntersectionObserver", undefined);
  for (const id of Object.keys(answersNow())) answer(id, null);
});
afterEach(() => {
  stop();
  vi.unstubAllGlobals();
});

describe("a flight that follows the machine", () => {
  it("is drawn at once, lane below lane, and says what happened", () => {
    const block = mounted(punch());
    expect(block.one("figure").dataset.plot).toBe("punch");
    expect(lines(block, "now")).toHaveLength(4);
    expect(said(block)).toMatch(/^Dips by \d+\srpm 0\.\d+\ss after the pitch comes/);
    expect(plain(block.one("svg[role=img]").getAttribute("aria-label"))).toBe(plain(wordsOf(punch())));
    expect(shown(block)).toEqual(["pin this run", "take this run away"]);
  });

  it("says other things for another machine, and leaves every element where it was", () => {
    const block = mounted(punch());
    const before = said(block);
    const nearby = withValue(clubTrainer, "modes.2.headRpm", 2460);
    expect(leavesElements(block.host, () => block.update(punch({ machine: nearby })))).toBe(true);
    expect(said(block)).not.toBe(before);
    block.update(punch({ machine: withValue(clubTrainer, "modes.2.headRpm", 2950) }));
    expect(said(block)).toMatch(/until you ease the pitch|isn't back by the end/);
    expect(block.one(".plot-words").textContent).toContain("full duty");
  });

  it("flies the what-if beside it, each with its own line of words", () => {
    const block = mounted(punch({ whatIf: demos[1]! }));
    expect(lines(block, "what-if").length).toBeGreaterThanOrEqual(4);
    expect(block.all(".flight-said").map((line) => line.querySelector("b")?.textContent)).toEqual(["Now:", "What if:"]);
    expect(shown(block)).toEqual(["pin this run", "take this run away: now", "take this run away: what if"]);
  });

  it("flies the same machine otherwise, dashed, and tells that in short", () => {
    const compare = [{ key: "quick", label: "quick one alone", integralGain: 0 }];
    const block = mounted(punch({ label: "both hands", compare }));
    // The collective is the same: it is drawn once.
    expect(lines(block, "pinned-now")).toHaveLength(3);
    const [own, other] = block.all(".flight-said").map((line) => plain(line.textContent));
    expect(own).toMatch(/^Both hands: .*The duty goes no higher than/);
    expect(other).toMatch(/^Quick one alone: /);
    expect(other).not.toMatch(/The duty goes no higher/);
    expect(shown(block)).toEqual(["pin this run", "take this run away"]);
  });

  it("keeps a run that was pinned while the machine changes", () => {
    const block = mounted(punch());
    block.button("pin this run").click();
    const pinned = lines(block, "pinned-now").map((line) => line.getAttribute("d"));
    expect(pinned).toHaveLength(4);
    block.update(punch({ machine: withValue(clubTrainer, "controller.proportionalGain", 8) }));
    expect(lines(block, "pinned-now")).toHaveLength(4);
    expect(lines(block, "now")[0]!.getAttribute("d")).not.toBe(lines(block, "pinned-now")[0]!.getAttribute("d"));
    block.button("drop the pin").click();
    expect(lines(block, "pinned-now")).toHaveLength(0);
  });

  it("has its numbers in a table, filled when it is opened", () => {
    const block = mounted(punch());
    const table = block.one<HTMLDetailsElement>("details:not(.flight-told)");
    table.open = true;
    table.dispatchEvent(new Event("toggle"));
    expect(block.all("tbody tr")).toHaveLength(21);
    expect(block.all("thead th")).toHaveLength(5);
  });

  it("leads from what happened to its moment", () => {
    const block = mounted(punch());
    const told = block.one<HTMLDetailsElement>(".flight-told");
    told.open = true;
    told.dispatchEvent(new Event("toggle"));
    const [first] = block.all<HTMLButtonElement>(".flight-told li button");
    expect(plain(first!.textContent)).toMatch(/^Head speed low from 1\.\d+ s/);
    first!.click();
    expect(Number(block.one<HTMLInputElement>(".flight-time").value)).toBeCloseTo(
      Number(/from (1\.\d+) s/.exec(plain(first!.textContent))![1]),
      2,
    );
  });

  it("can be pulled back and forth in time", () => {
    const block = mounted(punch());
    const time = block.one<HTMLInputElement>(".flight-time");
    const figure = () => block.one(".figure.now").textContent;
    const atEnd = figure();
    time.value = "1.15";
    time.dispatchEvent(new Event("input"));
    expect(figure()).not.toBe(atEnd);
    expect(plain(time.getAttribute("aria-valuetext"))).toMatch(/^1\.15 s, head speed 2,4\d\d rpm, duty /);
  });

  it("says why a machine can't be flown", () => {
    const still = withValue(clubTrainer, "mainRotor.bladeCentreMm", 5000);
    const block = mounted(punch({ machine: still }));
    expect(said(block)).toMatch(/No blade has its centre of mass there/);
    expect(shown(block)).toEqual([]);
    expect(block.one<HTMLInputElement>(".flight-time").disabled).toBe(true);
  });

  it("is flown elsewhere when it takes long, and keeps the last picture meanwhile", async () => {
    const block = mounted(punch());
    block.update(punch({ machine: withValue(clubTrainer, "controller.loopHz", 4000) }));
    expect(block.one("figure").dataset.busy).toBe("again");
    expect(lines(block, "now")).toHaveLength(4);
    await vi.waitFor(() => expect(block.one("figure").dataset.busy).toBeUndefined(), 20_000);
    expect(said(block)).toMatch(/^Dips by/);
  });
});

describe("a flight that is guessed first", () => {
  it("asks, and draws nothing but the speed asked for", () => {
    const block = following(guessed);
    expect(said(block)).toMatch(/^Draw the head speed that you expect/);
    expect(lines(block, "now")).toHaveLength(0);
    expect(shown(block)).toEqual(["run it", "show me"]);
    expect(block.one(".pencil-point").getAttribute("aria-valuenow")).toBe("2450");
  });

  it("takes a guess by keys, and tells how far it was off", () => {
    const block = following(guessed);
    press(block, "End");
    for (let i = 0; i < 6; i++) press(block, "ArrowLeft");
    for (let i = 0; i < 20; i++) press(block, "PageDown");
    expect(block.one(".pencil-point").getAttribute("aria-valuenow")).toBe("2250");
    expect(lines(block, "pencil").length).toBeGreaterThan(0);
    expect(String(answersNow()["punch-curve"]).split(",").slice(-8)).toEqual([
      "245",
      ...new Array<string>(7).fill("225"),
    ]);
    block.button("run it").click();
    expect(lines(block, "now")).toHaveLength(4);
    expect(lines(block, "pencil").length).toBeGreaterThan(0);
    expect(said(block)).toMatch(/Your guess was furthest off at [\d.]+ s, by 2\d\d rpm\.$/);
    block.button("guess again").click();
    expect(answersNow()["punch-curve"]).toBeUndefined();
    expect(said(block)).toMatch(/^Draw the head speed/);
  });

  it("is never forced", () => {
    const block = following(guessed);
    block.button("show me").click();
    expect(said(block)).toMatch(/^Dips by/);
    expect(said(block)).not.toMatch(/Your guess/);
  });

  it("starts afresh from an answer that is no curve", () => {
    expect(guessed({ "punch-curve": "a,b" }).state.drawing?.drawn).toBe(false);
    expect(guessed({ "punch-curve": 7 }).state.drawing?.drawn).toBe(false);
  });
});

describe("a collective that the reader draws", () => {
  it("waits to be flown, then flies every stroke", () => {
    const block = following(pad);
    expect(said(block)).toMatch(/^Draw the collective/);
    expect(shown(block)).toEqual(["fly it"]);
    block.button("fly it").click();
    expect(said(block)).toMatch(/^Holds the set speed all through/);
    for (let i = 0; i < 5; i++) press(block, "ArrowRight");
    for (let i = 0; i < 20; i++) press(block, "PageUp", { shiftKey: true });
    const full = block.one(".pencil-point").getAttribute("aria-valuenow");
    expect(full).toBe(block.one(".pencil-point").getAttribute("aria-valuemax"));
    expect(said(block)).toMatch(/^(Dips by|Holds for)/);
    block.button("start over").click();
    expect(shown(block)).toEqual(["fly it"]);
  });

  it("never leaves the range of the mode", () => {
    const block = following(pad);
    for (let i = 0; i < 60; i++) press(block, "ArrowDown", { shiftKey: true });
    const point = block.one(".pencil-point");
    expect(point.getAttribute("aria-valuenow")).toBe(point.getAttribute("aria-valuemin"));
    expect(Number(point.getAttribute("aria-valuemin"))).toBe(clubTrainer.modes[2]!.collectiveMinDeg);
  });

  it("ends with words when it is flown into the ground", () => {
    const block = following(pad);
    for (let i = 0; i < 40; i++) press(block, "PageDown", { shiftKey: true });
    block.button("fly it").click();
    expect(said(block)).toMatch(/hits the ground at \d/);
  });

  it("leaves keys that it doesn't know to the page", () => {
    const block = following(pad);
    const key = new KeyboardEvent("keydown", { key: "a", bubbles: true, cancelable: true });
    block.one(".pencil-point").dispatchEvent(key);
    expect(key.defaultPrevented).toBe(false);
    const arrow = new KeyboardEvent("keydown", { key: "ArrowUp", bubbles: true, cancelable: true });
    block.one(".pencil-point").dispatchEvent(arrow);
    expect(arrow.defaultPrevented).toBe(true);
  });
});
