/** How fast the rotor model is, on its own and beside a plain loop over the same annuli and polar look-ups. */
import { Rotor } from "#model/rotor/bemt";
import { dragAt, liftAt, sectionCoefficients, sections } from "#model/rotor/section";
import { collectiveForThrust } from "#model/rotor/solve";
import { type Line, median } from "./line.ts";

const air = { density: 1.2, viscosity: 1.8e-5, soundSpeed: 340 };
const geometry = {
  blades: 2,
  radius: 0.7,
  rootCutout: 0.1,
  chordRoot: 0.06,
  chordTip: 0.06,
  section: sections["symmetric-12"],
};

/** Microseconds a call, median of many batches after warming up. */
function microseconds(work: (i: number) => number): number {
  const batch = 400;
  let kept = 0;
  const times: number[] = [];
  for (let round = 0; round < 60; round++) {
    const begin = performance.now();
    for (let i = 0; i < batch; i++) kept += work(i);
    times.push(((performance.now() - begin) * 1000) / batch);
  }
  if (!Number.isFinite(kept)) throw new Error("The rotor gave no figure.");
  return median(times.slice(20));
}

/**
 * A hover solve (collective for a thrust at a speed not asked before), and its ratio to a loop that looks lift and drag up
 * once at every annulus, coefficients worked out anew as the solve must.
 */
export function bench(): Line[] {
  const rotor = new Rotor(geometry, air);
  const solve = microseconds((i) => {
    const found = collectiveForThrust(rotor.fly(170 + 0.1 * i, 0), 40 + 0.05 * i);
    return found.ok ? found.collective : Number.NaN;
  });
  const { radius, chord, count, coefficients } = rotor.blade;
  const plain = microseconds((i) => {
    let sum = 0;
    for (let k = 0; k < count; k++) {
      const w = (170 + 0.1 * i) * radius[k]!;
      const at = k * sectionCoefficients;
      geometry.section.coefficients(
        (air.density * w * chord[k]!) / air.viscosity,
        w / air.soundSpeed,
        coefficients,
        at,
      );
      const angle = 0.05 + 1e-4 * k;
      const [s, c] = [Math.sin(angle), Math.cos(angle)];
      sum += w * w * chord[k]! * (liftAt(coefficients, at, s, c) + dragAt(coefficients, at, s, c));
    }
    return sum;
  });
  return [{ name: "hover-solve", value: solve, unit: "us", budget: 40, ratio: solve / plain }];
}
