import { describe, expect, it } from "vitest";
import { laneStates, timeText, timeUnit } from "#blocks/flight-lanes";
import { heightOf, laneLayouts } from "#blocks/flight-layout";
import { flightPlot } from "#blocks/flight-plot";
import { resultsOf } from "#blocks/flight-state";
import { flightOf } from "#flights/flight";
import { clubTrainer } from "#machine/demos";
import { areaOf } from "#plots/labels";
import { plain } from "./mounted.ts";

const { state } = flightPlot({
  id: "punch",
  machine: clubTrainer,
  whatIf: null,
  answers: {},
  mode: 2,
  scenario: { kind: "punch" },
  pack: "tired",
  headRpm: 2600,
});
const results = resultsOf(state)!;
const plots = laneStates(state, results, { pinned: null, draft: null }, 640);

describe("the lanes of a flight", () => {
  it("show head speed, duty, collective and volts, each in its unit, with the speed asked for", () => {
    expect(plots.map(({ name }) => name)).toEqual(["head-speed", "duty", "collective", "voltage"]);
    expect(plots.map(({ y }) => y.unit)).toEqual(["rpm", "percent", "deg", "V"]);
    expect(plots[0]!.levels?.map(({ at }) => at)).toEqual([2600]);
    expect(plots.map(({ curves }) => curves.length)).toEqual([1, 1, 1, 1]);
  });

  it("end with flights that end long before their time, and else where they were meant to", () => {
    const end = (result: (typeof results)[number]) => (result.ok ? result.end.time : 0);
    expect(plots[0]!.x.high).toBe(state.seconds);
    const down = flightPlot({
      id: "down",
      machine: clubTrainer,
      whatIf: null,
      answers: {},
      mode: 2,
      scenario: { kind: "autorotation", bailOut: false },
      pack: "own",
    }).state;
    const flown = down.runs.map(({ request }) => flightOf(request));
    expect(end(flown[0]!)).toBeLessThan(down.seconds / 2);
    const high = (state: typeof down, pinned = null as (typeof flown)[number] | null) =>
      laneStates(state, flown, { pinned, draft: null }, 640)[0]!.x.high!;
    expect(high(down)).toBeGreaterThanOrEqual(end(flown[0]!));
    expect(high(down)).toBeLessThanOrEqual(down.seconds / 2);
    // A flight that is kept beside it and lasts longer is not cut.
    const longer = { ...flown[0]!, end: { time: 0.9 * down.seconds } } as (typeof flown)[number];
    expect(high(down, longer)).toBe(down.seconds);
    expect(60 * high({ ...down, seconds: 200 })).toBeCloseTo(200, 9);
    const drawing = {
      ...state.drawing,
      what: "collective",
      values: [],
      drawn: true,
    } as unknown as typeof state.drawing;
    expect(high({ ...down, drawing })).toBe(down.seconds);
  });

  it("hatch the stretch of full duty across the head speed, where the duty stands at its limit", () => {
    const [zone] = plots[0]!.zones!;
    const [from, to] = zone!.x!;
    const { xs, ys } = plots[1]!.curves[0]!;
    const inside = Array.from(xs).flatMap((x, i) => (x > from! + 0.02 && x < to! - 0.02 ? [ys[i]!] : []));
    expect(inside.length).toBeGreaterThan(5);
    expect(Math.min(...inside)).toBeGreaterThan(99);
    expect(zone!.words).toBe("full duty");
  });

  it("stand below each other with one scale of time, inside their box", () => {
    for (const width of [320, 640, 1000]) {
      const layouts = laneLayouts(plots, width, new Map(), false);
      expect(new Set(layouts.map(({ x }) => x(1))).size).toBe(1);
      for (const [i, { top, bottom, left, right, box }] of layouts.entries()) {
        expect(box).toEqual({ width, height: heightOf(4) });
        expect(left).toBeGreaterThan(20);
        expect(right).toBeLessThanOrEqual(width - 10);
        expect(bottom).toBeLessThan(box.height);
        if (i > 0) expect(top).toBeGreaterThan(layouts[i - 1]!.bottom);
      }
      // Time is written once, at the foot.
      expect(layouts.map(({ xTicks }) => xTicks.length > 0)).toEqual([false, false, false, true]);
    }
  });

  it("have their words within a narrow box, and off the lines", () => {
    const twice = flightPlot({
      id: "twice",
      machine: clubTrainer,
      whatIf: null,
      answers: {},
      mode: 2,
      // It ends while the head still runs over: the corner that words would take first is the curves'.
      scenario: { kind: "punch", hold: 1.8, after: 0.6 },
      pack: "tired",
      headRpm: 2560,
      antiWindup: "none",
      label: "your gains",
      compare: [{ key: "more", label: "four times", proportionalGain: 12 }],
    }).state;
    const lanes = laneStates(twice, resultsOf(twice)!, { pinned: null, draft: null }, 340);
    const [first] = laneLayouts(lanes, 340, new Map(), false);
    const { curveLabels, levelLabels, x, y, left, right, top, bottom } = first!;
    const labels = [...curveLabels, ...levelLabels].flatMap((label) =>
      label && label.lines.length > 0 ? [label] : [],
    );
    expect(labels.flatMap(({ lines }) => lines).sort()).toEqual(["asked for", "four times", "your gains"]);
    const areas = labels.map((label) => areaOf(label.lines, label));
    for (const [i, area] of areas.entries()) {
      expect([area.left >= left, area.right <= right, area.top >= top, area.bottom <= bottom]).not.toContain(false);
      for (const { xs, ys } of lanes[0]!.curves) {
        for (const [k, time] of Array.from(xs).entries()) {
          const [px, py] = [x(time), y(ys[k]!)];
          expect(px > area.left && px < area.right && py > area.top && py < area.bottom, labels[i]!.lines[0]).toBe(
            false,
          );
        }
      }
      for (const other of areas.slice(i + 1)) {
        expect(
          Math.min(area.bottom, other.bottom) - Math.max(area.top, other.top) > 1 &&
            Math.min(area.right, other.right) > Math.max(area.left, other.left),
        ).toBe(false);
      }
    }
  });

  it("keep their axes while a hand draws", () => {
    const memory = new Map();
    const [before] = laneLayouts(plots, 640, memory, false);
    const higher = { ...plots[0]!, curves: [{ ...plots[0]!.curves[0]!, ys: [2600, 4000] }] };
    const [held] = laneLayouts([higher, ...plots.slice(1)], 640, memory, true);
    expect(held!.y.domain()).toEqual(before!.y.domain());
    const [free] = laneLayouts([higher, ...plots.slice(1)], 640, memory, false);
    expect(free!.y.domain()[1]).toBeGreaterThanOrEqual(4000);
  });

  it("count long flights in minutes", () => {
    expect([timeUnit(20), timeUnit(360)]).toEqual([1, 60]);
    expect(plain(timeText(1.234, 5))).toBe("1.23 s");
    expect(plain(timeText(90, 360))).toBe("1.50 min");
  });
});
