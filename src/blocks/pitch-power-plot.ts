/** Power of both rotors against pitch at the head speed of a mode, and the most that pack, motor and gears give there. */
import { mostPower, pitchCurve } from "#figures/curves-power";
import type { Figures } from "#figures/figures";
import { plot } from "#plots/plot";
import type { Curve, Handle, PlotState, Zone } from "#plots/state";
import { valueAt } from "#plots/table";
import { formatValue } from "#view/format";
import type { Shown } from "#view/shown";
import { enRotor as en } from "#view/words/en-rotor";

/** Full pitch can be dragged; where it asks for more than there is, the head speed falls. */
export function pitchPowerPlot(figures: Figures, mode = 0): Shown<PlotState> {
  const { pitches, powers } = pitchCurve(figures, mode);
  const { name = "", headRpm = 0, collectiveMaxDeg = 0 } = figures.machine.modes[mode] ?? {};
  const most = mostPower(figures.rig.train, headRpm);
  const line: Curve = { key: "asked", label: en.pitch.asked, ink: "now", xs: pitches, ys: powers };
  const asked = figures.number("full-pitch-power", mode);
  const hover = figures.number("hover-collective", mode);
  const top = Math.max(1, ...powers);
  const zones: Zone[] = most < top * 1.15 ? [{ key: "short", words: en.pitch.short, y: [most, null] }] : [];
  const inView = collectiveMaxDeg >= 0 && collectiveMaxDeg <= 14;
  const handles: Handle[] = inView
    ? [
        {
          key: "full",
          x: collectiveMaxDeg,
          y: valueAt(line, collectiveMaxDeg) ?? 0,
          moves: "x",
          path: `modes.${mode}.collectiveMaxDeg`,
          value: collectiveMaxDeg,
          min: 1,
          max: 14,
          step: 0.5,
          name: en.pitch.end(name),
          valueText: formatValue(collectiveMaxDeg, "deg"),
          shows: formatValue(collectiveMaxDeg, "deg"),
        },
      ]
    : [];
  const full = formatValue(asked, "W", { none: "more than the tail can hold" });
  const verdict =
    asked === null || asked <= most
      ? `The most there is at this speed is ${formatValue(most, "W")}.`
      : `There is only ${formatValue(most, "W")} at this speed, so the rotor slows down.`;
  const hovers = hover === null ? "" : ` Hovering takes ${formatValue(hover, "deg")} of pitch.`;
  return plot({
    name: "pitch-power",
    title: en.pitch.title(name),
    unit: "W",
    x: { label: en.pitch.axis, unit: "deg", low: 0, high: 14, exact: true },
    y: { label: en.pitch.asked, unit: "W", low: 0, high: Math.max(1, Math.min(top, 2 * most || top)) },
    curves: [line],
    levels:
      most > 0 && most < top * 1.15 ? [{ key: "most", axis: "y", at: most, label: en.pitch.most, ink: "plain" }] : [],
    zones,
    handles,
    words: `Full pitch in ${name} is ${formatValue(collectiveMaxDeg, "deg")} and asks for ${full}. ${verdict}${hovers}`,
    size: "short",
  });
}
