/** What the magnets do change: the speed that a display shows, and how much of a controller's limit is used. */
import type { Figures } from "#figures/figures";
import { fieldAt } from "#machine/fields";
import { motorSpeedLimit, shownSpeed } from "#model/poles";
import { plot } from "#plots/plot";
import type { PlotState } from "#plots/state";
import { formatValue } from "#view/format";
import type { Shown } from "#view/shown";
import { enMagnets } from "#view/words/en-magnets";

const MOST = 24;
/** Even counts from 2 up, far enough to hold those that have to be in view. */
const counts = (...inView: readonly number[]): number[] =>
  Array.from({ length: Math.max(MOST, ...inView) / 2 }, (_, i) => 2 * (i + 1));

/** Motor speed that a display shows, rpm, when it was told `told` magnets; null without a mode. */
export function speedShown(figures: Figures, told: number, mode = 0): number | null {
  const speed = figures.number("motor-speed", mode);
  return speed === null ? null : shownSpeed({ speed, poles: figures.machine.motor.poles, polesSet: told });
}

function displayWords(poles: number, told: number, truth: number, shown: number): string {
  const en = enMagnets.display;
  const say = (speed: number) => formatValue(speed, "rpm");
  if (told === poles) return `${en.right(poles, say(truth))} ${en.count}`;
  const gap = (100 * (shown - truth)) / truth;
  const percent = formatValue(Math.abs(gap), "percent", { decimals: 0 });
  return `${en.wrong(told, poles, say(shown), say(truth))} ${en.gap(percent, gap > 0 ? "high" : "low")}`;
}

/** Speed on a display against the number of magnets that it was told. */
export function displayPlot(figures: Figures, told: number, mode = 0): Shown<PlotState> {
  const en = enMagnets.display;
  const { poles } = figures.machine.motor;
  const truth = figures.number("motor-speed", mode) ?? 0;
  const xs = counts(poles, told).filter((count) => count >= Math.min(4, poles, told));
  const at = (count: number) => shownSpeed({ speed: truth, poles, polesSet: count });
  return plot({
    name: "display-speed",
    title: en.title,
    unit: "rpm",
    x: { label: en.x, unit: "", ticks: xs, low: xs[0] ?? 2, high: xs.at(-1) ?? MOST },
    y: { label: en.y, unit: "rpm", low: 0 },
    curves: [{ key: "shown", label: en.shown, ink: "now", xs, ys: xs.map(at), dots: true }],
    levels: [{ key: "true", axis: "y", at: truth, label: en.true(formatValue(truth, "rpm")), ink: "plain" }],
    points: [{ key: "told", x: told, y: at(told), kind: "place", label: en.told(told) }],
    words: displayWords(poles, told, truth, at(told)),
    size: "short",
  });
}

function electricalWords(figures: Figures, mode: number): string {
  const en = enMagnets.electrical;
  const { motor, controller } = figures.machine;
  const say = (speed: number | null) => formatValue(speed, "rpm");
  const electrical = figures.number("electrical-speed", mode) ?? 0;
  const now = en.now(motor.poles, say(electrical), say(figures.number("set-head-speed", mode)));
  const limit = say(controller.electricalRpmLimit);
  if (electrical > controller.electricalRpmLimit) return `${now} ${en.over(limit)}`;
  // The same relation read for the magnets: electrical speed goes with their number.
  const most = 2 * Math.floor((motor.poles * controller.electricalRpmLimit) / Math.max(electrical, 1e-9) / 2 + 1e-9);
  return `${now} ${most < 2 ? en.none(limit) : en.room(limit, most)}`;
}

/** Head speed at which the controller's electrical limit is met, rpm. */
export function headSpeedAtElectricalLimit(figures: Figures): number {
  const { motor, controller } = figures.machine;
  return motorSpeedLimit({ electricalLimit: controller.electricalRpmLimit, poles: motor.poles }) / figures.rig.ratio;
}

/** Electrical speed at a mode's set speed against the motor's magnets, with the controller's limit; the count can be dragged. */
export function electricalPlot(figures: Figures, mode = 0): Shown<PlotState> {
  const en = enMagnets.electrical;
  const { motor, controller } = figures.machine;
  const field = fieldAt("motor.poles");
  const xs = counts(motor.poles);
  const now = figures.number("electrical-speed", mode) ?? 0;
  const each = now / motor.poles;
  return plot({
    name: "electrical-speed",
    title: en.title,
    unit: "rpm",
    x: { label: en.x, unit: "", ticks: xs, low: 2, high: xs.at(-1) ?? MOST },
    y: { label: en.y, unit: "rpm", low: 0, high: controller.electricalRpmLimit * 1.15 },
    curves: [{ key: "electrical", label: en.curve, ink: "now", xs, ys: xs.map((count) => each * count), dots: true }],
    zones: [{ key: "limit", words: en.limit, y: [controller.electricalRpmLimit, null] }],
    handles: [
      {
        key: "poles",
        x: motor.poles,
        y: now,
        moves: "x",
        path: "motor.poles",
        value: motor.poles,
        min: 2,
        max: Math.min(field.max, xs.at(-1) ?? MOST),
        step: 2,
        name: en.handle,
        valueText: en.magnets(motor.poles),
        shows: en.magnets(motor.poles),
      },
    ],
    words: electricalWords(figures, mode),
    size: "short",
  });
}
