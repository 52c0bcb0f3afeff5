/** Hover over head speed: what the rotor asks, what the chain makes of it, and where hovering begins and lasts longest. */
import { rpm } from "#model/constants";
import { endurance } from "#model/endurance";
import { noLoadSpeed } from "#model/motor";
import { operatingPoint } from "#model/powertrain";
import type { Figures } from "./figures.ts";
import { keeper } from "./kept.ts";
import type { Rig } from "./rig.ts";
import { rotorMap, withTail } from "./rotor-map.ts";

const POINTS = 36;
const nicely = [1, 1.2, 1.4, 1.6, 1.8, 2, 2.3, 2.6, 3, 3.5, 4, 4.5, 5, 6, 7, 8, 9, 10] as const;

/** What the rotors ask in hover. All lists are of one length and belong to `speeds`. */
export interface HoverAsking {
  /** Head speeds, rpm, from the slowest that carries the machine up. */
  readonly speeds: readonly number[];
  /** Torque of both rotors on the main shaft, N m. */
  readonly torques: readonly (number | null)[];
  /** Shaft power of the main rotor, W. */
  readonly power: readonly (number | null)[];
  /** The part of it that turns the blades while they carry nothing, W. */
  readonly turning: readonly (number | null)[];
  /** The rest, which carries the weight, W. */
  readonly carrying: readonly (number | null)[];
}

/** What the chain makes of it; the same lists. Null where the chain can't hold that speed. */
export interface HoverCurve extends HoverAsking {
  readonly minutes: readonly (number | null)[];
  readonly motorCurrent: readonly (number | null)[];
  readonly packCurrent: readonly (number | null)[];
  /** W, current squared times resistance. */
  readonly controllerHeat: readonly (number | null)[];
}

const upToNice = (value: number): number => {
  const power = 10 ** Math.floor(Math.log10(value));
  return power * (nicely.find((times) => times * power >= value * (1 - 1e-9)) ?? 10);
};

/** Upper end of the curves, rpm: a round figure above all modes and above what the motor turns with nothing to drive. */
function topOf({ machine, rig }: Figures): number {
  const { train, parts } = rig;
  const resistance = train.motorResistance + train.controllerResistance + train.packResistance;
  const free = noLoadSpeed({ ...train, speedConstant: parts.motor.speedConstant, resistance }) / rpm;
  return upToNice(Math.max(100, free, ...machine.modes.map((mode) => mode.headRpm)));
}

/** The slowest head speed, rpm, at which the main rotor carries the machine; null when none up to `top` does. */
function slowest({ main, weight }: Rig, top: number): number | null {
  const { most } = rotorMap(main);
  if (most(top * rpm) < weight) return null;
  let [low, high] = [top / 60, top];
  if (most(low * rpm) >= weight) return low;
  while (high - low > 1e-4 * top) {
    const middle = (low + high) / 2;
    if (most(middle * rpm) >= weight) high = middle;
    else low = middle;
  }
  return high;
}

function asking(rig: Rig, top: number): HoverAsking | null {
  const first = slowest(rig, top);
  if (first === null) return null;
  const { main, tail, weight } = rig;
  const map = rotorMap(main);
  const speeds = Array.from({ length: POINTS }, (_, i) => first + ((top - first) * i) / (POINTS - 1));
  const own = speeds.map((speed) => map.torque(speed * rpm, weight));
  const torques = speeds.map((speed, i) => {
    const torque = own[i] ?? null;
    return torque === null ? null : withTail(tail, speed * rpm, torque);
  });
  const power = speeds.map((speed, i) => (own[i] == null ? null : own[i] * speed * rpm));
  const turning = speeds.map((speed) => {
    const torque = map.torque(speed * rpm, 0);
    return torque === null ? null : torque * speed * rpm;
  });
  const carrying = power.map((all, i) => (all === null || turning[i] == null ? null : all - turning[i]));
  return { speeds, torques, power, turning, carrying };
}

const askings = keeper<HoverAsking | null>();
const curves = new WeakMap<Figures, HoverCurve | null>();

/**
 * Hover over head speed. Units: rpm, N m, W, A, min. Null when the rotors carry the machine at no speed up to the
 * fastest that motor or modes reach. The rotors' part is kept while rotors, mass and place stay the same.
 * Source: the rotor model and `operatingPoint`.
 */
export function hoverCurve(figures: Figures): HoverCurve | null {
  let curve = curves.get(figures);
  if (curve === undefined) {
    const { machine, rig } = figures;
    const top = topOf(figures);
    const keys = [machine.mainRotor, machine.tailRotor, machine.airframe, machine.place, machine.gears.tailRatio, top];
    const asked = askings(keys, () => asking(rig, top));
    curve = asked && { ...asked, ...given(rig, asked) };
    curves.set(figures, curve);
  }
  return curve;
}

function given(rig: Rig, { speeds, torques }: HoverAsking): Omit<HoverCurve, keyof HoverAsking> {
  const { capacity, charge } = rig.parts.pack;
  const points = speeds.map((speed, i) => {
    const torque = torques[i] ?? null;
    return torque === null ? null : operatingPoint(rig.train, speed * rpm, torque);
  });
  const minutes = points.map((point) => {
    const found = point && endurance(rig.train, point.speed, point.torque, capacity, charge, rig.voltageAt);
    return found ? found.time / 60 : null;
  });
  return {
    minutes,
    motorCurrent: points.map((point) => point?.motorCurrent ?? null),
    packCurrent: points.map((point) => point?.packCurrent ?? null),
    controllerHeat: points.map((point) => point?.controllerHeat ?? null),
  };
}

/** Where a hover lasts longest. */
export interface LongestHover {
  /** rpm */
  readonly speed: number;
  /** min */
  readonly minutes: number;
  /** Slower still, the hover is shorter (`turn`), or the blades don't carry the machine at all (`end`). */
  readonly below: "turn" | "end";
}

/** The head speed of the longest hover, rpm, to a step of the curve; null when no speed gives one. Source: `hoverCurve`. */
export function longestHover(figures: Figures): LongestHover | null {
  const curve = hoverCurve(figures);
  if (!curve) return null;
  let best = -1;
  let most = 0;
  for (const [i, minutes] of curve.minutes.entries()) {
    if (minutes !== null && minutes > most) [best, most] = [i, minutes];
  }
  const speed = curve.speeds[best];
  if (speed === undefined) return null;
  return { speed, minutes: most, below: best === 0 ? "end" : "turn" };
}

/** The slowest head speed, rpm, at which a mode's own full pitch still carries the machine; null when none up to the top does. Source: the rotor model. */
export function pitchEndsAt(figures: Figures, mode: number): number | null {
  const curve = hoverCurve(figures);
  const { main, weight, parts } = figures.rig;
  const collective = parts.modes[mode]?.collectiveMax;
  if (!curve || collective === undefined) return null;
  const [first, last] = [curve.speeds[0] ?? 0, curve.speeds.at(-1) ?? 0];
  const carries = (speed: number) => main.thrustAt({ speed: speed * rpm, collective }) >= weight;
  if (!carries(last)) return null;
  if (carries(first)) return first;
  let [low, high] = [first, last];
  for (let i = 0; i < 12; i++) {
    const middle = (low + high) / 2;
    if (carries(middle)) high = middle;
    else low = middle;
  }
  return high;
}
