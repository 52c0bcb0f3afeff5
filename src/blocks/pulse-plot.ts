/** How a controller doses at part duty: a few of its pulses, drawn as the ideal chopper that the model takes it for. */
import type { Figures } from "#figures/figures";
import { modeName } from "#figures/mode-name";
import { bufferCurrent } from "#model/currents";
import { plot } from "#plots/plot";
import type { PlotState } from "#plots/state";
import { formatValue } from "#view/format";
import type { Shown } from "#view/shown";
import { enBand } from "#view/words/en-band";

const en = enBand.pulses;

/** So many pulses are drawn. */
const PULSES = 3;

/** The pulses that a controller draws from pack and capacitor in hover, with the motor's current and the pack's. */
export function pulsePlot(figures: Figures, mode: number): Shown<PlotState> {
  const point = figures.bearings.point("hover", mode);
  const duty = Math.min(1, point?.duty ?? 0);
  const motor = point?.motorCurrent ?? 0;
  const pulse = (i: number) => [
    [i, motor],
    [i + duty, motor],
    [i + duty, 0],
    [i + 1, 0],
  ];
  const corners = Array.from({ length: PULSES }, (_, i) => pulse(i)).flat();
  const name = modeName(figures.machine, mode);
  const amperes = (value: number) => formatValue(value, "A");
  const share = formatValue(100 * duty, "percent", { decimals: 0 });
  return plot({
    name: "pulses",
    title: en.title(name),
    unit: en.unit,
    x: { label: en.x, unit: "", low: 0, high: PULSES, exact: true, ticks: [0, 1, 2, 3] },
    y: { label: en.y, unit: "A", low: 0, high: Math.max(1, 1.15 * motor) },
    curves: point
      ? [
          {
            key: "pulses",
            label: en.drawn,
            ink: "plain",
            xs: corners.map(([x]) => x ?? 0),
            ys: corners.map(([, y]) => y ?? 0),
          },
          { key: "motor", label: enBand.motor, ink: "now", xs: [0, PULSES], ys: [motor, motor] },
        ]
      : [],
    levels: point ? [{ key: "pack", axis: "y", at: point.packCurrent, label: enBand.pack, ink: "plain" }] : [],
    words: point ? en.says(name, share, amperes(motor), amperes(point.packCurrent)) : enBand.heldNot,
    table: {
      columns: [en.what, en.y],
      rows: point
        ? [
            [enBand.motor, motor],
            [en.during(share), motor],
            [en.between, 0],
            [enBand.pack, point.packCurrent],
            [enBand.place.rows.buffer, bufferCurrent({ current: motor, duty })],
          ]
        : [],
    },
    size: "short",
  });
}
