/** How long all figures of a machine take, with as many flight modes as it can have, and its operating points. */
import { steadyLoads } from "#figures/asked";
import { bandOf } from "#figures/bands";
import { everyQuantity, figuresOf } from "#figures/figures";
import { operatingOf } from "#figures/operating";
import { clubTrainer } from "#machine/demos";
import type { Machine } from "#machine/machine";
import { type Line, median } from "./line.ts";

/** A machine that no figure is known of yet. */
function another(i: number): Machine {
  const modes = Array.from({ length: 6 }, (_, k) => ({
    ...clubTrainer.modes[0]!,
    name: `mode ${k}`,
    headRpm: 1600 + 100 * k,
  }));
  return { ...clubTrainer, modes, pack: { ...clubTrainer.pack, chargePercent: 100 - (i % 50) } };
}

export function bench(): Line[] {
  const times = Array.from({ length: 300 }, (_, i) => {
    const machine = another(i);
    const start = performance.now();
    const figures = figuresOf(machine);
    for (const { name, mode } of everyQuantity(figures)) figures.value(name, mode ?? 0);
    return performance.now() - start;
  });
  // The first hundred warm the machine up.
  return [
    { name: "figures-of-six-modes", value: median(times.slice(100)), unit: "ms", budget: 4 },
    { name: "bands-of-six-modes", value: median(bands().slice(10)), unit: "ms", budget: 40 },
    { name: "five-operating-points", value: median(points().slice(100)), unit: "ms", budget: 4 },
  ];
}

/** The bands of all figures, once these are known: of a machine with a rotor that was never asked for. */
const bands = (): number[] =>
  Array.from({ length: 40 }, (_, i) => {
    const machine = another(i);
    const figures = figuresOf({ ...machine, mainRotor: { ...machine.mainRotor, diameterMm: 940 + i } });
    const all = everyQuantity(figures);
    for (const { name, mode } of all) figures.value(name, mode ?? 0);
    const start = performance.now();
    for (const { name, mode } of all) bandOf(figures, name, mode ?? 0);
    return performance.now() - start;
  });

/** All five loads of one mode, each time of a machine with another mass, so that no rotor is remembered. */
const points = (): number[] =>
  Array.from({ length: 300 }, (_, i) => {
    const { rig } = figuresOf({ ...clubTrainer, airframe: { ...clubTrainer.airframe, massG: 1900 + i } });
    const start = performance.now();
    for (const load of steadyLoads) operatingOf(rig, load, 0);
    return performance.now() - start;
  });
