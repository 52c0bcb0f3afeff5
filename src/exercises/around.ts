/** What exercises take from the reader's own machine to draw numbers near it. Trade units, as its owner reads them. */
import type { Machine } from "#machine/machine";
import { partsOf } from "#machine/parts";
import { rotorEnergy } from "#model/blades";
import { gravity } from "#model/constants";
import { ratioOf } from "#model/gears";
import { discArea, idealHoverPower } from "#model/momentum";
import { openCellVoltage } from "#model/ocv";
import type { Amount } from "./amount.ts";
import type { Hand } from "./hand.ts";

/** The fastest flight mode's head speed, rpm. */
export const topRpm = ({ modes }: Machine): number => Math.max(...modes.map((mode) => mode.headRpm));

/** Motor turns for one turn of the rotor. */
export const ratioNow = ({ gears }: Machine): number => ratioOf(gears);

/** A gear ratio near the machine's, at least 2: closer to 1, right and upside down are hard to tell apart. */
export const drawRatio = (hand: Hand, machine: Machine): number =>
  Math.max(2, hand.near(ratioNow(machine), { spread: 0.1 }));

/** Resting voltage of a cell between half full and nearly full, V to two decimals. */
export function drawCellVoltage(hand: Hand, { pack }: Machine): number {
  return Math.round(100 * (openCellVoltage(pack.chemistry, hand.whole(50, 95) / 100) ?? 3.8)) / 100;
}

/** A current that such a pack gives in a brisk flight, A: about ten times its capacity in an hour. Common practice, no source. */
export const drawCurrent = (hand: Hand, { pack }: Machine, rate = 10): number =>
  hand.near((rate * pack.capacityMah) / 1000, { spread: 0.3 });

/** Power that the machine needs at least to hover, W, in air of 1.2 kg/m³. */
export function leastHoverPower(machine: Machine): number {
  const { mainRotor, airframe } = partsOf(machine);
  return idealHoverPower({ thrust: airframe.mass * gravity, density: 1.2, area: discArea(mainRotor) });
}

/** Moment of inertia of one blade, kg m², as if its mass were spread evenly from the axis to the tip. */
const bladeInertiaNear = ({ mainRotor }: Machine): number =>
  ((mainRotor.bladeMassG / 1000) * (mainRotor.diameterMm / 2000) ** 2) / 3;

/** Energy that the blades store about at a speed, J. */
export const storedNear = (machine: Machine, speed: Amount): number =>
  rotorEnergy({ blades: machine.mainRotor.blades, inertia: bladeInertiaNear(machine), speed: speed.si });

/** Whether a percentage lies so near the middle between two whole ones that a reader may round it either way. */
export const nearlyHalf = (percent: number): boolean => Math.abs(percent - Math.floor(percent) - 0.5) < 0.04;
