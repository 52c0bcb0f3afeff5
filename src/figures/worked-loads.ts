/** How the figures of a load come about: ceiling, room, duty and currents, in hover or at full pitch. */
import { flightTime } from "#model/endurance";
import { speedHeadroom } from "#model/headroom";
import { ceilingSpeed, currentAtLoad, currentForTorque, dutyToHold, packCurrent } from "#model/powertrain";
import type { QuantityName } from "./catalogue.ts";
import type { Figures } from "./figures.ts";
import { type From, type Worked, worked } from "./notation.ts";
import type { LoadName } from "./rig.ts";

/** What stands behind a figure of a mode; null where it has no value. */
export type Work = (figures: Figures, mode: number) => Worked | null;

/** The figure that a load's motor current is. */
const motorCurrentOf = {
  hover: "hover-motor-current",
  "full-pitch": "full-pitch-motor-current",
} as const satisfies Readonly<Record<LoadName, QuantityName>>;

/** The gear ratio as a term, with the figure that it comes from. */
export const ratio = ({ rig }: Figures): From => [rig.ratio, "", "gear-ratio"];

/** Ceiling at a load: full duty against the torque there, rpm/V, V and A. Source: `ceilingSpeed`. */
export function ceilingWork(name: QuantityName, load: LoadName): Work {
  return (figures, mode) => {
    const { train } = figures.rig;
    const ceiling = figures.bearings.ceiling(load, mode);
    const torque = ceiling === null ? null : figures.rig.load(load, mode)(ceiling);
    if (torque === null) return null;
    return worked(name, ceilingSpeed, {
      speedConstant: [figures.machine.motor.kvRpmPerVolt, "rpm/V", "motor.kvRpmPerVolt"],
      openVoltage: [train.openVoltage, "V", "pack-open-voltage"],
      current: [currentForTorque(train, torque), "A"],
      resistance: [train.motorResistance + train.controllerResistance + train.packResistance, "ohm"],
      gearRatio: ratio(figures),
    });
  };
}

/** Duty that holds the set speed at a load, percent. Source: `dutyToHold`. */
export function dutyWork(name: QuantityName, load: LoadName): Work {
  return (figures, mode) => {
    const { train } = figures.rig;
    const point = figures.bearings.point(load, mode);
    if (point === null) return null;
    return worked(name, dutyToHold, {
      openVoltage: [train.openVoltage, "V", "pack-open-voltage"],
      packResistance: [train.packResistance, "ohm", "pack-resistance"],
      current: [point.motorCurrent, "A", motorCurrentOf[load]],
      emf: [train.torqueConstant * point.motorSpeed, "V"],
      resistance: [train.motorResistance + train.controllerResistance, "ohm"],
    });
  };
}

/** Pack current at a load, A. Source: `packCurrent`. */
export function currentWork(name: QuantityName, load: LoadName): Work {
  return (figures, mode) => {
    const point = figures.bearings.point(load, mode);
    if (point === null) return null;
    return worked(name, packCurrent, {
      duty: [100 * point.duty, "percent", load === "hover" ? "duty-hover" : "duty-full-pitch"],
      current: [point.motorCurrent, "A", motorCurrentOf[load]],
    });
  };
}

/** Room between the ceiling at a load and the set speed, rpm. Source: `speedHeadroom`. */
export function headroomWork(name: QuantityName, load: LoadName): Work {
  const of: QuantityName = load === "hover" ? "ceiling-hover" : "ceiling-full-pitch";
  return (figures, mode) => {
    const ceiling = figures.number(of, mode);
    const wanted = figures.number("set-head-speed", mode);
    if (ceiling === null || wanted === null) return null;
    return worked(name, speedHeadroom, {
      ceiling: [ceiling, "rpm", of],
      setSpeed: [wanted, "rpm", `modes.${mode}.headRpm`],
    });
  };
}

/** Motor current at a load, A. Source: `currentAtLoad`. */
export function motorCurrentWork(name: QuantityName, load: LoadName): Work {
  return (figures, mode) => {
    const { train } = figures.rig;
    const point = figures.bearings.point(load, mode);
    if (point === null) return null;
    return worked(name, currentAtLoad, {
      torque: [point.torque, "N m"],
      torqueConstant: [train.torqueConstant, "N m/A", "motor.kvRpmPerVolt"],
      gearRatio: ratio(figures),
      meshEfficiency: [train.meshEfficiency, "", "gears.meshEfficiency"],
      noLoadCurrent: [train.noLoadCurrent, "A", "motor.noLoadCurrentA"],
    });
  };
}

/** How long a load lasts, min: the mean current over the falling voltage, not that of this moment. Source: `flightTime`. */
export function durationWork(name: QuantityName, load: LoadName): Work {
  return (figures, mode) => {
    const { chargePercent, capacityMah } = figures.machine.pack;
    const ends = figures.bearings.ends(load, mode);
    if (!ends?.meanCurrent) return null;
    return worked(name, flightTime, {
      capacity: [capacityMah, "mAh", "pack.capacityMah"],
      used: [chargePercent - 100 * ends.end, "percent", "pack.chargePercent"],
      current: [ends.meanCurrent, "A"],
    });
  };
}
