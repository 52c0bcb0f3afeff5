import { describe, expect, it } from "vitest";
import { createGovernor, ERROR, INTERVAL, OUTPUT } from "#model/flight/governor";
import { createStepper } from "#model/flight/integrate";

/**
 * Step responses of textbook systems, integrated by the simulator's own step: a numerator b and denominator a in
 * falling powers, b0 s^(n-1) + ... over s^n + a0 s^(n-1) + ..., in controllable form.
 */
function respond(b: readonly number[], a: readonly number[], h: number, duration: number): Float64Array {
  const n = a.length;
  const stepper = createStepper(n, n, (x, dx) => {
    for (let i = 0; i < n - 1; i++) dx[i] = x[i + 1]!;
    let last = 1;
    for (let i = 0; i < n; i++) last -= a[n - 1 - i]! * x[i]!;
    dx[n - 1] = last;
  });
  stepper.length[0] = h;
  const x = new Float64Array(n);
  const y = new Float64Array(Math.round(duration / h) + 1);
  for (let k = 0; k < y.length; k++) {
    y[k] = b.reduce((sum, value, i) => sum + value * x[b.length - 1 - i]!, 0);
    stepper.begin(x);
    stepper.finish(x);
  }
  return y;
}

const peakOf = (y: Float64Array): number => y.reduce((best, value, i) => (value > y[best]! ? i : best), 0);
const settles = (y: Float64Array, h: number, final: number, band: number): number =>
  h * (y.findLastIndex((value) => Math.abs(value - final) > band * final) + 1);
const crosses = (y: Float64Array, h: number, level: number): number => h * y.findIndex((value) => value >= level);

describe("linear step responses", () => {
  const wn = 5;
  const h = 1e-4;
  const second = (zeta: number) => respond([wn * wn], [2 * zeta * wn, wn * wn], h, 6);

  // Closed form exp(-pi zeta / sqrt(1 - zeta^2)); the case zeta 0.6, wn 5 is Ogata's example 5-1 (from memory).
  it.each([
    [0.2, 52.66205993],
    [0.5, 16.30335348],
    [0.6, 9.478022484],
    [Math.SQRT1_2, 4.321391826],
  ])("damping %f overshoots by %f %%", (zeta, percent) => {
    const y = second(zeta);
    expect(Math.abs(100 * (y[peakOf(y)]! - 1) - percent)).toBeLessThan(0.01);
  });

  it("damping 0.6 peaks at 0.785 s and is inside 2 % from 1.1886 s on", () => {
    const y = second(0.6);
    expect(Math.abs(h * peakOf(y) - 0.7853981634)).toBeLessThan(5e-4);
    expect(Math.abs(settles(y, h, 1, 0.02) - 1.1886)).toBeLessThan(5e-4);
  });

  // The governor itself, integral only, around a motor of the first order: the same second-order system.
  it.each([
    [0.2, 52.66205993],
    [0.5, 16.30335348],
    [0.6, 9.478022484],
  ])("an integral governor around a first-order motor, damping %f, overshoots by %f %%", (zeta, percent) => {
    const interval = 2e-5;
    const constant = 1 / (2 * zeta * wn);
    const governor = createGovernor({
      proportionalGain: 0,
      integralGain: wn * wn * constant,
      antiWindup: "none",
      backGain: 0,
      lowest: -1e9,
      highest: 1e9,
      steps: 0,
    });
    governor.port[INTERVAL] = interval;
    const stepper = createStepper(1, 1, (y, dy) => {
      dy[0] = (governor.port[OUTPUT]! - y[0]!) / constant;
    });
    stepper.length[0] = interval;
    const y = new Float64Array(1);
    let top = 0;
    for (let k = 0; k * interval < 2; k++) {
      governor.port[ERROR] = 1 - y[0]!;
      governor.correct();
      stepper.begin(y);
      stepper.finish(y);
      top = Math.max(top, y[0]!);
    }
    expect(Math.abs(100 * (top - 1) - percent)).toBeLessThan(0.02);
  });

  // From an overshoot of 15 % the damping ratio 0.5169: control course notes.
  it("damping 0.5169 overshoots by 15 %", () => {
    const y = second(0.5169308662);
    expect(Math.abs(100 * (y[peakOf(y)]! - 1) - 15)).toBeLessThan(0.005);
  });

  // A published example of a step-response tool; its printed peak comes from a coarse grid: exact 26.5435 % at 0.6080 s.
  it("a third-order system rises, peaks and settles as published", () => {
    const y = respond([8, 18, 32], [6, 14, 24], h, 10);
    const final = 32 / 24;
    const top = peakOf(y);
    expect(Math.abs(crosses(y, h, 0.9 * final) - crosses(y, h, 0.1 * final) - 0.2087)).toBeLessThan(5e-4);
    expect(Math.abs(settles(y, h, final, 0.02) - 3.4972)).toBeLessThan(5e-4);
    expect(Math.abs(settles(y, h, final, 0.005) - 4.8896)).toBeLessThan(5e-4);
    expect(Math.abs(y[top]! - 1.687246202)).toBeLessThan(1e-6);
    expect(Math.abs(100 * (y[top]! / final - 1) - 26.54346514)).toBeLessThan(1e-4);
    expect(Math.abs(h * top - 0.60795)).toBeLessThan(2e-4);
  });

  // Control Tutorials (University of Michigan), motor speed with armature inductance; from memory, recomputed to three figures.
  it("a motor with armature inductance settles as published", () => {
    const [j, damping, k, r, l] = [0.01, 0.1, 0.01, 1, 0.5];
    const a = [(j * r + l * damping) / (j * l), (damping * r + k * k) / (j * l)];
    const y = respond([k / (j * l)], a, h, 6);
    const final = 0.0999000999;
    expect(Math.abs(y.at(-1)! - final)).toBeLessThan(5e-5);
    expect(Math.abs(crosses(y, h, 0.9 * final) - crosses(y, h, 0.1 * final) - 1.14)).toBeLessThan(0.006);
    expect(Math.abs(settles(y, h, final, 0.02) - 2.07)).toBeLessThan(0.006);
  });
});
