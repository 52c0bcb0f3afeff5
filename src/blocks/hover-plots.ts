/** What the rotor asks in hover against head speed: its power and what it is made of, and how long the hover lasts. */
import { type HoverCurve, hoverCurve, longestHover, pitchEndsAt } from "#figures/curves-hover";
import type { Figures } from "#figures/figures";
import { plot } from "#plots/plot";
import type { Curve, Handle, PlotState, Point, Zone } from "#plots/state";
import { valueAt } from "#plots/table";
import { formatValue } from "#view/format";
import type { Shown } from "#view/shown";
import { enRotor as en } from "#view/words/en-rotor";

type Line = Pick<Curve, "xs" | "ys">;

/** The flight modes as marks on a curve; each is dragged to another head speed. */
function modeMarks(figures: Figures, line: Line | null, factor = 1): Handle[] {
  const last = line?.xs[line.xs.length - 1] ?? 0;
  return figures.machine.modes.map(({ name, headRpm }, i) => {
    const y = line && valueAt(line, headRpm);
    return {
      key: `mode-${i}`,
      x: headRpm,
      y: y === null || y === undefined ? 0 : y * factor,
      moves: "x" as const,
      path: `modes.${i}.headRpm`,
      value: headRpm,
      min: 100,
      max: Math.max(last, headRpm),
      step: 10,
      name: `${name}: ${en.head}`,
      valueText: formatValue(headRpm, "rpm"),
      shows: name,
    };
  });
}

const axis = (curve: Line | null) => {
  const last = curve?.xs[curve.xs.length - 1];
  return { label: en.head, unit: "rpm", low: 0, ...(last === undefined ? {} : { high: last }) };
};

/** Where the machine can't hover, hatched. */
function stallZone(curve: HoverCurve | null): Zone[] {
  const first = curve?.speeds[0];
  return first === undefined ? [] : [{ key: "stall", words: en.power.cannot, x: [null, first] }];
}

function powerWords(figures: Figures, mode: number): string {
  const curve = hoverCurve(figures);
  if (!curve) return en.noHover;
  const { name = "", headRpm = 0 } = figures.machine.modes[mode] ?? {};
  const at = (ys: Curve["ys"]) => valueAt({ xs: curve.speeds, ys }, headRpm);
  const [all, turning] = [figures.number("hover-power", mode), at(curve.turning)];
  const first = formatValue(curve.speeds[0] ?? 0, "rpm");
  if (all === null || turning === null)
    return `${name} asks for a speed at which it can't hover. Hovering begins at ${first}.`;
  const share = formatValue((100 * turning) / all, "percent", { decimals: 0 });
  return `In ${name} the main rotor takes ${formatValue(all, "W")} to hover, and ${share} of that only turns the blades. Hovering begins at ${first}.`;
}

/** Power of the main rotor in hover against head speed, in its two parts; the modes can be dragged along it. */
export function hoverPowerPlot(figures: Figures, mode = 0): Shown<PlotState> {
  const curve = hoverCurve(figures);
  const curves: Curve[] = curve
    ? [
        { key: "all", label: en.power.all, ink: "now", xs: curve.speeds, ys: curve.power },
        { key: "turning", label: en.power.turning, ink: "plain", xs: curve.speeds, ys: curve.turning },
        { key: "carrying", label: en.power.carrying, ink: "plain", xs: curve.speeds, ys: curve.carrying },
      ]
    : [];
  const line = curve && { xs: curve.speeds, ys: curve.power };
  return plot({
    name: "hover-power",
    title: en.power.title,
    unit: "W",
    x: axis(line),
    y: { label: en.power.title, unit: "W", low: 0, ...(curve ? {} : { high: 1 }) },
    curves,
    zones: stallZone(curve),
    handles: modeMarks(figures, line),
    words: powerWords(figures, mode),
  });
}

/** How the longest hover comes about, in words that hold on both sides of it. */
export function longestWords(figures: Figures): string {
  const longest = longestHover(figures);
  if (!longest) return hoverCurve(figures) ? "At this charge no head speed gives any hover time." : en.noHover;
  const at = formatValue(longest.speed, "rpm", { uncertainty: 30 });
  const minutes = formatValue(longest.minutes, "min");
  return longest.below === "turn"
    ? `The hover is longest at about ${at}: ${minutes}. Slower than that it gets shorter again: the blades work at so steep an angle that their drag eats what was saved.`
    : `The hover is longest at about ${at}: ${minutes}. Slower than that there is none: ${en.ends}.`;
}

function timeWords(figures: Figures, mode: number): string {
  const { name = "" } = figures.machine.modes[mode] ?? {};
  const minutes = figures.number("hover-duration", mode);
  const here =
    minutes === null
      ? `${name} can't be held in hover at this charge.`
      : `In ${name} the hover lasts ${formatValue(minutes, "min")}.`;
  return `${here} ${longestWords(figures)}`;
}

/** Hover time against head speed, with the longest one marked; the modes can be dragged along it. */
export function hoverTimePlot(figures: Figures, whatIf: Figures | null = null, mode = 0): Shown<PlotState> {
  const curve = hoverCurve(figures);
  const other = whatIf && hoverCurve(whatIf);
  const longest = longestHover(figures);
  const line = curve && { xs: curve.speeds, ys: curve.minutes };
  const curves: Curve[] = [
    ...(curve ? [{ key: "now", label: en.time.now, ink: "now" as const, xs: curve.speeds, ys: curve.minutes }] : []),
    ...(other
      ? [{ key: "what-if", label: en.time.whatIf, ink: "what-if" as const, xs: other.speeds, ys: other.minutes }]
      : []),
  ];
  const points: Point[] = longest
    ? [
        {
          key: "longest",
          x: longest.speed,
          y: longest.minutes,
          kind: "place",
          label: en.time.longest(formatValue(longest.minutes, "min")),
        },
      ]
    : [];
  const ends = pitchEndsAt(figures, mode);
  const first = curve?.speeds[0] ?? 0;
  const zones = stallZone(curve);
  if (ends !== null && ends > first * 1.01) zones.push({ key: "pitch", words: en.time.pitch, x: [first, ends] });
  return plot({
    name: "hover-time",
    title: en.time.title,
    unit: "min",
    x: axis(line),
    y: { label: en.time.minutes, unit: "min", low: 0, high: Math.max(1, longest?.minutes ?? 0) },
    curves,
    zones,
    points,
    handles: modeMarks(figures, line),
    words: timeWords(figures, mode),
  });
}
