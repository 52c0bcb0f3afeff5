import { afterEach, describe, expect, it } from "vitest";
import { causeList } from "#blocks/cause-list";
import { misreadCase } from "#blocks/misread-case";
import { readingPlot, shapesPlot } from "#blocks/misread-plot";
import { readingsInput, readingTyped } from "#blocks/readings-input";
import { figuresOf } from "#figures/figures";
import { explain } from "#figures/misread";
import { causeKeys } from "#figures/misread-causes";
import { answer, answersNow, onAnswer } from "#view/answers";
import { enMisread } from "#view/words/en-misread";
import { learnedAt } from "../figures/machines.ts";
import { leavesElements, mounted, plain, wordsOf } from "./mounted.ts";

const machine = learnedAt(13_950);
const figures = figuresOf(machine);
const how = { instrument: "optical", load: "hover", sure: 0.004 } as const;
const rows = machine.modes.map(({ headRpm }, mode) => ({ mode, measured: Math.round((headRpm * 14) / 13) }));
const reading = { ...how, rows };
const causes = explain(figures, reading);

afterEach(() => {
  for (const id of Object.keys(answersNow())) answer(id, null);
});

describe("readings that the reader types", () => {
  const start = () => {
    const page = mounted(readingsInput(figures, answersNow()));
    const off = onAnswer(() => page.update(readingsInput(figures, answersNow())));
    const type = (i: number, text: string) => {
      const box = page.all<HTMLInputElement>("input")[i];
      if (!box) throw new Error("no such mode");
      box.value = text;
      box.dispatchEvent(new Event("change"));
      return box;
    };
    return { ...page, type, off };
  };

  it("are kept among the answers and make a reading, mode by mode", () => {
    const { type, off } = start();
    type(0, "1,995");
    type(2, "2640 ");
    off();
    expect(readingTyped(figures, answersNow(), how)).toEqual({
      ...how,
      rows: [
        { mode: 0, measured: 1995 },
        { mode: 2, measured: 2640 },
      ],
    });
  });

  it("are refused in words where they are no speed, and the last good one stays", () => {
    const { type, one, off } = start();
    type(0, "1995");
    type(0, "fast");
    expect(plain(one(".input-problem").textContent)).toMatch(/“fast” is no head speed/);
    type(1, "90000");
    off();
    expect(readingTyped(figures, answersNow(), how).rows).toEqual([{ mode: 0, measured: 1995 }]);
  });

  it("can be taken back, one or all, without anything moving", () => {
    const { type, button, host, off } = start();
    const boxes = leavesElements(host, () => {
      type(0, "1995");
      type(1, "2200");
    });
    expect(boxes).toBe(true);
    const box = type(1, "");
    expect(readingTyped(figures, answersNow(), how).rows).toHaveLength(1);
    button("clear all").click();
    off();
    expect(readingTyped(figures, answersNow(), how).rows).toEqual([]);
    expect(box.value).toBe("");
  });
});

describe("the plot of a reading", () => {
  it("has measured points with bars of two standard uncertainties over what was asked for", () => {
    const { points } = readingPlot(figures, reading, null).state;
    expect(points).toHaveLength(3);
    const [first] = points ?? [];
    expect(first).toMatchObject({ kind: "measured", x: 1850, label: "gentle" });
    expect(first?.y).toBeCloseTo(107.7, 1);
    expect(first?.high).toBeCloseTo((first?.y ?? 0) * 1.008, 9);
    expect(first?.low).toBeCloseTo((first?.y ?? 0) * 0.992, 9);
  });

  it("keeps its lines until they may be told, and draws those that lie together once", () => {
    expect(readingPlot(figures, reading, null).state.curves).toEqual([]);
    const { curves, words } = readingPlot(figures, reading, causes).state;
    expect(curves.map(({ label }) => label)).toEqual(["teeth"]);
    expect(Array.from(curves[0]?.ys ?? [])).toEqual(rows.map(() => expect.closeTo(107.69, 1)));
    expect(words).toContain("explain it: teeth");
    const { table } = readingPlot(figures, reading, causes).state;
    expect(table?.columns.at(-1)).toBe("teeth");
    expect(table?.rows[0]?.map((cell) => plain(String(cell)))).toEqual([
      "gentle",
      "1,850 rpm",
      "1,992 rpm",
      "107.7 %",
      "107.7 %",
    ]);
  });

  it("says so where nothing was read, and where nothing fits", () => {
    expect(readingPlot(figures, { ...how, rows: [] }, []).state.words).toBe("Nothing has been read yet.");
    const odd = { ...how, rows: rows.map(({ mode }, i) => ({ mode, measured: [1000, 3000, 1700][i] ?? 0 })) };
    expect(readingPlot(figures, odd, explain(figures, odd)).state.words).toContain("No single cause");
  });
});

describe("the shapes of faults", () => {
  const ends = (key: string) => {
    const ys = [...((shapesPlot(figures).state.curves.find((curve) => curve.key === key)?.ys ?? []) as number[])];
    return [ys[0] ?? 0, ys.at(-1) ?? 0] as const;
  };

  it("are level, lifted at the slow end, and fallen at the fast end", () => {
    expect(ends("count")[0]).toBe(ends("count")[1]);
    expect(ends("low-end")[0]).toBeGreaterThan(ends("low-end")[1] + 2);
    expect(ends("low-end")[1]).toBeGreaterThan(100);
    expect(ends("ceiling")[0]).toBe(100);
    // 1.05 of the fastest mode is the plot's end, 0.95 of it the ceiling.
    expect(ends("ceiling")[1]).toBeCloseTo((100 * 0.95) / 1.05, 6);
  });
});

describe("the list of causes", () => {
  it("has the likeliest first, with what it is, how well it fits and the check that tells it", () => {
    const { all } = mounted(causeList(causes));
    expect(all("li").map((line) => line.dataset.cause)[0]).toBe("teeth");
    expect(plain(all("li")[0]?.textContent)).toMatch(
      /it fits 14 to 120.*likely · explains it, to 0\.0 %.*Check: Unplug the pack\. Count the pinion/,
    );
    const filled = all("li")[0]?.querySelector("rect")?.getAttribute("width") ?? "";
    expect(Number.parseFloat(filled)).toBeGreaterThan(50);
  });

  it("waits, asks for readings, or says that nothing fits", () => {
    expect(wordsOf(causeList(null))).toContain("after your guess");
    expect(wordsOf(causeList([]))).toContain("Type what you read");
    expect(wordsOf(causeList(causes.map((cause) => ({ ...cause, fits: false }))))).toContain("No single cause");
  });

  it("has words for every fault, whole sentences all of them", () => {
    for (const key of causeKeys) {
      const { found, check, shows } = enMisread.causes[key];
      const sizes = {
        told: 14,
        poles: 10,
        pinion: 14,
        main: 120,
        charge: 40,
        blades: 2,
        flicker: 100,
        mains: 50,
        top: 2450,
      };
      expect(found(sizes, "+2 %")).toMatch(/^[A-Z].*[.]$/);
      expect(check).toMatch(/^[A-Z].*[.]$/);
      expect(shows).toMatch(/^[a-z]/);
    }
  });
});

describe("a case to puzzle over", () => {
  it("tells nothing before the guess", () => {
    const { story, table, question, plot, causes } = misreadCase(figures, {});
    expect(plain(story)).toBe("read with an optical tachometer at the rotor, in hover, each reading good to 0.4 %");
    expect(table?.state.rows).toHaveLength(3);
    expect(question?.state.given).toBeNull();
    expect(plot?.state.curves).toEqual([]);
    expect(causes && wordsOf(causes)).toContain("after your guess");
  });

  it("answers a guess, right or wrong, and ranks the causes then", () => {
    const { question } = misreadCase(figures, {});
    const id = question?.state.id ?? "";
    const wrong = misreadCase(figures, { [id]: "ceiling" });
    expect(question?.state.right).toBe("teeth");
    expect(wrong.question && wordsOf(wrong.question)).toMatch(
      /That would show otherwise: slow modes are right.*Its mark: the same share/,
    );
    expect(wrong.plot?.state.curves.length).toBeGreaterThan(0);
    expect(wrong.causes && mounted(wrong.causes).all("li")[0]?.dataset.cause).toBe("teeth");
  });

  it("goes on to another one", () => {
    const { next, question } = misreadCase(figures, {});
    if (!next) throw new Error("no next case");
    mounted(next).button("another case").click();
    const after = misreadCase(figures, answersNow());
    expect(after.question?.state.id).not.toBe(question?.state.id);
    expect(after.question?.state.right).not.toBe("teeth");
  });
});
