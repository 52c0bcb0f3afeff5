/** What the controller carries at the bottom of the band: against throttle, and at one head speed against the gears. */
import { type CarriedByPinion, carriedByPinion, carriedByThrottle, leastCurrent } from "#figures/curves-band";
import type { Figures } from "#figures/figures";
import { modeName } from "#figures/mode-name";
import type { LoadName } from "#figures/rig";
import { bufferCurrent } from "#model/currents";
import { plot } from "#plots/plot";
import type { Curve, Handle, Level, PlotState, Zone } from "#plots/state";
import type { Answers } from "#view/answers";
import { formatValue } from "#view/format";
import type { Shown } from "#view/shown";
import { enBand as en } from "#view/words/en-band";
import { pick, picked } from "./pick.ts";

const LOADS = ["hover", "full-pitch"] as const;
const ID = "band-load";

/** The load that the currents are shown for. */
export const bandLoad = (answers: Answers): LoadName => picked(answers, ID, LOADS);

/** Lets the reader choose it. */
export const bandLoadPick = (answers: Answers): ReturnType<typeof pick> =>
  pick({ id: ID, label: en.pick, options: LOADS.map((key) => ({ key, says: en.loads[key] })), answers });

const amperes = (value: number | null): string => formatValue(value, "A");

/** Lowest throttle drawn, per cent: no machine flies below. */
const FIRST = 20;

type Lists = { readonly motor: Curve["ys"]; readonly buffer: Curve["ys"]; readonly pack: Curve["ys"] };

const currents = (xs: readonly number[], { motor, buffer, pack }: Lists): Curve[] => [
  { key: "motor", label: en.motor, ink: "now", xs, ys: motor },
  { key: "pack", label: en.pack, ink: "plain", xs, ys: pack },
  { key: "buffer", label: en.buffer, ink: "plain", xs, ys: buffer },
];

function carriedWords(figures: Figures, load: LoadName, mode: number): string {
  const words = en.carried;
  const name = modeName(figures.machine, mode);
  const curve = carriedByThrottle(figures, load, mode);
  if (!curve) return words.none;
  const point = figures.bearings.point(load, mode);
  const here = point
    ? words.now(
        name,
        amperes(point.packCurrent),
        amperes(point.motorCurrent),
        amperes(bufferCurrent({ current: point.motorCurrent, duty: Math.min(1, point.duty) })),
      )
    : words.notNow(name);
  const least = leastCurrent(curve);
  if (!least) return here;
  return `${here} ${least.turns ? words.turns(formatValue(least.throttle, "percent", { decimals: 0 })) : words.falls}`;
}

/** Currents of motor and controller, of the pack and of the capacitor between them, against throttle; a mode can be dragged along. */
export function carriedPlot(figures: Figures, mode: number, load: LoadName): Shown<PlotState> {
  const words = en.carried;
  const curve = carriedByThrottle(figures, load, mode);
  const reference = figures.number("learned-head-speed");
  const throttle = figures.number("throttle", mode);
  const point = figures.bearings.point(load, mode);
  const { usableLowPercent, usableHighPercent } = figures.machine.controller;
  const headRpm = figures.machine.modes[mode]?.headRpm ?? 0;
  const first = curve?.throttles[0] ?? FIRST;
  const levels: Level[] =
    load === "hover" && first > FIRST
      ? [{ key: "slowest", axis: "x", at: first, label: en.slowest, ink: "plain" }]
      : [];
  const handles: Handle[] =
    reference === null || throttle === null
      ? []
      : [
          {
            key: `mode-${mode}`,
            x: throttle,
            y: point?.motorCurrent ?? 0,
            moves: "x",
            path: `modes.${mode}.headRpm`,
            value: headRpm,
            min: Math.min(headRpm, Math.max(100, Math.ceil((first * reference) / 100 / 10) * 10)),
            max: Math.max(headRpm, Math.floor(reference / 10) * 10),
            step: 10,
            scale: reference / 100,
            name: words.handle(modeName(figures.machine, mode)),
            valueText: formatValue(headRpm, "rpm"),
            shows: modeName(figures.machine, mode),
          },
        ];
  return plot({
    name: "band-currents",
    title: words.title(en.loads[load]),
    unit: words.unit,
    x: { label: en.throttle, unit: "percent", low: FIRST, high: 105, exact: true },
    y: { label: en.amperes, unit: "A", low: 0, ...(curve ? {} : { high: 10 }) },
    curves: curve ? currents(curve.throttles, curve) : [],
    levels,
    zones: [
      { key: "low", words: en.low, x: [null, usableLowPercent] },
      { key: "high", words: en.high, x: [usableHighPercent, null] },
    ],
    handles,
    words: carriedWords(figures, load, mode),
  });
}

/** Pinions whose throttle is lower are left out, per cent: nobody would set such a mode. */
const LEAST_THROTTLE = 28;

/** The pinion, in parts of a tooth, at which the head speed lies at a throttle; null: beyond those drawn. */
function pinionAt({ pinions, throttles }: CarriedByPinion, throttle: number): number | null {
  for (let i = 1; i < pinions.length; i++) {
    const [a, b] = [throttles[i - 1] ?? null, throttles[i] ?? null];
    const [from, to] = [pinions[i - 1] ?? 0, pinions[i] ?? 0];
    // Throttle goes nearly as one over the teeth.
    if (a !== null && b !== null && a >= throttle && b < throttle) {
      return 1 / (1 / from + ((1 / to - 1 / from) * (a - throttle)) / (a - b));
    }
  }
  return null;
}

function bandZones(figures: Figures, carried: CarriedByPinion): Zone[] {
  const { usableLowPercent, usableHighPercent } = figures.machine.controller;
  const [low, high] = [pinionAt(carried, usableLowPercent), pinionAt(carried, usableHighPercent)];
  return [
    ...(low === null ? [] : [{ key: "low", words: en.low, x: [low, null] as const }]),
    ...(high === null ? [] : [{ key: "high", words: en.high, x: [null, high] as const }]),
  ];
}

/** The same currents in hover at one head speed, against the pinion that turns it. */
export function placePlot(figures: Figures, mode: number): Shown<PlotState> {
  const words = en.place;
  const carried = carriedByPinion(figures, mode);
  const { pinionTeeth } = figures.machine.gears;
  const last = carried.pinions.reduce(
    (most, teeth, i) => ((carried.throttles[i] ?? 0) >= LEAST_THROTTLE || teeth === pinionTeeth ? teeth : most),
    pinionTeeth,
  );
  const count = carried.pinions.indexOf(last) + 1;
  const pinions = carried.pinions.slice(0, count);
  const cut = (list: readonly (number | null)[]) => list.slice(0, count);
  const at = pinions.indexOf(pinionTeeth);
  const motor = carried.motor[at] ?? null;
  const throttle = carried.throttles[at] ?? null;
  const now =
    motor === null
      ? words.notNow(pinionTeeth)
      : words.now(pinionTeeth, formatValue(throttle, "percent", { decimals: 0 }), amperes(motor));
  return plot({
    name: "place-in-band",
    title: words.title(modeName(figures.machine, mode)),
    unit: words.unit,
    x: { label: en.pinion, unit: "", ticks: pinions, low: pinions[0] ?? 6, high: last },
    y: { label: en.amperes, unit: "A", low: 0, ...(motor === null ? { high: 10 } : {}) },
    curves: currents(pinions, { motor: cut(carried.motor), buffer: cut(carried.buffer), pack: cut(carried.pack) }),
    zones: bandZones(figures, carried),
    handles:
      motor === null
        ? []
        : [
            {
              key: "pinion",
              x: pinionTeeth,
              y: motor,
              moves: "x",
              path: "gears.pinionTeeth",
              value: pinionTeeth,
              min: pinions[0] ?? pinionTeeth,
              max: last,
              step: 1,
              name: words.handle,
              valueText: words.teeth(pinionTeeth),
              shows: words.teeth(pinionTeeth),
            },
          ],
    words: `${now} ${words.says}`,
  });
}
