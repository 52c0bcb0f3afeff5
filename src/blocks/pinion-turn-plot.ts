/** Where a bigger pinion stops making the rotor faster: the most it can turn, with a full pack and with the last of it. */
import { comparedCharges, pinionTurn } from "#figures/curves-gears";
import type { Figures } from "#figures/figures";
import { packCurrentLimit } from "#figures/limits";
import { modeName } from "#figures/mode-name";
import { plot } from "#plots/plot";
import type { Curve, PlotState, Point } from "#plots/state";
import { formatModelled, formatValue } from "#view/format";
import type { Shown } from "#view/shown";
import { enPinionTurn as en } from "#view/words/en-pinion-turn";

/** What the page says of the turn. */
export interface TurnFacts {
  /** The pinion that makes the rotor fastest at full pitch with a full pack, teeth; null: none as far as is looked. */
  readonly best: number | null;
  /** The first pinion at which the pack would have to bear more than it should; null: none. */
  readonly tooMuch: number | null;
  readonly words: string;
}

/** The first pinion whose ceiling takes more current than the pack bears for some seconds, teeth. */
function tooMuchFrom(figures: Figures, mode: number): number | null {
  const { pinions, currents } = pinionTurn(figures, mode);
  const limit = packCurrentLimit(figures.machine);
  for (const [i, current] of currents.entries()) {
    if (current === null || current <= limit) continue;
    const [before, at] = [currents[i - 1] ?? null, pinions[i] ?? 0];
    const from = pinions[i - 1] ?? at;
    // Between two points the current grows evenly enough.
    return before === null ? at : Math.ceil(from + ((at - from) * (limit - before)) / (current - before));
  }
  return null;
}

/** The turn of a mode's full pitch, for the questions of the page. */
export function turnFacts(figures: Figures, mode: number): TurnFacts {
  const { best, pinions } = pinionTurn(figures, mode);
  const [full = null, last = null] = best;
  const tooMuch = tooMuchFrom(figures, mode);
  const turn = full === null ? en.noTurn(pinions.at(-1) ?? 0) : en.turn(full, last);
  return { best: full, tooMuch, words: `${turn} ${tooMuch === null ? en.bears : en.tooMuch(tooMuch)}` };
}

/** A round speed with room above the highest one for its words, rpm. */
const topOf = (speeds: readonly (number | null)[]): number =>
  500 * Math.ceil((1.1 * Math.max(500, ...speeds.map((speed) => speed ?? 0))) / 500);

/** The most the rotor can turn at a mode's full pitch, against the pinion, with a full pack and a nearly empty one. */
export function pinionTurnPlot(figures: Figures, mode = 0): Shown<PlotState> {
  const { pinions, speeds, best } = pinionTurn(figures, mode);
  const { pinionTeeth } = figures.machine.gears;
  const first = pinions[0] ?? 6;
  const last = pinions.at(-1) ?? 30;
  const curves = comparedCharges.map((charge, i): Curve => {
    const label = i === 0 ? en.full : en.left(formatValue(100 * charge, "percent", { decimals: 0 }));
    return { key: `charge-${100 * charge}`, label, ink: i === 0 ? "now" : "plain", xs: pinions, ys: speeds[i] ?? [] };
  });
  const points = best.flatMap((teeth, i): Point[] => {
    const at = teeth === null ? -1 : pinions.findIndex((each) => each >= teeth);
    const [a, b] = [speeds[i]?.[at - 1] ?? null, speeds[i]?.[at] ?? null];
    if (teeth === null || b === null) return [];
    const share =
      a === null ? 1 : (teeth - (pinions[at - 1] ?? teeth)) / ((pinions[at] ?? teeth) - (pinions[at - 1] ?? 0));
    const y = a === null ? b : Math.max(a, b, a + share * (b - a));
    return [
      {
        key: `best-${i}`,
        x: teeth,
        y,
        kind: "place",
        ...(i === 0 ? { label: en.best(teeth, best[1] ?? teeth) } : {}),
      },
    ];
  });
  const now = speeds[0]?.[pinions.indexOf(pinionTeeth)] ?? null;
  const from = tooMuchFrom(figures, mode);
  const asked = figures.number("set-head-speed", mode) ?? 0;
  const { words } = turnFacts(figures, mode);
  return plot({
    name: "pinion-turn",
    title: en.title,
    unit: "rpm",
    x: { label: en.x, unit: "", ticks: pinions, low: first, high: last },
    y: { label: en.y, unit: "rpm", low: 0, high: topOf([asked, ...(speeds[0] ?? [])]), exact: true },
    curves,
    levels: [{ key: "set", axis: "y", at: asked, label: en.asks(modeName(figures.machine, mode)), ink: "plain" }],
    zones: from === null ? [] : [{ key: "current", words: en.zone, x: [from - 0.5, null] }],
    points,
    handles:
      now === null
        ? []
        : [
            {
              key: "pinion",
              x: pinionTeeth,
              y: now,
              moves: "x",
              path: "gears.pinionTeeth",
              value: pinionTeeth,
              min: Math.min(first, pinionTeeth),
              max: last,
              step: 1,
              name: en.handle,
              valueText: en.teeth(pinionTeeth),
              shows: en.teeth(pinionTeeth),
            },
          ],
    words: `${now === null ? en.cannot(pinionTeeth) : en.now(pinionTeeth, formatModelled(now))} ${words}`,
  });
}
