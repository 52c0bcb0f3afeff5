/** Head speed against throttle: the straight line of the reference, the usable band, the ceilings, and the modes as marks. */
import type { Figures } from "#figures/figures";
import { modeName } from "#figures/mode-name";
import { plot } from "#plots/plot";
import type { Curve, Handle, Level, PlotState, Zone } from "#plots/state";
import { formatModelled, formatValue } from "#view/format";
import type { Shown } from "#view/shown";
import { enBlocks as en } from "#view/words/en-blocks";
import { quantityText } from "./quantity.ts";

const words = en.plots.throttle;
const ENDS = [0, 100];

function line(figures: Figures, key: string, label: string, ink: Curve["ink"]): Curve | null {
  const reference = figures.number("learned-head-speed");
  return reference === null ? null : { key, label, ink, xs: ENDS, ys: [0, reference] };
}

function ceilings(figures: Figures, mode: number): Level[] {
  const levels: Level[] = [];
  const hover = figures.number("ceiling-hover", mode);
  const full = figures.number("ceiling-full-pitch", mode);
  if (hover !== null) levels.push({ key: "hover", axis: "y", at: hover, label: words.hover, ink: "now" });
  if (full !== null) levels.push({ key: "full", axis: "y", at: full, label: words.full, ink: "now" });
  return levels;
}

function zones(figures: Figures): Zone[] {
  const { usableLowPercent, usableHighPercent } = figures.machine.controller;
  return [
    { key: "low", words: words.low, x: [null, usableLowPercent] },
    { key: "high", words: words.high, x: [usableHighPercent, null] },
  ];
}

function handles(figures: Figures): Handle[] {
  const reference = figures.number("learned-head-speed");
  if (reference === null) return [];
  return figures.machine.modes.map((mode, i) => ({
    key: `mode-${i}`,
    x: (100 * mode.headRpm) / reference,
    y: mode.headRpm,
    moves: "x" as const,
    path: `modes.${i}.headRpm`,
    value: mode.headRpm,
    min: 100,
    max: Math.max(reference, mode.headRpm),
    step: 10,
    scale: reference / 100,
    name: `${modeName(figures.machine, i)}: ${words.y}`,
    valueText: formatValue(mode.headRpm, "rpm"),
    shows: modeName(figures.machine, i),
  }));
}

function summary(figures: Figures, mode: number): string {
  const reference = figures.number("learned-head-speed");
  if (reference === null) return en.modes.noReference;
  const { usableLowPercent: low, usableHighPercent: high } = figures.machine.controller;
  const name = modeName(figures.machine, mode);
  const throttle = figures.number("throttle", mode);
  const ceiling = figures.number("ceiling-full-pitch", mode);
  const asked = figures.number("set-head-speed", mode);
  const asks = words.asks(name, formatValue(asked, "rpm"), formatValue(throttle, "percent"));
  const most = formatModelled(ceiling);
  const held = ceiling === null || asked === null ? "" : (ceiling >= asked ? words.most : words.notHeld)(most);
  return [asks, held, words.band(quantityText({ figures, name: "learned-head-speed" }), low, high)]
    .filter(Boolean)
    .join(" ");
}

/** The plot of head speed against throttle for a machine, and for the what-if beside it. */
export function throttlePlot(figures: Figures, whatIf: Figures | null = null, mode = 0): Shown<PlotState> {
  const curves = [
    line(figures, "set", words.set, "now"),
    whatIf && line(whatIf, "set-what-if", words.whatIf, "what-if"),
  ].filter((curve): curve is Curve => curve !== null);
  return plot({
    name: "throttle",
    title: words.title,
    unit: "rpm",
    x: { label: words.x, unit: "percent", low: 0, high: 100, exact: true },
    y: { label: words.y, unit: "rpm", low: 0, high: figures.number("learned-head-speed") ?? 1000 },
    curves,
    levels: ceilings(figures, mode),
    zones: zones(figures),
    handles: handles(figures),
    words: summary(figures, mode),
  });
}
