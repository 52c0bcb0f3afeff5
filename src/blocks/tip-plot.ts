/** Blade tip speed against the pinion: what another pinion does to the tips when nobody learns again. */
import { tipSpeedByPinion } from "#figures/curves";
import type { Figures } from "#figures/figures";
import { fieldAt } from "#machine/fields";
import { plot } from "#plots/plot";
import type { Handle, PlotState, Zone } from "#plots/state";
import { formatValue } from "#view/format";
import type { Shown } from "#view/shown";
import { enBlocks as en } from "#view/words/en-blocks";

const words = en.plots.tip;

const { min, max } = fieldAt("gears.pinionTeeth");
/** Where ticks may stand, whatever pinions are shown: from an even number on, which is where every other tooth begins. */
const ticks = Array.from({ length: max - min }, (_, i) => min + 1 + i);

function summary(figures: Figures, mode: number, limit: number | null, firstOver: number | null): string {
  const speed = formatValue(figures.number("tip-speed", mode), "m/s", { decimals: 0 });
  const pinion = figures.machine.gears.pinionTeeth;
  const now = words.moves(pinion, speed);
  if (limit === null) return `${now} ${words.noLimit}`;
  const over = firstOver === null ? words.noneOver : firstOver <= pinion ? words.overNow : words.overFrom(firstOver);
  return `${now} ${words.limitAt(formatValue(limit, "m/s", { decimals: 0 }))} ${over}`;
}

/** Tip speed for each pinion at the mode's throttle, the reference not learned again; the pinion can be dragged. */
export function tipPlot(figures: Figures, mode = 0): Shown<PlotState> {
  const { pinions, speeds, limit } = tipSpeedByPinion(figures, mode);
  const { pinionTeeth } = figures.machine.gears;
  const now = figures.number("tip-speed", mode) ?? 0;
  const over = limit === null ? -1 : speeds.findIndex((speed) => speed > limit);
  const zones: Zone[] = limit === null ? [] : [{ key: "limit", words: words.limit, y: [limit, null] }];
  const handle: Handle = {
    key: "pinion",
    x: pinionTeeth,
    y: now,
    moves: "x",
    path: "gears.pinionTeeth",
    value: pinionTeeth,
    min: pinions[0] ?? pinionTeeth,
    max: pinions.at(-1) ?? pinionTeeth,
    step: 1,
    name: words.x,
    valueText: words.teeth(pinionTeeth),
    shows: formatValue(now, "m/s", { decimals: 0 }),
  };
  return plot({
    name: "tip-speed",
    title: words.title,
    unit: "m/s",
    x: { label: words.x, unit: "", ticks, low: pinions[0] ?? 0, high: pinions.at(-1) ?? 1 },
    y: { label: words.y, unit: "m/s", low: 0, ...(limit === null ? {} : { high: limit * 1.08 }) },
    curves: [{ key: "tip", label: words.now, ink: "now", xs: pinions, ys: speeds, dots: true }],
    zones,
    handles: [handle],
    words: summary(figures, mode, limit, over < 0 ? null : (pinions[over] ?? null)),
    size: "short",
  });
}
