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

  it("takes its 15 s, and a motor that creeps counts as still", () => {
    expect(rehearse({ machine: sample, seconds: 15 }).ok).toBe(true);
    expect(rehearse({ machine: sample, seconds: 14.9 })).toMatchObject({ ok: false, why: "cut-short" });
    const flight = fly(learningRun({ machine: sample }));
    const creeping = { ...flight, trace: { ...flight.trace, motorSpeed: flight.trace.motorSpeed.map(() => 0.9) } };
    expect(learnedBy(creeping, { machine: sample })).toMatchObject({ ok: false, why: "not-turning" });
  });

  it("lasts the soft start and the time that is asked for, the hand restless to the end", () => {
    const order = learningRun({ machine: sample, seconds: 16, swing: 0.1, collective: 0.01 });
    expect(order.duration).toBe(sample.controller.startRamp + 16);
    expect(order.throttle).toEqual([{ from: 0, kind: "duty", duty: 0.5, ramp: sample.controller.startRamp }]);
    const last = order.collective.at(-1)!;
    expect(last.from).toBeGreaterThanOrEqual(order.duration - 1.5);
    expect(order.collective.slice(1, 3).map((one) => one.kind === "hold" && one.collective)).toEqual([0.11, 0.01]);
  });

  it("without blades is the hub alone: no air, no tail, 3 % of the inertia", () => {
    const bare = withoutBlades(sample);
    expect(bare.tail).toBeNull();
    expect(bare.rotor.inertia).toBeCloseTo(0.03 * sample.rotor.inertia, 15);
    expect([bare.rotor.map.thrust(200, 0.2, 0), bare.rotor.map.torque(200, 0.2, 0)]).toEqual([0, 0]);
  });
});
