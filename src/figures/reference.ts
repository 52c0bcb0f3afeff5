/** The reference of a machine's controller: measured, to be expected, or learned with other parts. */
import { fittedNow, type Machine, type FittedParts as RecordedParts } from "#machine/machine";
import { type GearTrain, ratioOf } from "#model/gears";
import { differingParts, type FittedParts, learnedReference } from "#model/reference";
import { learningSpeed } from "#model/steady";
import { type Rig, rigOf } from "./rig.ts";

export type ReferenceState = "fresh" | "stale" | "expected";

export interface Reference {
  readonly state: ReferenceState;
  /** It was measured at the controller, or else it is what the model expects. */
  readonly measured: boolean;
  /** Motor speed that full throttle asks for, rad/s; null when the motor doesn't turn at the learning throttle. */
  readonly motorSpeed: number | null;
  /** Head speed to expect while it learns with the parts now fitted, rad/s; null as above. */
  readonly learning: number | null;
  /** Gear ratio while it learned: that of now where nothing else is known. */
  readonly ratioThen: number;
  /** Which parts differ from those fitted then, as named in the record. */
  readonly differing: readonly (keyof RecordedParts)[];
}

/** The gear train while it learned; a second stage that nobody knows of is taken to be that of now. */
const gearsThen = ({ secondStage }: Machine["gears"], then: RecordedParts): GearTrain => ({
  pinionTeeth: then.pinionTeeth,
  mainTeeth: then.mainTeeth,
  secondStage: then.secondStage === undefined ? secondStage : then.secondStage,
});

/** The machine as it was when it learned: the parts fitted then in place of today's. */
function machineThen(machine: Machine, then: RecordedParts): Machine {
  return {
    ...machine,
    pack: { ...machine.pack, cells: then.cells, chemistry: then.chemistry },
    motor: { ...machine.motor, kvRpmPerVolt: then.kvRpmPerVolt },
    gears: { ...machine.gears, ...gearsThen(machine.gears, then) },
    mainRotor: {
      ...machine.mainRotor,
      blades: then.bladeCount,
      diameterMm: then.diameterMm,
      chordMm: then.chordMm,
    },
  };
}

const comparable = (parts: RecordedParts): FittedParts => ({
  cells: parts.cells,
  chemistry: parts.chemistry,
  speedConstant: parts.kvRpmPerVolt,
  pinionTeeth: parts.pinionTeeth,
  mainTeeth: parts.mainTeeth,
  bladeCount: parts.bladeCount,
  diameter: parts.diameterMm,
  chord: parts.chordMm,
  secondStage: parts.secondStage,
});

const recordedName: Readonly<Record<keyof FittedParts, keyof RecordedParts>> = {
  cells: "cells",
  chemistry: "chemistry",
  speedConstant: "kvRpmPerVolt",
  pinionTeeth: "pinionTeeth",
  mainTeeth: "mainTeeth",
  bladeCount: "bladeCount",
  diameter: "diameterMm",
  chord: "chordMm",
  secondStage: "secondStage",
};

/** Head speed of the learning run, rad/s: open loop with a full pack and flat pitch, whatever charge the pack has now. */
function expected(rig: Rig): number | null {
  const found = learningSpeed(rig.trainAt(1), rig.flat, rig.parts.controller.learned.throttle);
  return found.ok ? found.speed : null;
}

/** The reference of a rig. Units: rad/s. Errors: null speeds where the motor doesn't turn. Source: common practice. */
export function referenceOf(rig: Rig): Reference {
  const { throttle, motorSpeed: measured, fittedWith } = rig.parts.controller.learned;
  const learning = expected(rig);
  const differing = fittedWith
    ? differingParts(comparable(fittedNow(rig.machine)), comparable(fittedWith)).map(
        (key): keyof RecordedParts => recordedName[key],
      )
    : [];
  const stale = fittedWith !== null && differing.length > 0;
  const ratioThen = stale ? ratioOf(gearsThen(rig.machine.gears, fittedWith)) : rig.ratio;
  // Nothing measured: what the controller stored is what those parts would have given.
  const then = stale && measured === null ? expected(rigOf(machineThen(rig.machine, fittedWith))) : learning;
  const held = measured ?? (then === null ? null : then * ratioThen);
  return {
    state: stale ? "stale" : measured === null ? "expected" : "fresh",
    measured: measured !== null,
    motorSpeed: held === null ? null : learnedReference({ motorSpeed: held, throttle }),
    learning,
    ratioThen,
    differing,
  };
}
