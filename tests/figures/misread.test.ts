import { describe, expect, it } from "vitest";
import { figuresOf } from "#figures/figures";
import { chiSquared95, type Explained, explain, type Reading } from "#figures/misread";
import { canShow } from "#figures/misread-causes";
import { demos } from "#machine/demos";
import type { Machine } from "#machine/machine";
import { withValue } from "#machine/paths";
import { rpm } from "#model/constants";
import { dutyAsked } from "#model/powertrain";
import { bracketedRoot } from "#model/root";
import { learnedAt, machineWith, number } from "./machines.ts";

/** The demo machine with a reference that was measured, so that nothing of it is left open. */
const fresh = learnedAt(13_950);
const asked = (machine: Machine, mode: number) => machine.modes[mode]?.headRpm ?? 0;
const throttle = (machine: Machine, mode: number) => number(machine, "throttle", mode) / 100;

/** Small errors of reading, in standard uncertainties, so that nothing fits by being exact. */
const errors = [0.6, -0.7, 0.4];

interface Plan extends Partial<Omit<Reading, "rows">> {
  readonly machine?: Machine;
}

/** A reading of all modes that a rule of the test's own makes of them. */
function read(rule: (mode: number) => number, plan: Plan = {}): Explained[] {
  const { machine = fresh, instrument = "optical", load = "hover", sure = 0.004 } = plan;
  const rows = machine.modes.map((_, mode) => ({ mode, measured: rule(mode) * (1 + sure * (errors[mode] ?? 0)) }));
  return explain(figuresOf(machine), { instrument, load, sure, rows });
}
const first = (found: readonly Explained[]) => ({ key: found[0]?.key, sizes: found[0]?.sizes, fits: found[0]?.fits });
const times = (ratio: number) => (mode: number) => asked(fresh, mode) * ratio;

describe("a planted fault is found first", () => {
  it("nothing wrong", () => {
    expect(first(read(times(1)))).toMatchObject({ key: "nothing", fits: true });
  });

  it("a display told 14 magnets where there are 10: it shows 10/14 (f = n p / 120)", () => {
    const found = read(times(10 / 14), { instrument: "display" });
    expect(first(found)).toEqual({ key: "poles", sizes: { told: 14, poles: 10 }, fits: true });
  });

  it("a display told pairs for poles shows twice the speed", () => {
    const found = read(times(2), { instrument: "display" });
    expect(first(found)).toMatchObject({ key: "poles", sizes: { told: 5 } });
  });

  it("a pinion of 14 teeth where 13 were entered: the rotor turns 14/13 as fast", () => {
    expect(first(read(times(14 / 13)))).toEqual({ key: "teeth", sizes: { pinion: 14, main: 120 }, fits: true });
  });

  it("a main gear of 118 teeth where 120 were entered, with a good tachometer", () => {
    const found = read(times(120 / 118), { sure: 0.001 });
    expect(first(found)).toEqual({ key: "teeth", sizes: { pinion: 13, main: 118 }, fits: true });
  });

  it("the same teeth told to a display, whose rotor is right", () => {
    const found = read(times(14 / 13), { instrument: "display" });
    expect(first(found)).toMatchObject({ key: "display-teeth", sizes: { pinion: 14 } });
  });

  it("a tachometer set to three blades in front of two: two thirds", () => {
    expect(first(read(times(2 / 3)))).toEqual({ key: "blades", sizes: { told: 3, blades: 2 }, fits: true });
  });

  it("a lamp on mains of 50 or 60 Hz: two blades, 100 or 120 flashes a second, 3,000 or 3,600 rpm in every mode", () => {
    // Lamps flicker at twice the mains' frequency: IEEE Std 1789-2015 (from memory).
    for (const mains of [50, 60]) {
      expect(first(read(() => (2 * mains * 60) / 2))).toMatchObject({ key: "flicker", sizes: { mains }, fits: true });
    }
  });

  it("learned with the pack down to a fifth", () => {
    const [full, tired] = [100, 20].map((charge) =>
      number(machineWith({ "pack.chargePercent": charge }), "pack-open-voltage"),
    );
    const found = read(times((tired ?? 0) / (full ?? 1)), { machine: machineWith({}) });
    expect(first(found)).toMatchObject({ key: "pack-then", sizes: { charge: 20 } });
  });

  it("learned with so much pitch that the blades carried the machine", () => {
    // Their hover's torque at the learning run's speed brings the motor to where half the duty holds just that.
    const machine = machineWith({});
    const { rig } = figuresOf(machine);
    const flat = number(machine, "learning-head-speed") * rpm;
    const full = rig.trainAt(1);
    const lacks = (speed: number) => (dutyAsked(full, speed, rig.load("hover", 0)(speed) ?? 0) ?? 1) - 0.5;
    const loaded = bracketedRoot(lacks, 0.8 * flat, flat, 1e-9);
    const found = read(times((loaded ?? 0) / flat), { machine, sure: 0.002 }).find(({ key }) => key === "pitch-then");
    expect(found).toMatchObject({ fits: true, open: expect.closeTo(0, 2) });
    expect(found?.reads[0]).toBeCloseTo((asked(machine, 0) * (loaded ?? 0)) / flat, -1);
  });

  it("a mode that can't be held: only the fast one falls short", () => {
    const machine = learnedAt(13_950, 50, machineWith({ "pack.chargePercent": 20, "motor.kvRpmPerVolt": 1060 }));
    const ceiling = (mode: number) => number(machine, "ceiling-full-pitch", mode);
    expect(ceiling(2)).toBeLessThan(0.97 * asked(machine, 2));
    const found = read((mode) => Math.min(asked(machine, mode), ceiling(mode)), { machine, load: "full-pitch" });
    expect(first(found)).toMatchObject({ key: "ceiling", sizes: { charge: 20 }, fits: true });
  });

  it("the upper end of the travel a fourteenth too far: all modes by one share that is no ratio of teeth", () => {
    expect(first(read(times(1.049), { sure: 0.002 }))).toMatchObject({ key: "end-point", fits: true });
  });

  it("the lower end of the travel too high: slow modes are off by more", () => {
    const rule = (mode: number) =>
      (asked(fresh, mode) * (1 - 0.92 * (1 - throttle(fresh, mode)))) / throttle(fresh, mode);
    const found = read(rule);
    expect(first(found)).toMatchObject({ key: "low-end", fits: true });
    expect(found[0]?.open).toBeCloseTo(0.08, 2);
  });

  it("a trim of two per cent of the throttle: all modes off by the same rpm", () => {
    const reference = number(fresh, "learned-head-speed");
    const found = read((mode) => asked(fresh, mode) + 0.02 * reference, { sure: 0.002 });
    expect(first(found)).toMatchObject({ key: "offset", fits: true });
    expect(found[0]?.open).toBeCloseTo(0.02, 3);
  });

  it("whole per cents of throttle, told by a very good instrument", () => {
    const found = read((mode) => number(fresh, "head-speed-entered", mode), { sure: 0.0004 });
    expect(first(found)).toMatchObject({ key: "rounding", fits: true });
  });

  it("throttle worked out as a share of the fastest mode", () => {
    const share = number(fresh, "learned-head-speed") / asked(fresh, 2);
    const found = read((mode) => Math.min(asked(fresh, mode) * share, number(fresh, "ceiling-hover", mode)));
    expect(first(found)).toMatchObject({ key: "wrong-whole", fits: true });
  });

  it("a Kv that isn't as printed, where nothing was measured yet", () => {
    const machine = machineWith({});
    const found = read((mode) => asked(machine, mode) * 1.03, { machine, sure: 0.002 });
    expect(first(found)).toMatchObject({ key: "reference", fits: true });
    expect(found[0]?.open).toBeCloseTo(0.03, 3);
  });
});

describe("what was learned", () => {
  const low = (machine: Machine) => {
    const rows = machine.modes.map((_, mode) => ({ mode, measured: 0.955 * asked(machine, mode) }));
    return explain(figuresOf(machine), { instrument: "optical", load: "hover", sure: 0.01, rows });
  };
  const ofTheRun = ["reference", "pack-then", "pitch-then"];

  it("is to blame as long as it is only expected", () => {
    const keys = low(machineWith({})).map(({ key }) => key);
    expect(ofTheRun.filter((key) => keys.includes(key as never))).toEqual(ofTheRun);
  });

  it("is what it is once it was measured: no pack and no pitch of the learning run explains a reading then", () => {
    const { fittedWith } = learnedAt(13_500).controller.learned;
    expect(fittedWith).not.toBeNull();
    const found = low(learnedAt(13_500));
    expect(found.filter(({ key }) => ofTheRun.includes(key))).toEqual([]);
    expect(found[0]?.key).not.toBe("nothing");
  });

  it("with pitch on the blades doesn't hang on the order of the modes", () => {
    const turned = (machine: Machine) => withValue(machine, "modes", machine.modes.toReversed());
    const pitched = (machine: Machine) => low(machine).find(({ key }) => key === "pitch-then");
    for (const machine of demos) {
      const [one, other] = [pitched(machine), pitched(turned(machine))];
      expect(one).toBeDefined();
      expect(other?.reads.toReversed()).toEqual(one?.reads.map((speed) => expect.closeTo(speed, 6)));
      expect(other?.weight).toBeCloseTo(one?.weight ?? 0, 9);
    }
  });
});

describe("what can't be told apart", () => {
  it("stays side by side: one mode alone can't tell five per cent of travel from anything else", () => {
    const rows = [{ mode: 0, measured: asked(fresh, 0) * 1.05 }];
    const found = explain(figuresOf(fresh), { instrument: "optical", load: "hover", sure: 0.01, rows });
    expect(found.filter(({ fits }) => fits).length).toBeGreaterThanOrEqual(3);
    expect(found[0]?.weight).toBeLessThan(0.6);
  });

  it("becomes surer with a surer instrument", () => {
    const of = (sure: number) => read(times(14 / 13), { sure }).find(({ key }) => key === "teeth")?.weight ?? 0;
    expect(of(0.002)).toBeGreaterThan(of(0.01));
  });

  it("adds up to one", () => {
    for (const machine of demos) {
      const all = read((mode) => 1.1 * asked(machine, mode), { machine });
      expect(all.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 9);
      expect(new Set(all.map(({ key }) => key)).size).toBe(all.length);
    }
  });
});

describe("what nothing explains", () => {
  it("fits nothing, and says how far the best is off", () => {
    const found = read((mode) => asked(fresh, mode) * [0.7, 1.6, 0.9][mode]!, { sure: 0.004 });
    expect(found.every(({ fits }) => !fits)).toBe(true);
    expect(found[0]?.gap).toBeGreaterThan(0.1);
  });

  it("is nothing without a reading, or with one of no use", () => {
    const reading = { instrument: "optical", load: "hover", sure: 0.004 } as const;
    expect(explain(figuresOf(fresh), { ...reading, rows: [] })).toEqual([]);
    expect(explain(figuresOf(fresh), { ...reading, rows: [{ mode: 0, measured: 0 }] })).toEqual([]);
    expect(explain(figuresOf(fresh), { ...reading, sure: 0, rows: [{ mode: 0, measured: 1850 }] })).toEqual([]);
  });
});

describe("a fit", () => {
  it("leaves gaps such as the doubt of a reading leaves, 19 times in 20: 1.9 standard uncertainties, but not 2.1", () => {
    // Half of all readings of a normal error lie within 0.67, 19 in 20 within 1.96 of them: GUM (JCGM 100:2008), table G.1.
    const fits = (steps: number) => {
      const rows = [{ mode: 0, measured: asked(fresh, 0) * (1 + 0.004 * steps) }];
      const found = explain(figuresOf(fresh), { instrument: "optical", load: "hover", sure: 0.004, rows });
      return found.find(({ key }) => key === "nothing")?.fits;
    };
    expect([fits(1.9), fits(2.1), fits(-1.9), fits(-2.1)]).toEqual([true, false, true, false]);
  });
});

describe("an instrument", () => {
  it("has faults of its own: a display none of blades and lamps, a tachometer none of magnets", () => {
    expect(canShow("blades", "display")).toBe(false);
    expect(canShow("flicker", "display")).toBe(false);
    expect(canShow("poles", "optical")).toBe(false);
    // A display divides by the teeth that it was told; it can't see those that are fitted.
    expect(canShow("teeth", "display")).toBe(false);
    expect(canShow("ceiling", "display") && canShow("ceiling", "optical")).toBe(true);
  });

  it("is believed 19 times in 20: the limits are those of the handbook", () => {
    // NIST/SEMATECH e-Handbook of Statistical Methods, table 1.3.6.7.4: 0.95, 1 to 6 degrees of freedom.
    expect(chiSquared95).toEqual([3.841, 5.991, 7.815, 9.488, 11.07, 12.592]);
  });
});
