/** Machines for the tests of the figures: the demo machine with some of its fields changed. */
import { type Figures, figuresOf } from "#figures/figures";
import { defaultMachine, fittedNow, type Machine } from "#machine/machine";
import { withValue } from "#machine/paths";
import { brokenRules } from "#machine/rules";
import { checkAt } from "#machine/validate";

/** A machine with other values at some dot paths. A value that no machine may hold is a slip of the test. */
export function machineWith(changes: Readonly<Record<string, unknown>>, base: Machine = defaultMachine): Machine {
  let machine = base;
  for (const [path, value] of Object.entries(changes)) {
    const checked = checkAt(path, value);
    if (!checked.ok) throw new Error(checked.problem.words);
    machine = withValue(machine, path, value);
  }
  const broken = brokenRules(machine)[0];
  if (broken) throw new Error(broken.words[0]);
  return machine;
}

/** The same machine after it has learned with the parts that are fitted now, and was measured at this motor speed. */
export function learnedAt(motorRpm: number | null, throttlePercent = 50, base: Machine = defaultMachine): Machine {
  const learned = { throttlePercent, motorRpm, fittedWith: fittedNow(base) };
  return { ...base, controller: { ...base.controller, learned } };
}

/** Dry air of 15 °C at the sea: the standard atmosphere's foot. */
export const standardPlace = { "place.elevationM": 0, "place.temperatureC": 15, "place.humidityPercent": 0 };

/** Gears of ten to one, so that published motor speeds become round head speeds. */
export const tenToOne = { "gears.pinionTeeth": 12, "gears.mainTeeth": 120 };

/** A figure that must be there. */
export function number(machine: Machine, ...name: Parameters<Figures["number"]>): number {
  const value = figuresOf(machine).number(...name);
  if (value === null) throw new Error(`${name[0]} has no value`);
  return value;
}
