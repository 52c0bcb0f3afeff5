/** How long all figures of a machine take, with as many flight modes as it can have, and its operating points. */
import { steadyLoads } from "#figures/asked";
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
    { name: "five-operating-points", value: median(points().slice(100)), unit: "ms", budget: 4 },
  ];
}

/** All five loads of one mode, each time of a machine with another mass, so that no rotor is remembered. */
const points = (): number[] =>
  Array.from({ length: 300 }, (_, i) => {
    const { rig } = figuresOf({ ...clubTrainer, airframe: { ...clubTrainer.airframe, massG: 1900 + i } });
    const start = performance.now();
    for (const load of steadyLoads) operatingOf(rig, load, 0);
    return performance.now() - start;
  });
