/** Power asked and power given: against pitch at a head speed, and against head speed at full pitch. */
import { rpm } from "#model/constants";
import { operatingPoint, type Powertrain } from "#model/powertrain";
import type { Figures } from "./figures.ts";
import { withTail } from "./rotor-map.ts";

/** Most that the chain gives to the main shaft at a head speed with full duty, W; 0 where the motor can't turn so fast. */
export function mostPower(train: Powertrain, headRpm: number): number {
  const speed = headRpm * rpm;
  const resistance = train.motorResistance + train.controllerResistance + train.packResistance;
  const back = train.torqueConstant * train.gearRatio;
  const spare = train.openVoltage - back * speed;
  if (spare <= 0) return 0;
  // Without any resistance there would be no limit; no machine of the record is without.
  const current = spare / resistance - train.noLoadCurrent;
  return current <= 0 || !Number.isFinite(current) ? 0 : back * current * train.meshEfficiency * speed;
}

/** Degrees of collective at which curves have their points. */
const PITCHES = Array.from({ length: 29 }, (_, i) => i / 2);
const degree = Math.PI / 180;

export interface PitchCurve {
  /** Degrees, rising from flat pitch. */
  readonly pitches: readonly number[];
  /** Power of both rotors, W. */
  readonly powers: readonly number[];
}

/** Power of both rotors against collective, W, at the set speed of a mode, before the climb begins. Source: the rotor model. */
export function pitchCurve(figures: Figures, mode: number): PitchCurve {
  const { main, tail, parts } = figures.rig;
  const speed = parts.modes[mode]?.headSpeed ?? 0;
  const powers = PITCHES.map(
    (pitch) => withTail(tail, speed, main.torqueAt({ speed, collective: pitch * degree })) * speed,
  );
  return { pitches: PITCHES, powers };
}

const POINTS = 31;
/** Curves begin at this share of their top: below it nothing flies. */
const FIRST = 0.2;

export interface PowerCurves {
  /** Head speeds, rpm. */
  readonly speeds: readonly number[];
  /** Both rotors at the mode's full pitch, W. */
  readonly asked: readonly number[];
  /** The most that the chain gives, W. */
  readonly given: readonly number[];
}

/** What full pitch asks and what the chain can give, W, against head speed from a fifth of `top` to `top`, rpm. Source: `mostPower`, the rotor model. */
export function powerCurves(figures: Figures, mode: number, top: number): PowerCurves {
  const { rig } = figures;
  const collective = rig.parts.modes[mode]?.collectiveMax ?? 0;
  const speeds = Array.from({ length: POINTS }, (_, i) => top * (FIRST + ((1 - FIRST) * i) / (POINTS - 1)));
  const asked = speeds.map((headRpm) => {
    const speed = headRpm * rpm;
    return withTail(rig.tail, speed, rig.main.torqueAt({ speed, collective })) * speed;
  });
  return { speeds, asked, given: speeds.map((speed) => mostPower(rig.train, speed)) };
}

/** Loads of one mode at a share of its head speed. */
export interface PowerAt {
  readonly flat: number | null;
  readonly hover: number | null;
  readonly full: number | null;
  /** Power out of the pack in hover, W. */
  readonly source: number | null;
}

/** Power of both rotors, W, flat, in hover and at full pitch, at a share of a mode's head speed; null where it can't be. Source: the rotor model. */
export function powerAt({ rig }: Figures, mode: number, share: number): PowerAt {
  const speed = (rig.parts.modes[mode]?.headSpeed ?? 0) * share;
  const hover = rig.load("hover", mode)(speed);
  const point = hover === null ? null : operatingPoint(rig.train, speed, hover);
  const power = (torque: number | null) => (torque === null ? null : torque * speed);
  return {
    flat: power(rig.flat(speed)),
    hover: power(hover),
    full: power(rig.load("full-pitch", mode)(speed)),
    source: point?.sourcePower ?? null,
  };
}
