/** What a pinion does besides turning faster: how its teeth share the load, and what is left of its speed under load. */
import { contactWith } from "#figures/contact";
import { ceilingByPinion } from "#figures/curves-gears";
import type { Figures } from "#figures/figures";
import { contactLimit } from "#figures/limits";
import { pitchLineSpeed, toothMeeting } from "#model/gears";
import { pinionFit, undercutLimit, usualAdjustment } from "#model/gears-mesh";
import { plot } from "#plots/plot";
import type { Curve, Handle, PlotState } from "#plots/state";
import { formatModelled, formatNumber, formatValue } from "#view/format";
import type { Shown } from "#view/shown";
import { enGears } from "#view/words/en-gears";

/** Pinions on the plot of the mesh; the one fitted is always among them. */
const [FIRST_DRAWN, LAST_DRAWN] = [6, 26];

/** What can be said of the gears as they stand, and of another pinion in their place. */
export interface GearFacts {
  /** How far the motor moves away from the main gear for the other pinion, mm. */
  readonly shiftMm: number;
  /** Whether the mount's slot commonly reaches that far, in words. */
  readonly fit: string;
  /** Teeth of the main gear that one tooth of the pinion ever meets. */
  readonly met: number;
  /** Turns of the main gear until the same two teeth meet again. */
  readonly meetTurns: number;
  /** Speed at which the teeth pass the place where they meet, m/s, at the mode's set speed. */
  readonly pitchLine: number;
}

/** The facts of a machine's gears, beside another pinion. */
export function gearFacts(figures: Figures, other: number, mode = 0): GearFacts {
  const { gears, modes } = figures.rig.parts;
  const { shift, fits } = pinionFit(gears.module, gears.pinionTeeth, other);
  const en = enGears.fit;
  const say = (metres: number) => formatValue(1000 * metres, "mm", { decimals: 2, units: "metric" });
  const way = shift > 0 ? enGears.picture.away : enGears.picture.towards;
  const fit =
    other === gears.pinionTeeth
      ? en.same
      : (fits ? en.fits : en.not)(say(Math.abs(shift)), way, say(usualAdjustment / 2));
  const meeting = toothMeeting(gears.pinionTeeth, gears.mainTeeth);
  const motorSpeed = (modes[mode]?.headSpeed ?? 0) * figures.rig.ratio;
  return {
    shiftMm: 1000 * shift,
    fit,
    met: meeting?.pinionTurns ?? gears.mainTeeth,
    meetTurns: meeting?.gearTurns ?? gears.pinionTeeth,
    pitchLine: pitchLineSpeed({ ...gears, pinionTeeth: gears.pinionTeeth, motorSpeed }),
  };
}

function pinionHandle(figures: Figures, pinions: readonly number[], y: number, name: string): Handle {
  const { pinionTeeth } = figures.machine.gears;
  return {
    key: "pinion",
    x: pinionTeeth,
    y,
    moves: "x",
    path: "gears.pinionTeeth",
    value: pinionTeeth,
    min: Math.min(pinions[0] ?? pinionTeeth, pinionTeeth),
    max: pinions.at(-1) ?? pinionTeeth,
    step: 1,
    name,
    valueText: enGears.mesh.teeth(pinionTeeth),
    shows: enGears.mesh.teeth(pinionTeeth),
  };
}

/** How many pairs of teeth share the load, against the pinion, with the zones where that is too few or the roots suffer. */
export function meshPlot(figures: Figures): Shown<PlotState> {
  const en = enGears.mesh;
  const { pinionTeeth } = figures.machine.gears;
  const whole = Math.ceil(undercutLimit());
  const first = Math.min(FIRST_DRAWN, pinionTeeth);
  const pinions = Array.from({ length: Math.max(LAST_DRAWN, pinionTeeth) - first + 1 }, (_, i) => first + i);
  const ys = pinions.map((teeth) => contactWith(figures, teeth));
  const now = contactWith(figures, pinionTeeth);
  const sound = pinionTeeth < whole ? en.weak(whole) : en.sound(whole);
  return plot({
    name: "contact-ratio",
    title: en.title,
    unit: en.unit,
    x: { label: en.x, unit: "", ticks: pinions, low: pinions[0] ?? 6, high: pinions.at(-1) ?? LAST_DRAWN },
    y: { label: en.y, unit: "", low: 1, high: 1.9 },
    curves: [{ key: "contact", label: "", ink: "now", xs: pinions, ys, dots: true }],
    levels: [{ key: "undercut", axis: "x", at: whole - 0.5, label: en.undercut, ink: "plain" }],
    zones: [{ key: "rough", words: en.rough, y: [null, contactLimit] }],
    handles: now === null ? [] : [pinionHandle(figures, pinions, now, en.handle)],
    words: now === null ? en.none : `${en.now(pinionTeeth, formatNumber(now, 2))} ${sound}`,
    size: "short",
  });
}

function ceilingWords(
  figures: Figures,
  pinions: readonly number[],
  full: readonly (number | null)[],
  mode: number,
): string {
  const en = enGears.ceiling;
  const { pinionTeeth } = figures.machine.gears;
  const ceiling = figures.number("ceiling-full-pitch", mode);
  const now = ceiling === null ? en.noNow(pinionTeeth) : en.now(pinionTeeth, formatModelled(ceiling));
  const best = full.reduce<number>((top, speed, i) => ((speed ?? 0) > (full[top] ?? 0) ? i : top), 0);
  if (full.every((speed) => speed === null)) return now;
  const [turn, last] = [pinions[best] ?? pinionTeeth, pinions.at(-1) ?? pinionTeeth];
  return `${now} ${best < pinions.length - 1 ? en.turns(turn) : en.rises(last)} ${en.free2}`;
}

/** The most the rotor can turn against the pinion: with nothing to drive, and at a mode's full pitch. */
export function pinionCeilingPlot(figures: Figures, mode = 0): Shown<PlotState> {
  const en = enGears.ceiling;
  const { pinions, free, full } = ceilingByPinion(figures, mode);
  const asked = figures.number("set-head-speed", mode) ?? 0;
  const curve = (key: string, label: string, ys: readonly (number | null)[], ink: Curve["ink"]): Curve => ({
    key,
    label,
    ink,
    xs: pinions,
    ys,
  });
  const name = figures.machine.modes[mode]?.name ?? "";
  const now = figures.number("ceiling-full-pitch", mode);
  return plot({
    name: "ceiling-by-pinion",
    title: en.title,
    unit: "rpm",
    x: { label: en.x, unit: "", ticks: pinions, low: pinions[0] ?? 6, high: pinions.at(-1) ?? 30 },
    y: { label: en.y, unit: "rpm", low: 0 },
    curves: [curve("free", en.free, free, "plain"), curve("full", en.full, full, "now")],
    levels: [{ key: "set", axis: "y", at: asked, label: en.set(name), ink: "plain" }],
    handles: now === null ? [] : [pinionHandle(figures, pinions, now, enGears.mesh.handle)],
    words: ceilingWords(figures, pinions, full, mode),
  });
}
