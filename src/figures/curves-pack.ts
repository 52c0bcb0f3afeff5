/** What a pack gives: its voltage at rest and under a mode's loads, and what its temperature and its cell count do. */
import type { Machine } from "#machine/machine";
import { fromCelsius, rpm } from "#model/constants";
import { loadedVoltage } from "#model/currents";
import { packResistance, resistanceFactor } from "#model/pack";
import { currentForTorque, operatingPoint, type Powertrain } from "#model/powertrain";
import { ceilingCurve } from "./curves.ts";
import { drawnNow } from "./drawn.ts";
import { type Figures, figuresOf } from "./figures.ts";
import type { LoadName } from "./rig.ts";

/** Voltages of the whole pack over its charge, V. */
export interface PackVoltages {
  /** Per cent, rising. */
  readonly charges: readonly number[];
  readonly open: readonly number[];
  /** null where the motor can't turn the rotor under that load. */
  readonly hover: readonly (number | null)[];
  readonly full: readonly (number | null)[];
}

/** Current out of the pack, A, that a load draws: at the mode's set speed, or at full duty where that can't be held. */
function drawn(
  figures: Figures,
  train: Powertrain,
  load: LoadName,
  mode: number,
  ceilingRpm: number | null,
): number | null {
  const speed = figures.rig.parts.modes[mode]?.headSpeed ?? 0;
  const asked = figures.bearings.torque(load, mode);
  const held = asked === null ? null : operatingPoint(train, speed, asked);
  if (held) return held.packCurrent;
  if (ceilingRpm === null) return null;
  const torque = figures.rig.load(load, mode)(ceilingRpm * rpm);
  return torque === null ? null : currentForTorque(train, torque);
}

/**
 * Voltage of the pack at rest and under a mode's loads, V, against the charge in per cent. Errors: the quick part of the
 * sag alone; null where the rotor doesn't turn. Source: `loadedVoltage`, `operatingPoint`, `ceilingAt`.
 */
export function packVoltages(figures: Figures, mode: number): PackVoltages {
  const { rig } = figures;
  const { charges } = ceilingCurve(figures, "hover", mode);
  const under = (load: LoadName) => {
    const { speeds } = ceilingCurve(figures, load, mode);
    return charges.map((charge, i) => {
      const train = rig.trainAt(charge / 100);
      const current = drawn(figures, train, load, mode, speeds[i] ?? null);
      if (current === null) return null;
      return loadedVoltage({ openVoltage: train.openVoltage, current, resistance: train.packResistance });
    });
  };
  return {
    charges,
    open: charges.map((charge) => rig.voltageAt(charge / 100)),
    hover: under("hover"),
    full: under("full-pitch"),
  };
}

/** Current out of the pack under a load of a mode, A, at the machine's charge; null where the rotor doesn't turn. Source: `drawnNow`. */
export const loadCurrent = (figures: Figures, load: LoadName, mode: number): number | null =>
  drawnNow(figures, load, mode)?.current ?? null;

/** The pack at a charge, at a mode's full pitch: V at rest, V under load, and the share of its voltage that holds the set speed. */
export interface PackMoment {
  readonly open: number;
  /** null where the set speed can't be held, as the share. */
  readonly loaded: number | null;
  /** 0 to 1. */
  readonly duty: number | null;
}

/** The pack at a charge of 0 to 1, at a mode's full pitch. Units: V, ratio. Errors: null where the speed can't be held. Source: `operatingPoint`. */
export function packMoment(figures: Figures, charge: number, mode: number): PackMoment {
  const { rig, bearings } = figures;
  const torque = bearings.torque("full-pitch", mode);
  const train = rig.trainAt(charge);
  const point = torque === null ? null : operatingPoint(train, rig.parts.modes[mode]?.headSpeed ?? 0, torque);
  return { open: train.openVoltage, loaded: point?.packVoltage ?? null, duty: point?.duty ?? null };
}

/** Temperatures on plots of a pack, °C. */
export const packTemperatures: readonly number[] = Array.from({ length: 15 }, (_, i) => -10 + 5 * i);

/**
 * Sag of the pack under a current, V, at a temperature in °C; `age` multiplies the cells' resistance. Errors: the current
 * is taken as given; cold also slows the cell in ways that this leaves out. Source: `packResistance`, `resistanceFactor`.
 */
export function sagAt(figures: Figures, current: number, temperatureC: number, age = 1): number {
  const { pack } = figures.rig.parts;
  const resistance = packResistance({
    ...pack,
    cellResistance: age * pack.cellResistance,
    temperatureFactor: resistanceFactor(fromCelsius(temperatureC)),
  });
  return current * resistance;
}

/**
 * The machine with another cell count and a motor wound for it: same head speed per duty, same energy in the pack, same
 * mass of copper and of cells. Kv goes as one over the cells; winding resistance and cell resistance so that they lose the
 * same power at the same shaft power. What stays as it is: controller, leads and plugs. Units: those of the record.
 * Source: definition, by the scaling of turns (R as the square of them) and of cells (R as one over their capacity).
 */
export function rewoundFor(machine: Machine, cells: number): Machine {
  const { pack, motor } = machine;
  const more = cells / pack.cells;
  return {
    ...machine,
    pack: {
      ...pack,
      cells,
      capacityMah: pack.capacityMah / more,
      cellResistanceMilliohm: pack.cellResistanceMilliohm * more,
    },
    motor: {
      ...motor,
      kvRpmPerVolt: motor.kvRpmPerVolt / more,
      resistanceMilliohm: motor.resistanceMilliohm * more * more,
      noLoadCurrentA: motor.noLoadCurrentA / more,
      noLoadVoltageV: motor.noLoadVoltageV * more,
    },
  };
}

/** Losses with a cell count, at the mode's set speed and load. */
export interface CellChoice {
  readonly cells: number;
  /** Current out of the pack, A; null, as all the rest, where the speed can't be held. */
  readonly current: number | null;
  /** Heat in pack, leads, controller and winding, W. */
  readonly heat: number | null;
  /** What leads, plugs and controller have of it, W. */
  readonly wiring: number | null;
}

const choices = new WeakMap<Figures, Map<string, CellChoice>>();

/** Current (A) and heat (W) with another cell count and a motor wound for it. Errors: null where the speed can't be held. Source: `rewoundFor`, `operatingPoint`. */
export function withCells(figures: Figures, cells: number, load: LoadName, mode: number): CellChoice {
  const kept = choices.get(figures) ?? new Map<string, CellChoice>();
  choices.set(figures, kept);
  const key = `${cells} ${load} ${mode}`;
  const before = kept.get(key);
  if (before) return before;
  const { rig, bearings } = figuresOf(rewoundFor(figures.machine, cells));
  const point = bearings.point(load, mode);
  const heat = point === null ? null : point.packHeat + point.controllerHeat + point.copperHeat;
  const wiring = point === null ? null : point.packCurrent ** 2 * rig.parts.pack.leadResistance + point.controllerHeat;
  const made = { cells, current: point?.packCurrent ?? null, heat, wiring };
  kept.set(key, made);
  return made;
}
