/** What the throttle values that were right when it learned give with today's parts: then and now, side by side. */
import type { Figures } from "#figures/figures";
import { modeName } from "#figures/mode-name";
import { plot } from "#plots/plot";
import type { Curve, PlotState } from "#plots/state";
import { formatValue } from "#view/format";
import type { Shown } from "#view/shown";
import { enBlocks as en } from "#view/words/en-blocks";

const words = en.plots.stale;
const axis = en.plots.throttle;
const ENDS = [0, 100];

/** Two lines of head speed against throttle: as learned, and with the parts now fitted. */
export function stalePlot(figures: Figures): Shown<PlotState> {
  const { ratioThen } = figures.bearings.reference();
  const { ratio } = figures.rig;
  const now = figures.number("learned-head-speed");
  const then = now === null || ratioThen === ratio ? null : (now * ratio) / ratioThen;
  const curves: Curve[] = [];
  if (then !== null) curves.push({ key: "then", label: words.learned, ink: "pinned-now", xs: ENDS, ys: [0, then] });
  if (now !== null) curves.push({ key: "now", label: words.now, ink: "now", xs: ENDS, ys: [0, now] });
  const modes = figures.machine.modes.map((_, mode) => {
    const throttle = figures.number("stale-head-speed", mode);
    const asked = figures.number("set-head-speed", mode);
    return words.mode(modeName(figures.machine, mode), formatValue(asked, "rpm"), formatValue(throttle, "rpm"));
  });
  return plot({
    name: "stale-reference",
    title: words.title,
    unit: "rpm",
    x: { label: axis.x, unit: "percent", low: 0, high: 100, exact: true },
    y: { label: axis.y, unit: "rpm", low: 0, high: Math.max(now ?? 0, then ?? 0, 100) },
    curves,
    levels: figures.machine.modes.map(({ headRpm }, mode) => ({
      key: `mode-${mode}`,
      axis: "y" as const,
      at: headRpm,
      label: modeName(figures.machine, mode),
      ink: "plain" as const,
    })),
    words: modes.join(" "),
    size: "short",
  });
}
