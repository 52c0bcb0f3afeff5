/** How each figure is worked out from a rig. Values are in the unit that the catalogue gives; null where there is none. */
import { bladePull, rotorEnergy, tipMach, tipSpeed } from "#model/blades";
import { rpm } from "#model/constants";
import { type Endurance, endurance, lowestCharge } from "#model/endurance";
import { tailSpeed } from "#model/gears";
import { noLoadSpeed } from "#model/motor";
import { electricalSpeed } from "#model/poles";
import { dutyAsked, type OperatingPoint, operatingPoint } from "#model/powertrain";
import { setSpeed, throttleForSpeed, throttleStep } from "#model/reference";
import { ceilingAt, type SteadySpeed } from "#model/steady";
import type { QuantityName } from "./catalogue.ts";
import { type Reference, referenceOf } from "./reference.ts";
import type { LoadName, Rig } from "./rig.ts";

export type Value = number | string | null;

/** A rig with what several figures of it need, each worked out once, when it is first asked for. */
export interface Bearings {
  readonly rig: Rig;
  readonly reference: () => Reference;
  /** Where full duty and the load balance, or why they don't. */
  readonly steady: (load: LoadName, mode: number) => SteadySpeed;
  /** That speed, rad/s. */
  readonly ceiling: (load: LoadName, mode: number) => number | null;
  /** Torque on the main shaft, N m, at the mode's set speed; null when the rotor can't do it. */
  readonly torque: (load: LoadName, mode: number) => number | null;
  readonly point: (load: LoadName, mode: number) => OperatingPoint | null;
  /** How long a load of a mode lasts; null when it can't be held now. */
  readonly ends: (load: LoadName, mode: number) => Endurance | null;
}

/** Remembers what a function of two small arguments gave. */
function once<T>(work: (load: LoadName, mode: number) => T): (load: LoadName, mode: number) => T {
  const known: Readonly<Record<LoadName, { readonly value: T }[]>> = { hover: [], "full-pitch": [] };
  return (load, mode) => {
    const found = known[load][mode] ?? { value: work(load, mode) };
    known[load][mode] = found;
    return found.value;
  };
}

/** Bearings of a rig. Units: SI. Errors: null where a load can't be carried or turned. Source: definition. */
export function bearingsOf(rig: Rig): Bearings {
  let reference: Reference | undefined;
  const speedOf = (mode: number) => rig.parts.modes[mode]?.headSpeed ?? 0;
  const torque = once((load, mode) => rig.load(load, mode)(speedOf(mode)));
  const steady = once((load, mode) => ceilingAt(rig.train, rig.load(load, mode), speedOf(mode)));
  const point = once((load, mode) => {
    const asked = torque(load, mode);
    return asked === null ? null : operatingPoint(rig.train, speedOf(mode), asked);
  });
  const ends = once((load, mode) => {
    const asked = torque(load, mode);
    if (asked === null || point(load, mode) === null) return null;
    const { charge, capacity } = rig.parts.pack;
    return endurance(rig.train, speedOf(mode), asked, capacity, charge, rig.voltageAt);
  });
  return {
    rig,
    reference: () => (reference ??= referenceOf(rig)),
    steady,
    ceiling: (load, mode) => {
      const found = steady(load, mode);
      return found.ok ? found.speed : null;
    },
    torque,
    point,
    ends,
  };
}

const inRpm = (speed: number | null): number | null => (speed === null ? null : speed / rpm);
const degrees = (angle: number | null): number | null => (angle === null ? null : (angle * 180) / Math.PI);
const inPercent = (share: number | null): number | null => (share === null ? null : 100 * share);
const over = (a: number | null, b: number | null): number | null => (a === null || b === null ? null : a - b);

/** Duty as a share of full; null when no duty up to full holds the set speed. */
function duty({ rig, torque }: Bearings, load: LoadName, mode: number): number | null {
  const asked = torque(load, mode);
  const found = asked === null ? null : dutyAsked(rig.train, rig.parts.modes[mode]?.headSpeed ?? 0, asked);
  return found !== null && found <= 1 + 1e-9 ? found : null;
}

function throttle({ rig, reference }: Bearings, mode: number): number | null {
  const { motorSpeed } = reference();
  if (motorSpeed === null) return null;
  return throttleForSpeed({
    headSpeed: rig.parts.modes[mode]?.headSpeed ?? 0,
    reference: motorSpeed,
    gearRatio: rig.ratio,
  });
}

const atThrottle = ({ rig, reference }: Bearings, share: number | null): number | null => {
  const { motorSpeed } = reference();
  return share === null || motorSpeed === null
    ? null
    : inRpm(setSpeed({ throttle: share, reference: motorSpeed, gearRatio: rig.ratio }));
};

/** Whole per cent as a transmitter takes them. More than 100 is shown as it is: the warning says that it can't be entered. */
const entered = (share: number | null): number | null => (share === null ? null : throttleStep(share));

/** What the old throttle value, worked out for the gears fitted while it learned, asks for with today's. */
function staleSpeed(bearings: Bearings, mode: number): number | null {
  const { rig, reference } = bearings;
  const { motorSpeed, ratioThen } = reference();
  if (motorSpeed === null) return null;
  const headSpeed = rig.parts.modes[mode]?.headSpeed ?? 0;
  return atThrottle(bearings, entered(throttleForSpeed({ headSpeed, reference: motorSpeed, gearRatio: ratioThen })));
}

const tip = ({ parts }: Rig, mode: number): number =>
  tipSpeed({ speed: parts.modes[mode]?.headSpeed ?? 0, radius: parts.mainRotor.radius });

function lasts({ ends }: Bearings, load: LoadName, mode: number): number | null {
  const found = ends(load, mode);
  return found === null ? null : found.time / 60;
}

/** What the cells give and the main shaft doesn't get, W. */
function boardHeat({ point }: Bearings, load: LoadName, mode: number): number | null {
  const found = point(load, mode);
  return found === null ? null : found.sourcePower - found.outputPower;
}

const efficiency = ({ point }: Bearings, load: LoadName, mode: number): number | null =>
  inPercent(point(load, mode)?.chainEfficiency ?? null);

function hoverCollective({ rig }: Bearings, mode: number): number | null {
  return rig.main.collectiveForThrust({ speed: rig.parts.modes[mode]?.headSpeed ?? 0, thrust: rig.weight });
}

function hoverPower({ rig }: Bearings, mode: number): number | null {
  const speed = rig.parts.modes[mode]?.headSpeed ?? 0;
  const torque = rig.main.torqueForThrust({ speed, thrust: rig.weight });
  return torque === null ? null : torque * rig.rotorTorque * speed;
}

const speedOf = ({ rig }: Bearings, mode: number): number => rig.parts.modes[mode]?.headSpeed ?? 0;

/** Every figure by name. `mode` is the place of a flight mode in the machine's list; whole figures ignore it. */
export const values: Readonly<Record<QuantityName, (b: Bearings, mode: number) => Value>> = {
  "gear-ratio": ({ rig }) => rig.ratio,
  "pack-open-voltage": ({ rig }) => rig.train.openVoltage,
  "pack-resistance": ({ rig }) => rig.train.packResistance,
  "air-density": ({ rig }) => rig.air.density,
  "no-load-head-speed": ({ rig: { train, parts } }) => {
    const resistance = train.motorResistance + train.controllerResistance + train.packResistance;
    const speed = noLoadSpeed({ ...train, speedConstant: parts.motor.speedConstant, resistance });
    return speed > 0 ? inRpm(speed) : null;
  },
  "learning-head-speed": ({ reference }) => inRpm(reference().learning),
  "learned-motor-speed": ({ reference }) => inRpm(reference().motorSpeed),
  "learned-head-speed": (b) => atThrottle(b, 1),
  "usable-low-head-speed": (b) => atThrottle(b, b.rig.parts.controller.usableLow),
  "usable-high-head-speed": (b) => atThrottle(b, b.rig.parts.controller.usableHigh),
  "reference-state": ({ reference }) => reference().state,
  "set-head-speed": ({ rig }, mode) => rig.machine.modes[mode]?.headRpm ?? null,
  throttle: (b, mode) => inPercent(throttle(b, mode)),
  "throttle-entered": (b, mode) => {
    const share = entered(throttle(b, mode));
    return share === null ? null : Math.round(100 * share);
  },
  "head-speed-entered": (b, mode) => atThrottle(b, entered(throttle(b, mode))),
  "stale-head-speed": staleSpeed,
  "ceiling-hover": ({ ceiling }, mode) => inRpm(ceiling("hover", mode)),
  "ceiling-full-pitch": ({ ceiling }, mode) => inRpm(ceiling("full-pitch", mode)),
  "speed-headroom-hover": (b, mode) => inRpm(over(b.ceiling("hover", mode), speedOf(b, mode))),
  "speed-headroom-full-pitch": (b, mode) => inRpm(over(b.ceiling("full-pitch", mode), speedOf(b, mode))),
  "duty-hover": (b, mode) => inPercent(duty(b, "hover", mode)),
  "duty-full-pitch": (b, mode) => inPercent(duty(b, "full-pitch", mode)),
  "motor-speed": (b, mode) => inRpm(speedOf(b, mode) * b.rig.ratio),
  "electrical-speed": (b, mode) =>
    inRpm(electricalSpeed({ motorSpeed: speedOf(b, mode) * b.rig.ratio, poles: b.rig.parts.motor.poles })),
  "tail-rotor-speed": (b, mode) =>
    inRpm(tailSpeed({ headSpeed: speedOf(b, mode), tailRatio: b.rig.parts.gears.tailRatio })),
  "tip-speed": ({ rig }, mode) => tip(rig, mode),
  "tip-mach": ({ rig }, mode) => tipMach({ tipSpeed: tip(rig, mode), soundSpeed: rig.air.soundSpeed }),
  "blade-pull": (b, mode) => {
    const { bladeMass, bladeCentre } = b.rig.parts.mainRotor;
    return bladePull({ mass: bladeMass, centre: bladeCentre, speed: speedOf(b, mode) });
  },
  "rotor-energy": (b, mode) =>
    b.rig.bladeInertia === null
      ? null
      : rotorEnergy({ blades: b.rig.parts.mainRotor.blades, inertia: b.rig.bladeInertia, speed: speedOf(b, mode) }),
  "hover-collective": (b, mode) => degrees(hoverCollective(b, mode)),
  "hover-power": hoverPower,
  "hover-motor-current": ({ point }, mode) => point("hover", mode)?.motorCurrent ?? null,
  "hover-pack-current": ({ point }, mode) => point("hover", mode)?.packCurrent ?? null,
  "hover-duration": (b, mode) => lasts(b, "hover", mode),
  "hover-board-heat": (b, mode) => boardHeat(b, "hover", mode),
  "hover-efficiency": (b, mode) => efficiency(b, "hover", mode),
  "full-pitch-power": (b, mode) => {
    const torque = b.torque("full-pitch", mode);
    return torque === null ? null : torque * speedOf(b, mode);
  },
  "full-pitch-pack-current": ({ point }, mode) => point("full-pitch", mode)?.packCurrent ?? null,
  "full-pitch-motor-current": ({ point }, mode) => point("full-pitch", mode)?.motorCurrent ?? null,
  "full-pitch-board-heat": (b, mode) => boardHeat(b, "full-pitch", mode),
  "full-pitch-efficiency": (b, mode) => efficiency(b, "full-pitch", mode),
  "full-pitch-duration": (b, mode) => lasts(b, "full-pitch", mode),
  "lowest-charge": (b, mode) => {
    const torque = b.torque("full-pitch", mode);
    return torque === null ? null : inPercent(lowestCharge(b.rig.train, speedOf(b, mode), torque, b.rig.voltageAt));
  },
};
