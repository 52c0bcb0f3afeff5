/** What a printed limit means on another rotor, and what a distance is worth against a part that flies off. */
import { headSpeedForTip, tipSpeedAtLimit } from "#figures/curves-blades";
import type { Figures } from "#figures/figures";
import { demos } from "#machine/demos";
import { plot } from "#plots/plot";
import type { PlotState, Point } from "#plots/state";
import { formatValue } from "#view/format";
import type { Shown } from "#view/shown";
import { enBlades } from "#view/words/en-blades";

const [SMALLEST, LARGEST, STEPS] = [350, 1800, 30] as const;

const TOP_STEP = 1000;

/** Head speeds that give one tip speed, against the rotor's diameter; beside it the limits of other machines. */
export function limitPlot(figures: Figures, mode = 0): Shown<PlotState> {
  const en = enBlades.limits;
  const { diameterMm, ratedRpm } = figures.machine.mainRotor;
  const tip = tipSpeedAtLimit(figures) ?? figures.number("tip-speed", mode) ?? 0;
  const [first, last] = [Math.min(SMALLEST, diameterMm), Math.max(LARGEST, diameterMm)];
  const xs = Array.from({ length: STEPS + 1 }, (_, i) => first * (last / first) ** (i / STEPS));
  const ys = xs.map((diameter) => headSpeedForTip(tip, diameter / 1000));
  // A round count above everything in view.
  const most = Math.max(ys[0] ?? 0, ...demos.map(({ mainRotor }) => mainRotor.ratedRpm ?? 0), 1);
  const top = Math.ceil(most / TOP_STEP) * TOP_STEP;
  const others = demos.flatMap(({ mainRotor, name }): Point[] =>
    mainRotor.ratedRpm === null || (mainRotor.diameterMm === diameterMm && mainRotor.ratedRpm === ratedRpm)
      ? []
      : [
          {
            key: name,
            x: mainRotor.diameterMm,
            y: mainRotor.ratedRpm,
            kind: "place",
            label: formatValue(mainRotor.ratedRpm, "rpm"),
          },
        ],
  );
  const own: Point = {
    key: "own",
    x: diameterMm,
    y: headSpeedForTip(tip, diameterMm / 1000),
    kind: "now",
    label: en.yours(formatValue(headSpeedForTip(tip, diameterMm / 1000), "rpm")),
  };
  const speed = formatValue(tip, "m/s", { decimals: 0 });
  const list = others.map(({ x, label }) => `${label} at ${formatValue(x, "mm", { decimals: 0 })}`).join(", ");
  const said = ratedRpm === null ? en.none(speed) : en.words(formatValue(ratedRpm, "rpm"), speed);
  return plot({
    name: "limits-by-diameter",
    title: en.title,
    unit: "rpm",
    x: { label: en.x, unit: "mm", low: first, high: last },
    y: { label: en.y, unit: "rpm", low: 0, high: top, exact: true },
    curves: [{ key: "tip", label: en.curve(speed), ink: "now", xs, ys }],
    zones: [{ key: "over", words: en.over, between: { xs, lower: ys, upper: xs.map(() => top) } }],
    points: [...others, own],
    words: `${said} ${en.small} ${en.others(list)}`,
  });
}

/** Time from seeing something to beginning to move, s: from memory, 0.2 to 0.3 for somebody who is waiting for it. */
const REACTION = 0.25;
const FARTHEST = 40;

/** How long a part that leaves the tip needs to where somebody stands, s: the air is left out, so it is a little longer. */
export const timeToReach = (figures: Figures, metres: number, mode = 0): number => {
  const speed = figures.number("tip-speed", mode) ?? 0;
  return speed > 0 ? metres / speed : 0;
};

/** Time until a part that leaves the tip has come so far, against the distance. */
export function distancePlot(figures: Figures, metres: number, mode = 0): Shown<PlotState> {
  const en = enBlades.distance;
  const time = timeToReach(figures, metres, mode);
  const say = (seconds: number) => formatValue(seconds, "s", { decimals: 2 });
  const reaction = say(REACTION);
  return plot({
    name: "distance",
    title: en.title,
    unit: "s",
    x: { label: en.x, unit: "m", low: 0, high: FARTHEST, exact: true },
    y: { label: en.y, unit: "s", low: 0, high: 1.4 * REACTION },
    curves: [
      { key: "time", label: en.curve, ink: "now", xs: [0, FARTHEST], ys: [0, timeToReach(figures, FARTHEST, mode)] },
    ],
    zones: [{ key: "react", words: en.react, y: [null, REACTION] }],
    levels: [{ key: "you", axis: "x", at: metres, label: en.you, ink: "plain" }],
    points: [{ key: "you", x: metres, y: time, kind: "place" }],
    words: `${en.words(formatValue(metres, "m"), say(time))} ${(time < REACTION ? en.cannot : en.can)(reaction)}`,
    size: "short",
  });
}
