/** What would help a mode that can't be held: a fuller pack, a lower speed, another pinion, more cells. Each is tried on the model. */
import { fieldAt } from "#machine/fields";
import { rpm } from "#model/constants";
import { lowestCharge } from "#model/endurance";
import { packResistance, resistanceFactor } from "#model/pack";
import { ceilingSpeed, currentForTorque, operatingPoint, type Powertrain } from "#model/powertrain";
import type { Figures } from "./figures.ts";
import type { LoadName } from "./rig.ts";

export interface Help {
  /** Whole per cent of charge from which it is held; null when it isn't the charge that is missing. */
  readonly charge: number | null;
  /** rpm, a round figure below the ceiling; null when the usable band holds none. */
  readonly slower: number | null;
  /** Teeth of the smallest pinion that holds it after learning again. */
  readonly pinion: number | null;
  readonly cells: number | null;
}

const MORE_TEETH = 4;
const MORE_CELLS = 2;
const ROUND_RPM = 10;

/**
 * What would help a mode that is too fast for a load: each way is tried on the model, after learning again where it needs
 * that. Units: rpm, teeth, cells. Errors: null for a way that doesn't help. Source: `ceilingSpeed`.
 */
export function helpFor(figures: Figures, load: LoadName, mode: number): Help {
  const { rig } = figures;
  const { train, parts } = rig;
  const { pack, gears } = parts;
  const speed = parts.modes[mode]?.headSpeed ?? 0;
  const torque = figures.bearings.torque(load, mode);
  // The rotor asks for the same torque at the set speed whatever drives it, so one answer serves all the ways.
  const holds = (other: Partial<Powertrain>): boolean => {
    if (torque === null) return false;
    const changed = { ...train, ...other };
    const resistance = changed.motorResistance + changed.controllerResistance + changed.packResistance;
    const current = currentForTorque(changed, torque);
    return ceilingSpeed({ ...changed, speedConstant: 1 / changed.torqueConstant, resistance, current }) >= speed;
  };
  const withTeeth = (pinionTeeth: number) => holds({ gearRatio: (train.gearRatio * gears.pinionTeeth) / pinionTeeth });
  const withCells = (cells: number) =>
    holds({
      openVoltage: (train.openVoltage / pack.cells) * cells,
      packResistance: packResistance({ ...pack, cells, temperatureFactor: resistanceFactor(pack.temperature) }),
    });
  const lowest = (of: LoadName): number | null => {
    const asked = figures.bearings.torque(of, mode);
    return asked === null ? null : lowestCharge(train, speed, asked, rig.voltageAt);
  };
  // Whoever can hover with it wants to climb with it too, where any charge allows that.
  const charge = lowest(load) === null ? null : Math.max(lowest(load) ?? 0, lowest("full-pitch") ?? 0);
  return {
    charge: charge === null || charge <= pack.charge ? null : Math.ceil(100 * charge),
    slower: slowerSpeed(figures, load, mode),
    pinion: firstThat(withTeeth, gears.pinionTeeth, MORE_TEETH, "gears.pinionTeeth"),
    cells: firstThat(withCells, pack.cells, MORE_CELLS, "pack.cells"),
  };
}

/** The first count above `now` that helps; null when none of the next few does, or no machine may have it. */
function firstThat(helps: (count: number) => boolean, now: number, more: number, path: string): number | null {
  const most = Math.min(now + more, fieldAt(path).max);
  for (let count = now + 1; count <= most; count++) if (helps(count)) return count;
  return null;
}

/** A round speed below the ceiling, the blades' limit and the top of the usable band, rpm, if it lies in the band and is really held. */
function slowerSpeed(figures: Figures, load: LoadName, mode: number): number | null {
  const { rig, machine } = figures;
  const ceiling = figures.number(load === "hover" ? "ceiling-hover" : "ceiling-full-pitch", mode);
  if (ceiling === null) return null;
  const fastest = figures.number("usable-high-head-speed") ?? ceiling;
  const most = Math.min(ceiling, machine.mainRotor.ratedRpm ?? ceiling, fastest);
  const below = Math.floor(most / ROUND_RPM) * ROUND_RPM;
  const slowest = figures.number("usable-low-head-speed") ?? 0;
  const set = figures.number("set-head-speed", mode) ?? 0;
  const torque = below >= slowest && below < set ? rig.load(load, mode)(below * rpm) : null;
  return torque !== null && operatingPoint(rig.train, below * rpm, torque) ? below : null;
}
