import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { dutyInHand, packMix, packMixPick, wholePackFlight, wholePackGuess } from "#blocks/whole-pack-flight";
import { wholePackModes } from "#blocks/whole-pack-modes";
import { wholePackTries } from "#blocks/whole-pack-tries";
import { flightOf } from "#flights/flight";
import { createBench } from "#machine/bench";
import type { Machine } from "#machine/machine";
import { answer, answersNow } from "#view/answers";
import { machineWith, number } from "../figures/machines.ts";
import { mounted, plain, wordsOf } from "./mounted.ts";

// A small pack in two modes, so that flights to its end are short.
const whole = machineWith({ "pack.capacityMah": 600, "pack.cellResistanceMilliohm": 6 });
const machine: Machine = { ...whole, modes: [whole.modes[0]!, whole.modes[2]!] };
const fast = 1;
const given = { "whole-pack-hard-1": 95 };

beforeEach(() => {
  for (const id of Object.keys(answersNow())) answer(id, null);
  vi.stubGlobal("IntersectionObserver", undefined);
});
afterEach(() => vi.unstubAllGlobals());

/** Flies what a state asks for, as the worker would. */
const fly = (shown: ReturnType<typeof wholePackModes>) => {
  for (const row of shown.state.rows) flightOf(row.request);
  return shown;
};

describe("the packs of all modes", () => {
  it("wait for a guess, one for each way of flying", () => {
    expect(packMix({})).toBe("mixed");
    expect(packMix({ "pack-mix": "hard" })).toBe("hard");
    expect(wordsOf(packMixPick({}))).toMatch(/circuits/);
    expect(wholePackGuess(machine, {}, fast, "hard").state.id).toBe("whole-pack-hard-1");
    expect(wholePackModes(machine, null, {}, fast, "hard").state.go).toBe(false);
    expect(wholePackModes(machine, null, given, fast, "hard").state.go).toBe(true);
    expect(wholePackModes(machine, null, given, fast, "mixed").state.go).toBe(false);
    expect(wholePackFlight(machine, null, given, fast, "hard").state.go).toBe(true);
    expect(wordsOf(wholePackFlight(machine, null, {}, fast, "hard"))).toMatch(/waits for your guess/);
  });

  it("are told, the mode that was asked about first, with the gap to the guess", () => {
    const words = plain(wordsOf(fly(wholePackModes(machine, null, given, fast, "hard"))));
    const lost = Number(/sporty is lost at (\d+) % of charge, after [\d.]+ min\./.exec(words)?.[1]);
    expect(lost).toBeGreaterThan(10);
    expect(words).toMatch(/^How far down the pack each mode is held\. sporty is lost/);
    expect(words).toContain("Held to the end: gentle.");
    const gap = Number(/You said 95 %: (\d+) % too early in the pack\./.exec(words)?.[1]);
    expect(Math.abs(lost + gap - 95)).toBeLessThanOrEqual(1);
    const near = plain(wordsOf(wholePackModes(machine, null, { "whole-pack-hard-1": lost }, fast, "hard")));
    expect(near).toMatch(/as near as it matters/);
    const never = plain(wordsOf(wholePackModes(machine, null, { "whole-pack-hard-1": 0 }, fast, "hard")));
    expect(never).toMatch(/You said it would be held to the end\.$/);
    const slow = plain(wordsOf(wholePackModes(machine, null, { "whole-pack-hard-0": 40 }, 0, "hard")));
    expect(slow).toMatch(/You said 40 %\. It isn't lost at all\.$/);
  });

  it("are drawn as bars with the guess in pencil, and give a timer", () => {
    const block = mounted(fly(wholePackModes(machine, null, given, fast, "hard")));
    const inked = block.all("line.whole-pack-ink").filter((line) => line.getAttribute("display") !== "none");
    // The slow mode's bar reaches the empty end at the right, the fast one's stops before.
    expect(Number.parseFloat(inked[0]!.getAttribute("x2")!)).toBeGreaterThan(99);
    expect(Number.parseFloat(inked[1]!.getAttribute("x2")!)).toBeLessThan(90);
    expect(block.one(".whole-pack-guess").getAttribute("x1")).toBe("5.00%");
    const rows = block.all("tbody tr").map((row) => plain(row.textContent));
    expect(rows.find((row) => row.startsWith("gentle"))).toMatch(/^gentlenever–\d+:\d\d\d+:\d0$/);
    expect(rows.find((row) => row.startsWith("sporty"))).toMatch(/^sporty\d+ %[\d.]+ min\d:\d\d\d:\d0$/);
    expect(plain(block.one(".facts-words").textContent)).toMatch(/Lost before the timer rings: sporty\./);
  });

  it("are flown where there is no worker too; the last picture is dimmed until then, and a dropped flight is never shown", async () => {
    const fresh: Machine = { ...machine, name: "fresh" };
    const block = mounted(fly(wholePackModes(machine, null, given, fast, "hard")));
    const before = block.one("figcaption").textContent;
    block.update(wholePackModes(fresh, null, given, fast, "hard"));
    expect(block.one("figure").dataset.busy).toBe("again");
    expect(block.one("figcaption").textContent).toBe(before);
    // Back before it is flown: what was known is there at once.
    block.update(wholePackModes(machine, null, given, fast, "hard"));
    expect(block.one("figure").dataset.busy).toBeUndefined();
    block.update(wholePackModes(fresh, null, given, fast, "hard"));
    await vi.waitFor(() => expect(block.one("figure").dataset.busy).toBeUndefined(), 20_000);
    expect(block.one("figcaption").textContent).toBe(before);
  });

  it("set the what-if below each mode, lost sooner with older cells", () => {
    const older = machineWith({ "pack.cellResistanceMilliohm": 12 }, machine);
    const block = mounted(fly(wholePackModes(machine, older, given, fast, "hard")));
    const names = block.all("tbody th").map((cell) => cell.textContent);
    expect(names.slice(-4)).toEqual(["gentle", "gentle (what if)", "sporty", "sporty (what if)"]);
    const words = plain(block.one("figcaption").textContent);
    const lost = (name: string) => Number(new RegExp(`${name} is lost at (\\d+) %`).exec(words)?.[1]);
    expect(lost("sporty \\(what if\\)")).toBeGreaterThan(lost("sporty"));
  });
});

describe("what a full pack leaves in hand", () => {
  it("is the duty that full pitch doesn't take, and less of it with a fifth left", () => {
    const { full, fifth } = dutyInHand(whole, 1);
    expect(full).toBeCloseTo(100 - number(whole, "duty-full-pitch", 1), 9);
    expect(fifth).toBeLessThan(full!);
    const weak = machineWith({ "pack.cellResistanceMilliohm": 30 }, whole);
    expect(dutyInHand(weak, 2)).toEqual({ full: null, fifth: null });
  });
});

describe("what can be tried", () => {
  it("stands on the bench as what-if, one step of undo each, and is named", () => {
    const bench = createBench(machine);
    const block = mounted(wholePackTries(bench.now, bench.whatIf), bench);
    const [older, cold, slower, smaller] = block.all<HTMLButtonElement>(".whole-pack-tries button");
    slower!.click();
    expect(bench.whatIf!.modes.map(({ headRpm }) => headRpm)).toEqual([1670, 2210]);
    expect(bench.now).toEqual(machine);
    older!.click();
    expect(bench.whatIf!.pack.cellResistanceMilliohm).toBe(12);
    expect(bench.whatIf!.modes).toEqual(machine.modes);
    block.update(wholePackTries(bench.now, bench.whatIf));
    expect(older!.getAttribute("aria-pressed")).toBe("true");
    expect(slower!.getAttribute("aria-pressed")).toBe("false");
    expect(plain(block.one(".whole-pack-said").textContent)).toBe("What if: older cells, 2 times the resistance.");
    bench.undo();
    expect(bench.whatIf!.modes[0]!.headRpm).toBe(1670);
    cold!.click();
    expect(bench.whatIf!.pack.temperatureC).toBe(5);
    smaller!.click();
    expect(bench.whatIf!.pack.capacityMah).toBe(450);
    block.button("drop the what-if").click();
    expect(bench.whatIf).toBeNull();
  });
});
