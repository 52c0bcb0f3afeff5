import { describe, expect, it } from "vitest";
import { learnedBy, learningRun } from "#model/flight/learning";
import { fly } from "#model/flight/run";
import { autorotation, drawn, hover, pumps, punch, spoolUp, suddenUnload, wholePack } from "#model/flight/scenarios";
import { sample, withParts } from "./sample.ts";

const rpm = Math.PI / 30;
const mode = { machine: sample, setSpeed: 2100 * rpm };
const fast = { machine: sample, setSpeed: 2650 * rpm };
const full = 0.19;

describe("scenarios", () => {
  it("spool up evenly to the set speed and hold it", () => {
    const { trace, end } = fly(spoolUp(mode));
    expect(end.why).toBe("flown");
    const half = trace.time.findIndex(
      (t) => t >= (0.5 * sample.controller.startRamp * mode.setSpeed * 9) / sample.controller.reference,
    );
    expect(trace.rotorSpeed[half]! / (mode.setSpeed / 2)).toBeCloseTo(1, 1);
    expect(trace.rotorSpeed.at(-1)! / mode.setSpeed).toBeCloseTo(1, 3);
  });

  it("hover steadily", () => {
    const { trace, spans } = fly(hover(mode, 5));
    expect(spans).toEqual([]);
    expect(Math.max(...trace.rotorSpeed.map((s) => Math.abs(s / mode.setSpeed - 1)))).toBeLessThan(1e-3);
  });

  it("hold a punch where there is room, and lose it where there is none", () => {
    const held = fly(punch(mode, { collective: full }));
    expect(held.spans.filter((s) => s.kind === "speed-low")).toEqual([]);
    const lost = fly(punch({ ...fast, setSpeed: 2900 * rpm }, { collective: full }));
    const low = lost.spans.find((s) => s.kind === "speed-low")!;
    const limit = lost.spans.find((s) => s.kind === "duty-at-limit")!;
    expect(limit.from).toBeLessThan(low.at);
    expect(low.value).toBeLessThan(2850 * rpm);
    expect(Math.max(...lost.trace.climb)).toBeGreaterThan(5);
  });

  it("pump the collective as often as asked", () => {
    const { trace } = fly(pumps(mode, { highest: full, lowest: -0.1, count: 4 }));
    let turns = 0;
    for (let i = 1; i < trace.time.length; i++)
      if (trace.collective[i - 1]! <= 0.05 && trace.collective[i]! > 0.05) turns++;
    expect(turns).toBeGreaterThanOrEqual(4);
    expect(Math.max(...trace.collective)).toBeCloseTo(full, 3);
    expect(Math.min(...trace.collective)).toBeCloseTo(-0.1, 3);
  });

  it("overspeed after a sudden unload", () => {
    const high = fly(suddenUnload(mode, full)).spans.find((s) => s.kind === "speed-high")!;
    expect(high.value / mode.setSpeed).toBeGreaterThan(1.02);
    expect(high.from).toBeGreaterThan(2.4);
  });

  it("autorotate down to a landing that the flare softens, or bail out and fly on", () => {
    const hard = fly(autorotation(mode));
    const soft = fly(autorotation(mode, { flare: hard.end.time - 0.6 }));
    expect([hard.end.why, soft.end.why]).toEqual(["ground", "ground"]);
    const speedAtGround = (f: typeof hard) => ("value" in f.end ? -Number(f.end.value) : 0);
    expect(speedAtGround(soft)).toBeLessThan(0.6 * speedAtGround(hard));
    const out = fly(autorotation(mode, { bailOut: 2.5 }));
    expect(out.end.why).toBe("flown");
    const back = sample.controller.bailOutRamp + 2.5;
    const at = out.trace.time.findIndex((t) => t >= back + 1);
    expect(out.trace.rotorSpeed[at]! / mode.setSpeed).toBeCloseTo(1, 2);
  });

  it("fly a pack to its end, whose ends come together: charge by count", () => {
    const machine = withParts({ pack: { capacity: 1200 } });
    const order = wholePack({ ...mode, machine }, [
      { collective: 0.08, seconds: 3 },
      { collective: full, seconds: 1 },
    ]);
    const { trace, end, tick } = fly(order);
    expect(end.why).toBe("pack-empty");
    expect(tick).toBeGreaterThan(0.003);
    expect(trace.charge.at(-1)!).toBeLessThan(1e-3);
    expect(trace.time.at(-1)).toBeCloseTo(end.time, 6);
  });

  it("fly a drawn collective", () => {
    const { trace } = fly(drawn(mode, [0, 1, 1.2, 2], [0.08, 0.08, 0.16, 0.16], 2));
    const at = trace.time.findIndex((t) => t >= 1.1 - 1e-9);
    expect(trace.collective[at]).toBeCloseTo(0.12, 3);
  });

  it("learn what the machine then does", () => {
    const run = { machine: sample };
    const learned = learnedBy(fly(learningRun(run)), run);
    expect(learned.ok).toBe(true);
  });
});
