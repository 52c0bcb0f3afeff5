import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { doubtsBar } from "#blocks/doubts-bar";
import { rewoundFor } from "#figures/curves-pack";
import { figuresOf } from "#figures/figures";
import { type Answers, answer, answersNow, onAnswer } from "#view/answers";
import { machineWith } from "../figures/machines.ts";
import { mounted, plain, wordsOf } from "./mounted.ts";

const now = figuresOf(machineWith({}));
const then = figuresOf(rewoundFor(machineWith({}), 8));
const about = { name: "ceiling-full-pitch", mode: 2, of: "now" } as const;
const shown = (answers: Answers = {}) => doubtsBar(now, null, about, answers);

beforeEach(() => void vi.useFakeTimers());
afterEach(() => {
  vi.useRealTimers();
  for (const id of Object.keys(answersNow())) answer(id, null);
});

const rested = (shown: ReturnType<typeof doubtsBar>) => {
  const page = mounted(shown);
  vi.advanceTimersByTime(2000);
  return page;
};

describe("which doubt matters", () => {
  it("is asked before it is told, in the order of the alphabet", () => {
    const { all, one } = rested(shown());
    const options = all("label").map((label) => label.textContent ?? "");
    expect(options).toContain("Motor Kv");
    expect(options).toEqual([...options].sort((a, b) => a.localeCompare(b)));
    expect(one(".doubts-list").querySelector("table")).toBeNull();
    expect(plain(one(".doubts-words").textContent)).toMatch(/19 in 20 lie between 2,\d+ rpm and 2,\d+ rpm/);
  });

  it("is answered by bars, the longest first, with both sides of each", () => {
    const { all, one } = rested(shown({ "doubt-ceiling-full-pitch-now": "pack.chargePercent both" }));
    expect(all("tbody th")[0]?.textContent).toBe("Motor Kv");
    const width = (row: Element | undefined) =>
      [...(row?.querySelectorAll("rect") ?? [])].map((rect) => Number.parseFloat(rect.getAttribute("width") ?? ""));
    const rows = all("tbody tr");
    expect(Math.max(...width(rows[0]))).toBe(48);
    const charge = rows.find((row) => row.textContent?.startsWith("State of charge"));
    // A full pack can't be fuller.
    expect(width(charge)[1]).toBe(0);
    expect(width(charge)[0]).toBeGreaterThan(0);
    expect(charge?.className).toBe("is-guess");
    const reply = plain(one('[role="status"]').textContent);
    expect(reply).toMatch(
      /^You said state of charge: .* Motor Kv matters most: known exactly, it would make the band 5\d % narrower/,
    );
    expect(reply).toContain("To know it better: motor screwed down, pinion off");
  });

  it("praises who said so", () => {
    const { one } = rested(shown({ "doubt-ceiling-full-pitch-now": "motor.kvRpmPerVolt both" }));
    expect(plain(one('[role="status"]').textContent)).toMatch(/^You said so\. Motor Kv/);
  });

  it("takes a tick for a measurement, and the band shrinks", () => {
    const page = rested(shown({ "doubt-ceiling-full-pitch-now": "show me" }));
    const off = onAnswer(() => page.update(shown(answersNow())));
    answer("doubt-ceiling-full-pitch-now", "show me");
    const tick = page.one<HTMLInputElement>('input[data-doubt="motor.kvRpmPerVolt both"]');
    tick.checked = true;
    tick.dispatchEvent(new Event("change"));
    off();
    const words = plain(page.one(".doubts-words").textContent);
    const [low, high] =
      /known exactly: ([\d,]+) rpm to ([\d,]+) rpm/
        .exec(words)
        ?.slice(1)
        .map((end) => Number(end.replace(",", ""))) ?? [];
    expect((high ?? 0) - (low ?? 0)).toBeGreaterThan(100);
    expect((high ?? 0) - (low ?? 0)).toBeLessThan(200);
    expect(page.one("tr.is-known").textContent).toContain("Motor Kv");
  });

  it("tells of which machine a part is that only one has", () => {
    const about = { name: "hover-pack-current", mode: 2, of: "difference" } as const;
    const { all, one } = rested(doubtsBar(now, then, about, { "doubt-hover-pack-current-difference": "show me" }));
    expect(all("tbody th").map((th) => th.textContent)).toContain("No-load current (now)");
    expect(plain(one(".doubts-words").textContent)).toMatch(/^−2\.9 A/);
  });

  it("says so where the figure doesn't exist", () => {
    const weak = figuresOf(machineWith({ "motor.kvRpmPerVolt": 300 }));
    const { one } = rested(doubtsBar(weak, null, { ...about, name: "hover-pack-current" }, {}));
    expect(one(".doubts-words").textContent).toContain("doesn't exist");
  });

  it("has words of its own", () => {
    expect(wordsOf(shown())).toContain("most the rotor can turn at full pitch, now");
  });
});
