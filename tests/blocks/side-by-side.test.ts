import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { rangeWords, settle, sideBySide, verdictWords } from "#blocks/side-by-side";
import type { QuantityName } from "#figures/catalogue";
import { rewoundFor } from "#figures/curves-pack";
import { figuresOf } from "#figures/figures";
import { machineWith } from "../figures/machines.ts";
import { leavesElements, mounted, plain, wordsOf } from "./mounted.ts";

const names: readonly QuantityName[] = ["hover-power", "hover-pack-current", "ceiling-full-pitch"];
const now = figuresOf(machineWith({}));
const then = figuresOf(rewoundFor(machineWith({}), 8));
const both = () => sideBySide(now, then, names, 2);

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

const rest = () => vi.advanceTimersByTime(5000);

describe("two machines side by side", () => {
  it("give their figures at once, each under the name of its machine", () => {
    const { one } = mounted(both());
    const output = (which: string) => one(`output[data-quantity="hover-pack-current"][data-machine="${which}"]`);
    expect(Number(output("now").dataset.value)).toBe(now.number("hover-pack-current", 2));
    expect(Number(output("what-if").dataset.value)).toBe(then.number("hover-pack-current", 2));
    expect(output("now").dataset.mode).toBe("2");
    expect(one("table").classList).toContain("is-moving");
  });

  it("give bands and verdicts when the hand rests", () => {
    const { one, all } = mounted(both());
    rest();
    expect(one("table").classList).not.toContain("is-moving");
    expect(all("tr[data-row]").map((row) => row.dataset.verdict)).toEqual(["same", "lower", "too-close"]);
    expect(plain(one('[data-row="hover-pack-current"] .side-verdict').textContent)).toBe("clearly lower, by 2.9 A");
    expect(plain(one('[data-row="ceiling-full-pitch"] .side-verdict').textContent)).toMatch(/rpm: too close to call$/);
    expect(plain(one(".side-words").textContent)).toBe(
      "They clearly differ in: pack current in hover. 1 figure is too close to call. 1 is the same.",
    );
  });

  it("draw each bar from end to end of its band on the scale of its row", () => {
    const { host } = mounted(both());
    rest();
    const bars = [...host.querySelectorAll('[data-row="hover-pack-current"] .bar')];
    const ends = bars.map((bar) => ["x1", "x2"].map((end) => Number.parseFloat(bar.getAttribute(end) ?? "")));
    const [first, second] = ends as [[number, number], [number, number]];
    expect(first[0]).toBeGreaterThan(second[1]);
    expect(Math.min(...first, ...second)).toBeGreaterThan(0);
    expect(Math.max(...first, ...second)).toBeLessThan(100);
  });

  it("leave every element where it is when a machine changes, and take the old verdicts back until it rests", () => {
    const { host, one, update } = mounted(both());
    rest();
    const other = figuresOf(machineWith({ "gears.pinionTeeth": 14 }));
    expect(leavesElements(host, () => update(sideBySide(now, other, names, 2)))).toBe(true);
    expect(one("table").classList).toContain("is-moving");
    rest();
    expect(one('[data-row="ceiling-full-pitch"]').dataset.verdict).toBe("higher");
  });

  it("show one machine with its bands where there is no other", () => {
    const { one } = mounted(sideBySide(now, null, names, 2));
    rest();
    expect(one("table").classList).toContain("is-alone");
    expect(plain(one('[data-row="hover-pack-current"] .side-range').textContent)).toMatch(/^10\.2 to 12\.8 A$/);
    expect(one(".side-words").textContent).toContain("19 in 20");
  });

  it("say both figures in words", () => {
    expect(plain(wordsOf(both()))).toMatch(/pack current in hover: now 11\.5 A, what if 8\.6 A\./);
  });
});

describe("a verdict in words", () => {
  const state = { now, whatIf: then, names, mode: 2 };
  it("has no figure where the difference is nothing beside its doubt, or where there is none", () => {
    const between = { value: 0.1, low: -200, high: 200, doubts: [] };
    const settled = { now: null, whatIf: null, between, verdict: "too close" as const };
    expect(verdictWords(settled, "rpm")).toBe("no difference that counts");
    expect(verdictWords({ ...settled, between: null }, "rpm")).toBe("no figure");
  });

  it("cuts both ends of a band at the same digit", () => {
    const { now: band } = settle(state, "ceiling-full-pitch");
    expect(band && plain(rangeWords(band, "rpm"))).toMatch(/^2,\d\d0 to 2,\d\d0 rpm$/);
  });
});
