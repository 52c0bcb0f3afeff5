/** What the pack gives: over its charge, and over its temperature and age. */
import { loadCurrent, packMoment, packTemperatures, packVoltages, sagAt } from "#figures/curves-pack";
import type { Figures } from "#figures/figures";
import type { LoadName } from "#figures/rig";
import { fieldAt } from "#machine/fields";
import { fromCelsius } from "#model/constants";
import { reserveCharge } from "#model/endurance";
import { resistanceFactor } from "#model/pack";
import { plot } from "#plots/plot";
import type { Curve, PlotState } from "#plots/state";
import { formatNumber, formatValue } from "#view/format";
import type { Shown } from "#view/shown";
import { enPack } from "#view/words/en-pack";
import { type FactsState, factsTable } from "./facts-table.ts";

const volts = (value: number | null) => formatValue(value, "V", { decimals: 1 });
const percent = (value: number) => formatValue(value, "percent", { decimals: 0 });

/** A curve's value at the nearest charge that was worked out. */
function near(charges: readonly number[], ys: readonly (number | null)[], charge: number): number | null {
  const at = charges.reduce(
    (best, each, i) => (Math.abs(each - charge) < Math.abs((charges[best] ?? 0) - charge) ? i : best),
    0,
  );
  return ys[at] ?? null;
}

/** Voltage of the pack at rest, in hover and at full pitch of a mode, over its charge; the charge can be dragged. */
export function packVoltagePlot(figures: Figures, whatIf: Figures | null = null, mode = 0): Shown<PlotState> {
  const en = enPack.voltage;
  const { charges, open, hover, full } = packVoltages(figures, mode);
  const charge = figures.machine.pack.chargePercent;
  const rest = figures.rig.train.openVoltage;
  const under = (load: LoadName) => {
    const current = loadCurrent(figures, load, mode);
    return current === null ? null : rest - current * figures.rig.train.packResistance;
  };
  const [inHover, atFull] = [under("hover"), under("full-pitch")];
  const fall = (near(charges, open, 100) ?? 0) - (near(charges, open, 100 * reserveCharge) ?? 0);
  const loads = inHover === null || atFull === null ? en.none : en.left(volts(inHover), volts(atFull));
  const curves: Curve[] = [
    { key: "open", label: en.open, ink: "plain", xs: charges, ys: open },
    { key: "hover", label: en.hover, ink: "now", xs: charges, ys: hover },
    { key: "full", label: en.full, ink: "now", xs: charges, ys: full },
  ];
  if (whatIf) {
    const other = packVoltages(whatIf, Math.min(mode, whatIf.machine.modes.length - 1));
    curves.push({
      key: "full-what-if",
      label: `${en.full} (what if)`,
      ink: "what-if",
      xs: other.charges,
      ys: other.full,
    });
  }
  return plot({
    name: "pack-voltage",
    title: en.title,
    unit: "V",
    x: { label: en.x, unit: "percent", low: 0, high: 100, exact: true, reversed: true, ends: ["full", "empty"] },
    y: { label: en.y, unit: "V" },
    curves,
    levels: [{ key: "charge", axis: "x", at: charge, label: en.charge, ink: "plain" }],
    zones: [{ key: "reserve", words: en.reserve, x: [null, 100 * reserveCharge] }],
    handles: [
      {
        key: "charge",
        x: charge,
        y: atFull ?? rest,
        moves: "x",
        path: "pack.chargePercent",
        value: charge,
        min: 0,
        max: 100,
        step: 1,
        name: en.charge,
        valueText: percent(charge),
      },
    ],
    words: `${en.now(percent(charge), volts(rest))} ${loads} ${en.fall(volts(fall))}`,
  });
}

/** Charges of the table, per cent. */
const MOMENTS = [100, 70, 40, 20] as const;

/** The same speed at full pitch while the pack empties: volts at rest, volts under load, share of them that is needed. */
export function packMoments(figures: Figures, mode = 0): Shown<FactsState> {
  const en = enPack.moments;
  const all = MOMENTS.map((charge) => ({ charge, ...packMoment(figures, charge / 100, mode) }));
  const share = (duty: number | null) =>
    duty === null ? en.cannot : formatValue(100 * duty, "percent", { decimals: 0 });
  const first = all[0]?.duty ?? null;
  const lost = all.find((each) => each.duty === null);
  const words =
    first === null
      ? en.never
      : lost
        ? en.lost(percent(lost.charge))
        : en.held(share(first), share(all.at(-1)?.duty ?? null));
  return factsTable({
    name: "pack-moments",
    caption: en.caption,
    columns: en.columns,
    rows: all.map(({ charge, open, loaded, duty }) => ({
      title: percent(charge),
      cells: [volts(open), loaded === null ? "–" : volts(loaded), share(duty)],
    })),
    words,
  });
}

/** How many times its resistance at 25 °C a cell has at a temperature in °C. */
export const coldFactor = (temperatureC: number): number => resistanceFactor(fromCelsius(temperatureC));

/** Above this a pack is too hot to go on: common practice, no source. °C */
const HOT = 60;

/** Volts that a mode's full pitch costs inside the pack, over its temperature; beside it a pack of `age` times the resistance. */
export function coldPlot(figures: Figures, age: number, mode = 0): Shown<PlotState> {
  const en = enPack.cold;
  const field = fieldAt("pack.temperatureC");
  const { temperatureC } = figures.machine.pack;
  const current = loadCurrent(figures, "full-pitch", mode);
  const sag = (temperature: number, times = 1) => sagAt(figures, current ?? 0, temperature, times);
  const temperature = formatValue(temperatureC, "°C");
  const curves: Curve[] =
    current === null
      ? []
      : [{ key: "now", label: en.now, ink: "now", xs: packTemperatures, ys: packTemperatures.map((at) => sag(at)) }];
  if (current !== null && age !== 1) {
    const label = en.old(formatNumber(age, 1));
    curves.push({
      key: "old",
      label,
      ink: "plain",
      xs: packTemperatures,
      ys: packTemperatures.map((at) => sag(at, age)),
    });
  }
  const words = `${en.words(temperature, formatValue(sag(temperatureC), "V", { decimals: 2 }))} ${en.freezing(formatValue(sag(0), "V", { decimals: 2 }))}`;
  const aged = age === 1 ? "" : ` ${en.aged(formatValue(sag(temperatureC, age), "V", { decimals: 2 }))}`;
  return plot({
    name: "pack-cold",
    title: en.title,
    unit: "V",
    x: { label: en.x, unit: "°C", low: packTemperatures[0] ?? -10, high: packTemperatures.at(-1) ?? HOT, exact: true },
    y: { label: en.y, unit: "V", low: 0 },
    curves,
    zones: [{ key: "hot", words: en.hot, x: [HOT, null] }],
    handles:
      current === null
        ? []
        : [
            {
              key: "temperature",
              x: temperatureC,
              y: sag(temperatureC),
              moves: "x",
              path: "pack.temperatureC",
              value: temperatureC,
              min: Math.max(field.min, packTemperatures[0] ?? field.min),
              max: Math.min(field.max, packTemperatures.at(-1) ?? field.max),
              step: 1,
              name: en.handle,
              valueText: temperature,
              shows: temperature,
            },
          ],
    words: current === null ? en.none : words + aged,
    size: "short",
  });
}
