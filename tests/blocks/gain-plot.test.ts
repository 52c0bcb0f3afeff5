import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { gainPlot } from "#blocks/gain-plot";
import { flightOf } from "#flights/flight";
import { gainRow, gainsFlown, gripOf } from "#flights/gain-row";
import { clubTrainer } from "#machine/demos";
import type { Machine } from "#machine/machine";
import { withValue } from "#machine/paths";
import { rpm } from "#model/constants";
import { mounted, plain, wordsOf } from "./mounted.ts";

const row = (loopHz: number, gain = 3, machine: Machine = clubTrainer) => gainPlot(machine, 2, { gain, loopHz });

beforeEach(() => {
  vi.stubGlobal("IntersectionObserver", undefined);
});
afterEach(() => {
  vi.unstubAllGlobals();
});

describe("a gain's grip", () => {
  it("is the deepest dip of the punch and the swing of the hover before it, as the trace has them", () => {
    const [request] = gainRow(clubTrainer, 2, 50);
    const result = flightOf({ ...request!, proportionalGain: 3 });
    if (!result.ok) throw new Error(result.why);
    const grip = gripOf(result)!;
    const lowest = Math.min(...result.trace.rotorSpeed);
    expect(grip.lowRpm).toBeCloseTo((result.setSpeed - lowest) / rpm, 9);
    expect(grip.swingRpm).toBeGreaterThan(0);
    expect(grip.swingRpm).toBeLessThan(grip.lowRpm);
  });

  it("is none where the machine can't be flown to the end", () => {
    expect(gripOf({ ok: false, why: "no" })).toBeNull();
    const result = flightOf({ ...gainRow(clubTrainer, 2, 500)[0]!, proportionalGain: 1000, integralGain: 10_000 });
    expect(result.ok && result.end.why).not.toBe("flown");
    expect(gripOf(result)).toBeNull();
  });
});

describe("dip and unrest against the gain", () => {
  it("turn where the loop is slow: the best gain is a middle one, and the hover is not still above it", async () => {
    const block = mounted(row(50));
    expect(plain(block.one("figcaption").textContent)).toMatch(/^Flying/);
    await vi.waitFor(() => expect(plain(block.one("figcaption").textContent)).toMatch(/^At 50 looks/), 20_000);
    const best = Number(/quick gain of ([\d.]+) holds best/.exec(wordsOf(row(50)))![1]);
    expect(best).toBeGreaterThan(gainsFlown[0]);
    expect(best).toBeLessThan(gainsFlown.at(-1)!);
    expect(wordsOf(row(50))).toMatch(/never still/);
    expect(block.one(".plot-words").textContent).toContain("never still");
  });

  it("stay quiet with a quick loop, where more gain helps for longer", async () => {
    const slow = Number(/quick gain of ([\d.]+) holds best/.exec(wordsOf(row(50)))![1]);
    const block = mounted(row(500));
    await vi.waitFor(() => expect(plain(block.one("figcaption").textContent)).toMatch(/^At 500 looks/), 20_000);
    expect(wordsOf(row(500))).toMatch(/stays quiet with all of them/);
    expect(Number(/quick gain of ([\d.]+) holds best/.exec(wordsOf(row(500)))![1])).toBeGreaterThan(slow);
  });

  it("keep the last picture, dimmed, until the new one is there; a gain that is looked at moves at once", async () => {
    const block = mounted(row(50));
    const curve = () => block.one("path.now").getAttribute("d");
    const before = curve();
    expect(before!.length).toBeGreaterThan(20);
    block.update(row(50, 6));
    expect([block.host.classList.contains("is-stale"), curve()]).toEqual([false, before]);
    block.update(row(50, 6, withValue(clubTrainer, "modes.2.headRpm", 2500)));
    expect([block.host.classList.contains("is-stale"), curve()]).toEqual([true, before]);
    await vi.waitFor(() => expect(block.host.classList.contains("is-stale")).toBe(false), 20_000);
    expect(curve()).not.toBe(before);
  });

  it("say so where nothing can be flown", async () => {
    const still = withValue(clubTrainer, "mainRotor.bladeCentreMm", 5000);
    const block = mounted(row(50, 3, still));
    await vi.waitFor(
      () => expect(plain(block.one("figcaption").textContent)).toBe("None of these gains can be flown."),
      20_000,
    );
  });
});
