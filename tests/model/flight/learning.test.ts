import { describe, expect, it } from "vitest";
import { atCharge, type LearningRun, learnedBy, learningRun, withoutBlades } from "#model/flight/learning";
import { tailTorqueOf } from "#model/flight/rotor-map";
import { fly } from "#model/flight/run";
import { copperResistance } from "#model/motor";
import { speedAtDuty } from "#model/steady";
import { sample } from "./sample.ts";

const rehearse = (run: LearningRun) => learnedBy(fly(learningRun(run)), run);
const reference = (run: LearningRun): number => {
  const learned = rehearse(run);
  if (!learned.ok) throw new Error(learned.words);
  return learned.reference;
};

describe("learning run", () => {
  const whole = reference({ machine: sample });

  // The steady chain at half duty and flat pitch, with the pack, the sag and the winding as they are at the end of the run.
  it("stores what the steady chain turns at half duty", () => {
    const { trace } = fly(learningRun({ machine: sample }));
    const { motor, controller, pack, gearRatio, meshEfficiency } = sample;
    const steady = speedAtDuty(
      {
        openVoltage: pack.openVoltage(trace.charge.at(-1)!) - trace.sag.at(-1)!,
        packResistance: pack.resistance,
        torqueConstant: motor.constant,
        motorResistance: copperResistance(
          motor.resistance,
          trace.windingTemperature.at(-1)!,
          motor.resistanceTemperature,
        ),
        controllerResistance: controller.resistance,
        noLoadCurrent: motor.noLoadCurrent,
        gearRatio,
        meshEfficiency,
      },
      0.5,
      (speed) => {
        const main = sample.rotor.map.torque(speed, 0, 0);
        return main + sample.tail!(main, speed);
      },
    );
    expect(tailTorqueOf).toBeTypeOf("function");
    if (!steady.ok) throw new Error(steady.why);
    expect((steady.speed * gearRatio) / 0.5 / whole).toBeCloseTo(1, 3);
  });

  it("stores less with a pack that is not full, and with pitch", () => {
    expect(reference({ machine: atCharge(sample, 0.6) }) / whole).toBeLessThan(0.95);
    expect(reference({ machine: sample, collective: 0.1 }) / whole).toBeLessThan(0.995);
  });

  it("stores as much, within a ten thousandth, when its clock is as fine as in any flight", () => {
    const run = { machine: sample, swing: 0.1 };
    const { longestTick: _, stepShare: __, ...order } = learningRun(run);
    const fine = learnedBy(fly({ ...order, machine: sample }), run);
    expect(fine.ok && fine.reference / reference(run)).toBeCloseTo(1, 4);
  });

  it("stores less when the hand is restless, and the pitch is back where it began after three seconds", () => {
    expect(reference({ machine: sample, swing: 0.1 }) / whole).toBeLessThan(0.9985);
    const { trace } = fly(learningRun({ machine: sample, swing: 0.1 }));
    const pitchAt = (time: number) => trace.collective[trace.time.findIndex((t) => t >= time - 1e-9)];
    expect(pitchAt(1.5)).toBeCloseTo(0.1, 2);
    expect(pitchAt(3)).toBeCloseTo(0, 2);
  });

  it("stores more without blades", () => {
    expect(reference({ machine: withoutBlades(sample) }) / whole).toBeGreaterThan(1.005);
  });

  it("says by what share every mode would change", () => {
    const learned = rehearse({ machine: atCharge(sample, 0.6) });
    expect(learned.ok && learned.change).toBeCloseTo(
      reference({ machine: atCharge(sample, 0.6) }) / sample.controller.reference - 1,
      9,
    );
  });

  it("stores nothing when it was cut short, when nothing turned, and when the pack gave out", () => {
    expect(rehearse({ machine: sample, seconds: 8 })).toMatchObject({ ok: false, why: "cut-short" });
    expect(rehearse({ machine: sample, throttle: 0.0001 })).toMatchObject({ ok: false, why: "not-turning" });
    expect(rehearse({ machine: atCharge(sample, 0.001) })).toMatchObject({ ok: false, why: "not-flown" });
  });
});
