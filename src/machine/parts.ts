/**
 * The machine in SI, for the model: the record's trade units end here. Names are those that the model uses.
 */
import { milliampereHour, rpm, zeroCelsius } from "#model/constants";
import type { Chemistry } from "#model/ocv";
import type { FittedParts, Machine } from "./machine.ts";

export interface Parts {
  readonly pack: {
    readonly cells: number;
    readonly chemistry: Chemistry;
    /** C */
    readonly capacity: number;
    /** One cell's at 25 °C, ohm */
    readonly cellResistance: number;
    /** ohm */
    readonly leadResistance: number;
    /** 0 to 1 */
    readonly charge: number;
    /** K */
    readonly temperature: number;
  };
  readonly motor: {
    /** Kv, rad/(V s) */
    readonly speedConstant: number;
    /** At 25 °C, ohm */
    readonly resistance: number;
    /** A */
    readonly noLoadCurrent: number;
    /** V */
    readonly noLoadVoltage: number;
    /** Magnets */
    readonly poles: number;
    /** rad/s */
    readonly ratedSpeed: number;
    /** kg m² */
    readonly rotorInertia: number;
    /** K */
    readonly windingTemperature: number;
  };
  readonly controller: {
    /** ohm */
    readonly resistance: number;
    /** Electrical, rad/s */
    readonly electricalSpeedLimit: number;
    readonly dutySteps: number;
    /** Hz */
    readonly loopRate: number;
    /** Share of duty for each share of the reference speed */
    readonly proportionalGain: number;
    /** 1/s */
    readonly integralGain: number;
    /** s */
    readonly startRamp: number;
    /** Throttle, 0 to 1 */
    readonly usableLow: number;
    readonly usableHigh: number;
    readonly learned: {
      /** 0 to 1 */
      readonly throttle: number;
      /** rad/s, or null: use the expected speed */
      readonly motorSpeed: number | null;
      /** As in the record: only ever compared */
      readonly fittedWith: FittedParts | null;
    };
  };
  readonly gears: {
    readonly pinionTeeth: number;
    readonly mainTeeth: number;
    /** m */
    readonly module: number;
    /** Of one mesh, 0 to 1 */
    readonly meshEfficiency: number;
    readonly secondStage: { readonly driverTeeth: number; readonly drivenTeeth: number } | null;
    /** Tail rotor turns per main rotor turn */
    readonly tailRatio: number;
  };
  readonly mainRotor: Rotor & {
    /** From the axis to where the blade has its full chord, m */
    readonly rootCutout: number;
    /** kg, one blade */
    readonly bladeMass: number;
    /** From the axis, m */
    readonly bladeCentre: number;
    /** rad/s, or null: not printed */
    readonly ratedSpeed: number | null;
    readonly bladeSection: Machine["mainRotor"]["bladeSection"];
  };
  readonly tailRotor: Rotor & {
    /** Between the two rotors' axes, m */
    readonly arm: number;
  };
  readonly airframe: {
    /** kg */
    readonly mass: number;
    /** m² */
    readonly dragArea: number;
  };
  readonly place: {
    /** m */
    readonly elevation: number;
    /** K */
    readonly temperature: number;
    /** 0 to 1 */
    readonly humidity: number;
  };
  readonly modes: readonly {
    readonly name: string;
    /** rad/s */
    readonly headSpeed: number;
    /** rad */
    readonly collectiveMin: number;
    readonly collectiveMax: number;
  }[];
}

interface Rotor {
  readonly blades: number;
  /** m, axis to tip */
  readonly radius: number;
  /** m */
  readonly chord: number;
}

const milli = 1e-3;
const percent = 1e-2;
/** One gram square centimetre, kg m². */
const gramCm2 = 1e-7;
const degree = Math.PI / 180;

const rotor = ({ blades, diameterMm, chordMm }: { blades: number; diameterMm: number; chordMm: number }): Rotor => ({
  blades,
  radius: (diameterMm * milli) / 2,
  chord: chordMm * milli,
});

/** A machine record in SI units: V, A, ohm, m, kg, rad/s, rad, K, s, C and shares of one. */
export function partsOf(machine: Machine): Parts {
  const { pack, motor, controller, gears, mainRotor, tailRotor, airframe, place, modes } = machine;
  const { learned } = controller;
  return {
    pack: {
      cells: pack.cells,
      chemistry: pack.chemistry,
      capacity: pack.capacityMah * milliampereHour,
      cellResistance: pack.cellResistanceMilliohm * milli,
      leadResistance: pack.leadResistanceMilliohm * milli,
      charge: pack.chargePercent * percent,
      temperature: pack.temperatureC + zeroCelsius,
    },
    motor: {
      speedConstant: motor.kvRpmPerVolt * rpm,
      resistance: motor.resistanceMilliohm * milli,
      noLoadCurrent: motor.noLoadCurrentA,
      noLoadVoltage: motor.noLoadVoltageV,
      poles: motor.poles,
      ratedSpeed: motor.ratedRpm * rpm,
      rotorInertia: motor.rotorInertiaGcm2 * gramCm2,
      windingTemperature: motor.windingTemperatureC + zeroCelsius,
    },
    controller: {
      resistance: controller.resistanceMilliohm * milli,
      electricalSpeedLimit: controller.electricalRpmLimit * rpm,
      dutySteps: controller.dutySteps,
      loopRate: controller.loopHz,
      proportionalGain: controller.proportionalGain,
      integralGain: controller.integralGain,
      startRamp: controller.startRampSeconds,
      usableLow: controller.usableLowPercent * percent,
      usableHigh: controller.usableHighPercent * percent,
      learned: {
        throttle: learned.throttlePercent * percent,
        motorSpeed: learned.motorRpm === null ? null : learned.motorRpm * rpm,
        fittedWith: learned.fittedWith,
      },
    },
    gears: {
      pinionTeeth: gears.pinionTeeth,
      mainTeeth: gears.mainTeeth,
      module: gears.moduleMm * milli,
      meshEfficiency: gears.meshEfficiency,
      secondStage: gears.secondStage,
      tailRatio: gears.tailRatio,
    },
    mainRotor: {
      ...rotor(mainRotor),
      rootCutout: mainRotor.rootCutoutMm * milli,
      bladeMass: mainRotor.bladeMassG * milli,
      bladeCentre: mainRotor.bladeCentreMm * milli,
      ratedSpeed: mainRotor.ratedRpm === null ? null : mainRotor.ratedRpm * rpm,
      bladeSection: mainRotor.bladeSection,
    },
    tailRotor: { ...rotor(tailRotor), arm: tailRotor.armMm * milli },
    airframe: { mass: airframe.massG * milli, dragArea: airframe.dragAreaM2 },
    place: {
      elevation: place.elevationM,
      temperature: place.temperatureC + zeroCelsius,
      humidity: place.humidityPercent * percent,
    },
    modes: modes.map((mode) => ({
      name: mode.name,
      headSpeed: mode.headRpm * rpm,
      collectiveMin: mode.collectiveMinDeg * degree,
      collectiveMax: mode.collectiveMaxDeg * degree,
    })),
  };
}
