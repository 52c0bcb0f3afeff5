/** The tables of the page on the bottom of the band, and the answers to its questions. */
import { carriedByThrottle, gripAt, leastCurrent } from "#figures/curves-band";
import type { Figures } from "#figures/figures";
import { type Gearing, gearingBy } from "#figures/gearing";
import { modeName } from "#figures/mode-name";
import { fieldAt } from "#machine/fields";
import { rpm } from "#model/constants";
import { bufferCurrent } from "#model/currents";
import { formatNumber, formatValue } from "#view/format";
import type { Shown } from "#view/shown";
import { enBand as en } from "#view/words/en-band";
import { type FactsState, factsTable } from "./facts-table.ts";

/** Places of the band that a head speed is moved to, per cent: well below the usual band, and near its top. */
const PLACES = [45, 80] as const;

/** A duty step above this share of the head speed counts as coarse, per cent: about a tenth of a semitone. From memory. */
const COARSE = 0.5;

const LOADS = ["hover", "full-pitch"] as const;

const { min: FEWEST, max: MOST } = fieldAt("gears.pinionTeeth");

/** The pinion that brings a mode nearest to a throttle in per cent; throttle goes as one over the teeth. */
function pinionFor(figures: Figures, mode: number, throttle: number): number {
  const { gears } = figures.rig.parts;
  const now = gearingBy(figures, mode, gears).number("throttle");
  if (now === null) return gears.pinionTeeth;
  return Math.min(MOST, Math.max(FEWEST, Math.round((gears.pinionTeeth * now) / throttle)));
}

const watts = (value: number | null): string =>
  formatValue(value, "W", { none: en.place.cannot, decimals: value !== null && value < 10 ? 2 : 1 });

/** What the lower place costs and spares against the present one; nothing where they are the same. */
function placeWords(own: Gearing, lower: Gearing): string {
  const [a, b] = [own.heats("hover"), lower.heats("hover")];
  if (own.ratio === lower.ratio || !a || !b) return "";
  const throttle = formatValue(lower.number("throttle"), "percent", { decimals: 0 });
  const hover = en.place.sum(throttle, watts(a.controller), watts(b.controller), watts(a.motor), watts(b.motor));
  const [c, d] = [own.heats("full-pitch"), lower.heats("full-pitch")];
  return `${hover} ${c && d ? en.place.full(watts(c.controller), watts(d.controller)) : en.place.fullNot}`;
}

/** One head speed at the place where it is, further down the band and further up, by other pinions. */
export function placeTable(figures: Figures, mode: number): Shown<FactsState> {
  const { gears } = figures.rig.parts;
  const [low, high] = PLACES.map((place) => pinionFor(figures, mode, place));
  const pinions = [...new Set([low ?? gears.pinionTeeth, gears.pinionTeeth, high ?? gears.pinionTeeth])];
  const sides = pinions.sort((a, b) => b - a).map((pinionTeeth) => gearingBy(figures, mode, { ...gears, pinionTeeth }));
  const none = en.place.cannot;
  const { rows } = en.place;
  const row = (title: string, text: (side: (typeof sides)[number]) => string, marked = false) => ({
    title,
    cells: sides.map(text),
    marked,
  });
  const share = (value: number | null) => formatValue(value, "percent", { none, decimals: 0 });
  const point = (side: (typeof sides)[number]) => side.point("hover");
  const [first] = sides;
  return factsTable({
    name: "place-in-band",
    own: pinions.indexOf(gears.pinionTeeth),
    caption: en.place.caption(modeName(figures.machine, mode)),
    columns: ["", ...pinions.map(en.place.column)],
    rows: [
      row(rows.throttle, (side) => share(side.number("throttle"))),
      row(rows.duty, (side) => share(point(side) ? 100 * (point(side)?.duty ?? 0) : null)),
      row(rows.pack, (side) => formatValue(point(side)?.packCurrent ?? null, "A", { none })),
      row(rows.motor, (side) => formatValue(point(side)?.motorCurrent ?? null, "A", { none }), true),
      row(rows.buffer, (side) => {
        const at = point(side);
        return formatValue(at && bufferCurrent({ current: at.motorCurrent, duty: Math.min(1, at.duty) }), "A", {
          none,
        });
      }),
      ...LOADS.map((load) => row(rows.controller[load], (side) => watts(side.heats(load)?.controller ?? null), true)),
      ...LOADS.map((load) => row(rows.heat[load], (side) => watts(side.heats(load)?.motor ?? null))),
    ],
    words: first ? placeWords(gearingBy(figures, mode, gears), first) : "",
  });
}

/** The throttle at which the motor's current in hover is least, per cent; null where it falls as far as one can hover. */
export function lowestCurrentAt(figures: Figures, mode: number): number | null {
  const curve = carriedByThrottle(figures, "hover", mode);
  const least = curve && leastCurrent(curve);
  return least?.turns ? least.throttle : null;
}

/** True where the lower place, by a larger pinion, leaves the motor cooler in hover by more than it warms the controller. */
export function sparesMore(figures: Figures, mode: number): boolean {
  const { gears } = figures.rig.parts;
  const at = (pinionTeeth: number) => gearingBy(figures, mode, { ...gears, pinionTeeth }).heats("hover");
  const [low, high] = PLACES.map((place) => at(pinionFor(figures, mode, place)));
  return Boolean(low && high) && high!.motor - low!.motor > low!.controller - high!.controller;
}

/** How finely a mode can be dosed, how freshly read, and what its blades store, beside both ends of the band. */
export function gripTable(figures: Figures, mode: number): Shown<FactsState> {
  const { rig, machine } = figures;
  const reference = figures.number("learned-head-speed");
  const headRpm = machine.modes[mode]?.headRpm ?? 0;
  const { usableLowPercent, usableHighPercent } = machine.controller;
  const ends =
    reference === null
      ? []
      : [
          { title: en.grip.bottom, headRpm: (usableLowPercent * reference) / 100 },
          { title: en.grip.top, headRpm: (usableHighPercent * reference) / 100 },
        ];
  // A band may begin at nothing; a rotor at rest has nothing to say.
  const columns = [{ title: modeName(machine, mode), headRpm }, ...ends.filter((end) => end.headRpm > 0)];
  const grips = columns.map((column) => ({ ...column, grip: gripAt(figures, column.headRpm) }));
  const row = (title: string, text: (side: (typeof grips)[number]) => string) => ({ title, cells: grips.map(text) });
  const { rows } = en.grip;
  const none = en.place.cannot;
  const carries = (side: (typeof grips)[number]): number | null => {
    const speed = side.headRpm * rpm;
    const torque = rig.load("hover", mode)(speed);
    return side.grip.energy === null || torque === null || torque <= 0 ? null : side.grip.energy / (torque * speed);
  };
  const own = grips[0]?.grip.stepShare ?? null;
  const share = (value: number | null) => formatValue(value, "percent", { decimals: 2, none });
  return factsTable({
    name: "grip",
    caption: en.grip.caption,
    columns: ["", ...grips.map(({ title }) => title)],
    rows: [
      row(rows.speed, (side) => formatValue(side.headRpm, "rpm")),
      row(rows.throttle, (side) =>
        formatValue(reference === null ? null : (100 * side.headRpm) / reference, "percent", { none, decimals: 0 }),
      ),
      row(rows.step, ({ grip }) => formatValue(grip.step, "rpm", { decimals: 1, none })),
      row(rows.share, ({ grip }) => share(grip.stepShare)),
      row(rows.reading, ({ grip }) => formatValue(grip.reading, "ms", { decimals: 2 })),
      row(rows.energy, ({ grip }) => formatValue(grip.energy, "J", { none })),
      row(rows.carries, (side) => formatValue(carries(side), "s", { decimals: 2, none })),
    ],
    words: own === null ? en.grip.none : (own < COARSE ? en.grip.fine : en.grip.coarse)(share(own)),
  });
}

/** The answer to the first question: how much flows through the motor while the pack gives so much. */
export interface BandFacts {
  /** A in hover; null where the mode can't be held. */
  readonly motor: number | null;
  readonly pack: number | null;
  readonly words: string;
}

/** Both currents of a mode in hover, and what to say of them. */
export function bandFacts(figures: Figures, mode: number): BandFacts {
  const point = figures.bearings.point("hover", mode);
  if (!point) return { motor: null, pack: null, words: en.heldNot };
  const words = point.packCurrent > 0 ? en.reply(formatNumber(point.motorCurrent / point.packCurrent, 1)) : "";
  return { motor: point.motorCurrent, pack: point.packCurrent, words };
}
