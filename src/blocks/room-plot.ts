/** Head speed against charge: ceilings that sink, a set speed that doesn't, and the place where they meet. */
import { ceilingCurve } from "#figures/curves";
import type { Figures } from "#figures/figures";
import { modeName } from "#figures/mode-name";
import { fieldAt } from "#machine/fields";
import { plot } from "#plots/plot";
import type { Curve, Handle, Level, PlotState, Point, Zone } from "#plots/state";
import { formatModelled, formatValue } from "#view/format";
import type { Shown } from "#view/shown";
import { enBlocks as en } from "#view/words/en-blocks";

const words = en.plots.room;
const ceilingWords = en.plots.throttle;

function curvesOf(figures: Figures, mode: number, ink: "now" | "what-if"): Curve[] {
  const tag = ink === "now" ? "" : ` (${ceilingWords.whatIf})`;
  return (["hover", "full-pitch"] as const).map((load) => {
    const { charges, speeds } = ceilingCurve(figures, load, mode);
    const label = (load === "hover" ? ceilingWords.hover : ceilingWords.full) + tag;
    return { key: `${load}-${ink}`, label, ink, xs: charges, ys: speeds };
  });
}

/** Below the set speed and above the ceiling: what the governor asks for and the pack can't give. */
function cannotZone(curves: readonly Curve[], asked: number): Zone[] {
  const full = curves[1];
  if (!full) return [];
  const upper = Array.from(full.ys, (y) => (y !== null && y < asked ? asked : null));
  if (upper.every((y) => y === null)) return [];
  const lower = Array.from(full.ys, (y) => (y !== null && y < asked ? y : null));
  return [{ key: "cannot", words: words.cannot, between: { xs: full.xs, lower, upper } }];
}

function handles(figures: Figures, mode: number, asked: number, charge: number): Handle[] {
  const name = modeName(figures.machine, mode);
  const { low, high, step } = fieldAt("modes.0.headRpm");
  return [
    {
      key: "set",
      x: charge,
      y: asked,
      moves: "y",
      path: `modes.${mode}.headRpm`,
      value: asked,
      min: Math.min(low, asked),
      max: Math.max(high, asked),
      step,
      name: `${name}: ${ceilingWords.y}`,
      valueText: formatValue(asked, "rpm"),
    },
    {
      key: "charge",
      x: charge,
      y: null,
      moves: "x",
      path: "pack.chargePercent",
      value: charge,
      min: 0,
      max: 100,
      step: 1,
      name: words.charge,
      valueText: formatValue(charge, "percent", { decimals: 0 }),
    },
  ];
}

/** Whether a load is held as long as there is anything in the pack that counts: down to what rounds to no per cent. */
const toTheLast = (lowest: number): boolean => lowest < 0.5;

/** What the plot says: where each load loses the set speed, and the room there is now. */
export function roomWords(figures: Figures, mode: number): string {
  const asked = formatValue(figures.number("set-head-speed", mode), "rpm");
  const lowest = figures.number("lowest-charge", mode);
  const room = figures.number("speed-headroom-full-pitch", mode);
  const charge = formatValue(figures.machine.pack.chargePercent, "percent", { decimals: 0 });
  const name = modeName(figures.machine, mode);
  const held =
    lowest === null
      ? words.never
      : toTheLast(lowest)
        ? words.toTheLast
        : words.until(formatValue(lowest, "percent", { decimals: 0 }));
  const now =
    room === null
      ? ""
      : room >= 0
        ? words.roomNow(charge, formatModelled(room))
        : words.shortNow(charge, formatModelled(-room));
  return [words.asks(name, asked), held, now].filter(Boolean).join(" ");
}

/** Head speed against charge, full on the left. Set speed and charge can be dragged. */
export function headroomPlot(figures: Figures, whatIf: Figures | null = null, mode = 0): Shown<PlotState> {
  const asked = figures.number("set-head-speed", mode) ?? 0;
  const charge = figures.machine.pack.chargePercent;
  const curves = curvesOf(figures, mode, "now");
  const lowest = figures.number("lowest-charge", mode);
  const name = modeName(figures.machine, mode);
  const levels: Level[] = [
    { key: "set", axis: "y", at: asked, label: words.set(name, formatValue(asked, "rpm")), ink: "plain" },
    { key: "charge", axis: "x", at: charge, label: words.charge, ink: "plain" },
  ];
  const points: Point[] =
    lowest !== null && !toTheLast(lowest)
      ? [
          {
            key: "meets",
            x: lowest,
            y: asked,
            kind: "place",
            under: true,
            label: words.meets(formatValue(lowest, "percent", { decimals: 0 })),
          },
        ]
      : [];
  return plot({
    name: "headroom",
    title: words.title,
    unit: "rpm",
    x: { label: words.x, unit: "percent", low: 0, high: 100, exact: true, reversed: true, ends: words.ends },
    y: { label: ceilingWords.y, unit: "rpm", low: asked, high: asked },
    curves: whatIf
      ? [...curves, ...curvesOf(whatIf, Math.min(mode, whatIf.machine.modes.length - 1), "what-if")]
      : curves,
    levels,
    zones: cannotZone(curves, asked),
    points,
    handles: handles(figures, mode, asked, charge),
    words: roomWords(figures, mode),
  });
}
