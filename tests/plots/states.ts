/** A state with everything in it, and a plot mounted on a page with a bench that only listens. */
import type { Bench } from "#machine/bench";
import { plotView } from "#plots/plot";
import type { PlotState } from "#plots/state";

export function fullState(speed = 2000, over: Partial<PlotState> = {}): PlotState {
  const xs = [0, 25, 50, 75, 100];
  return {
    name: "headroom",
    title: "Head speed against charge",
    unit: "rpm",
    x: { label: "charge", unit: "percent", low: 0, high: 100, exact: true, reversed: true, ends: ["full", "empty"] },
    y: { label: "head speed", unit: "rpm" },
    curves: [
      { key: "hover", label: "ceiling, hover", ink: "now", xs, ys: [2000, 2150, 2250, 2350, 2500] },
      { key: "other", label: "what if, hover", ink: "what-if", xs, ys: [1900, 2050, null, 2250, 2400] },
      { key: "earlier", label: "pinned", ink: "pinned-now", xs, ys: [1950, 2000, 2050, 2100, 2150] },
      { key: "guess", label: "your guess", ink: "pencil", xs: [0, 100], ys: [2100, 2300] },
      { key: "teeth", label: "", ink: "now", dots: true, xs, ys: [1900, 1900, 1900, 1900, 1900] },
    ],
    levels: [
      { key: "set", axis: "y", at: speed, label: "set speed", ink: "plain" },
      { key: "charge", axis: "x", at: 60, label: "now", ink: "plain" },
    ],
    zones: [
      { key: "limit", words: "over the limit", y: [2400, null] },
      {
        key: "short",
        words: "cannot be held",
        between: { xs, lower: [1900, 1900, 1900, null, null], upper: xs.map(() => speed) },
      },
    ],
    points: [
      { key: "seen", kind: "measured", x: 80, y: 2200, low: 2150, high: 2260, label: "measured" },
      { key: "meet", kind: "place", x: 20, y: speed, label: "no room left" },
    ],
    handles: [
      {
        key: "set",
        x: null,
        y: speed,
        moves: "y",
        path: "modes.0.headRpm",
        value: speed,
        min: 600,
        max: 3600,
        step: 10,
        name: "head speed of the mode hover",
        valueText: `${speed} rpm`,
      },
      {
        key: "charge",
        x: 60,
        y: null,
        moves: "x",
        path: "pack.chargePercent",
        value: 60,
        min: 0,
        max: 100,
        step: 1,
        name: "charge",
        valueText: "60 %",
        machine: "what-if",
      },
    ],
    words: "Held until 20 % of charge. Then no more.",
    ...over,
  };
}

interface Proposal {
  path: string;
  value: unknown;
  machine?: string | undefined;
  gesture?: string | undefined;
}

/** Mounts a plot; `problem` is what the bench answers to every proposal. */
export function mounted(state: PlotState, problem: string | null = null) {
  const proposals: Proposal[] = [];
  const bench = {
    set(path: string, value: unknown, options: { machine?: string; gesture?: string } = {}) {
      proposals.push({ path, value, machine: options.machine, gesture: options.gesture });
      return problem === null ? null : { path, value, words: problem };
    },
  } as unknown as Bench;
  const host = document.createElement("div");
  document.body.append(host);
  const update = plotView.mount(host, bench);
  update(state);
  const one = (selector: string): Element => {
    const found = host.querySelector(selector);
    if (!found) throw new Error(`nothing matches ${selector}`);
    return found;
  };
  return { host, update, proposals, one };
}
