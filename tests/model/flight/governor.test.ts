import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type AntiWindup, createGovernor, ERROR, INTEGRAL, INTERVAL, OUTPUT } from "#model/flight/governor";

const free = { lowest: -1e9, highest: 1e9, steps: 0, backGain: 10, antiWindup: "none" as AntiWindup };

/** A unit step into a PI loop around a plant; the plant takes a value and an input and gives its rate. */
function step(
  settings: Parameters<typeof createGovernor>[0],
  interval: number,
  duration: number,
): { overshoot: number; peakTime: number; settle: (band: number) => number; rise: number } {
  const governor = createGovernor(settings);
  governor.port[INTERVAL] = interval;
  let y = 0;
  let peak = 0;
  let peakTime = 0;
  const outside: [number, number][] = [];
  let at10 = 0;
  let at90 = 0;
  const n = Math.round(duration / interval);
  for (let k = 0; k < n; k++) {
    governor.port[ERROR] = 1 - y;
    governor.correct();
    y += interval * governor.port[OUTPUT]!;
    const time = (k + 1) * interval;
    if (y > peak) [peak, peakTime] = [y, time];
    if (at10 === 0 && y >= 0.1) at10 = time;
    if (at90 === 0 && y >= 0.9) at90 = time;
    if (k % 10 === 0) outside.push([time, Math.abs(y - 1)]);
  }
  const settle = (band: number) => outside.findLast(([, miss]) => miss > band)?.[0] ?? 0;
  return { overshoot: 100 * (peak - 1), peakTime, settle, rise: at90 - at10 };
}

describe("governor", () => {
  // Franklin, Powell, Emami-Naeini, Feedback Control of Dynamic Systems, ch. 9: kp 2, ki 4, ka 10, |u| <= 1; the plant 1/s
  // from memory; figures by integration with a relative tolerance of 1e-10, to 0.01 % and 0.002 s.
  const limited = { proportionalGain: 2, integralGain: 4, backGain: 10, lowest: -1, highest: 1, steps: 0 };
  const small = 2e-5;

  it("without anti-windup overshoots by 52.86 %", () => {
    const { overshoot, peakTime } = step({ ...limited, antiWindup: "none" }, small, 4);
    expect(Math.abs(overshoot - 52.86442803)).toBeLessThan(0.01);
    expect(Math.abs(peakTime - 1.719594986)).toBeLessThan(0.002);
  });

  it("with back-calculation by 14.94 %", () => {
    const { overshoot, peakTime } = step({ ...limited, antiWindup: "back-calculation" }, small, 4);
    expect(Math.abs(overshoot - 14.94108338)).toBeLessThan(0.01);
    expect(Math.abs(peakTime - 1.708163804)).toBeLessThan(0.002);
  });

  it("without limits by 29.84 %", () => {
    const { overshoot } = step({ ...free, proportionalGain: 2, integralGain: 4 }, small, 4);
    expect(Math.abs(overshoot - 29.84360592)).toBeLessThan(0.01);
  });

  it("with clamping less than without anti-windup, and its integral stays while it is at the limit", () => {
    const clamped = step({ ...limited, antiWindup: "clamping" }, small, 4);
    expect(clamped.overshoot).toBeLessThan(step({ ...limited, antiWindup: "none" }, small, 4).overshoot / 2);
    const governor = createGovernor({ ...limited, antiWindup: "clamping" });
    governor.port[INTERVAL] = 0.1;
    governor.port[ERROR] = 1;
    for (let i = 0; i < 10; i++) governor.correct();
    expect(governor.port[INTEGRAL]).toBe(0);
    expect(governor.port[OUTPUT]).toBe(1);
    // An error that leads back in counts at once.
    governor.port[ERROR] = -0.1;
    governor.correct();
    expect(governor.port[INTEGRAL]).toBeCloseTo(-0.04, 12);
  });

  it("clamping lets an integral that is too large come back at once, and holds one that would go further", () => {
    const governor = createGovernor({ ...limited, antiWindup: "clamping" });
    governor.port[INTERVAL] = 0.1;
    const corrected = (error: number) => {
      governor.preset(1.4);
      governor.port[ERROR] = error;
      governor.correct();
      return governor.port[INTEGRAL]!;
    };
    // 2 x (-0.1) + 1.4 is still above the limit, but the error leads back: 1.4 - 4 x 0.1 x 0.1.
    expect(corrected(-0.1)).toBeCloseTo(1.36, 12);
    expect(corrected(0.1)).toBe(1.4);
  });

  it("rounds its output to its steps", () => {
    const governor = createGovernor({ ...free, proportionalGain: 1, integralGain: 0, steps: 8 });
    governor.port[ERROR] = 0.33;
    governor.correct();
    expect(governor.port[OUTPUT]).toBe(0.375);
  });

  it("begins from the output that was set", () => {
    const governor = createGovernor({ ...limited, antiWindup: "none" });
    governor.preset(0.4);
    governor.port[ERROR] = 0;
    governor.correct();
    expect(governor.port[OUTPUT]).toBe(0.4);
  });

  it("never leaves its limits, whatever the error", () => {
    const kinds = fc.constantFrom<AntiWindup>("none", "clamping", "back-calculation");
    fc.assert(
      fc.property(
        kinds,
        fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { maxLength: 50 }),
        (antiWindup, errors) => {
          const governor = createGovernor({ ...limited, antiWindup, steps: 1024 });
          governor.port[INTERVAL] = 0.001;
          for (const error of errors) {
            governor.port[ERROR] = error;
            governor.correct();
            expect(Math.abs(governor.port[OUTPUT]!)).toBeLessThanOrEqual(1);
          }
        },
      ),
    );
  });
});
