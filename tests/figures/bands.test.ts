import { describe, expect, it } from "vitest";
import { type Band, bandOf, coverage, rotorDoubt } from "#figures/bands";
import type { QuantityName } from "#figures/catalogue";
import { doubtedFigures, everyQuantity, figuresOf } from "#figures/figures";
import { demos } from "#machine/demos";
import type { Machine } from "#machine/machine";
import { rpm } from "#model/constants";
import { expectedError } from "#model/rotor/doubt";
import { learnedAt, machineWith } from "./machines.ts";

function band(machine: Machine, name: QuantityName, mode = 0): Band & { readonly value: number } {
  const figures = figuresOf(machine);
  const found = bandOf(figures, name, mode);
  const value = figures.number(name, mode);
  if (!found || value === null) throw new Error(`${name} has no band`);
  return { ...found, value };
}

describe("a product of two uncertain inputs", () => {
  // F = m r omega², linear in both: 0.5 g of 10 g are 5 %, 3 mm of 300 mm are 1 %.
  const machine = machineWith({ "mainRotor.bladeMassG": 10, "mainRotor.bladeCentreMm": 300 });
  const { value, low, high, uncertainty, shares } = band(machine, "blade-pull");

  it("has the uncertainty of the product rule: 5 % and 1 % make 5.09902 %", () => {
    // JCGM 100:2008 (GUM), 5.1.6: relative variances add.
    expect(Math.abs((100 * uncertainty) / value - 5.09902)).toBeLessThan(1e-5);
  });

  it("spans two standard uncertainties to either side", () => {
    // GUM 6.3.3: two of them hold about 95 in 100.
    expect(coverage).toBe(2);
    expect(low).toBeCloseTo(value * (1 - 2 * 0.0509902), 3);
    expect(high).toBeCloseTo(value * (1 + 2 * 0.0509902), 3);
  });

  it("tells what makes it up, the largest first", () => {
    expect(shares.map(({ path }) => path)).toEqual(["mainRotor.bladeMassG", "mainRotor.bladeCentreMm"]);
    expect(shares[0]?.name).toBe("Mass of one blade");
    expect(shares.map(({ up }) => up / value)).toEqual([expect.closeTo(0.05, 9), expect.closeTo(0.01, 9)]);
    expect(shares.map(({ down }) => down / value)).toEqual([expect.closeTo(-0.05, 9), expect.closeTo(-0.01, 9)]);
  });
});

describe("linear figures", () => {
  it("an input with a share and a fixed doubt has both, as squares: 30 % and 0.3 mΩ of the leads' 2.5 mΩ", () => {
    const share = band(machineWith({}), "pack-resistance").shares.find(({ path }) => /lead/.test(path));
    expect(share?.up).toBeCloseTo(Math.hypot(0.3 * 0.0025, 0.0003), 12);
  });

  it("the tail rotor's speed is as sure as its ratio: 1 %", () => {
    const { value, low, high } = band(machineWith({}), "tail-rotor-speed");
    expect([low / value, high / value]).toEqual([expect.closeTo(0.98, 9), expect.closeTo(1.02, 9)]);
  });

  it("a measured reference has the doubt of speed and throttle: 1 % and 0.5 of 50 %", () => {
    const { value, low, high } = band(learnedAt(15_000), "learned-motor-speed");
    // A quotient: the throttle's half per cent counts 1/0.99 - 1 upwards and 1 - 1/1.01 downwards.
    expect(high / value - 1).toBeCloseTo(2 * Math.hypot(0.01, 1 / 0.99 - 1), 9);
    expect(1 - low / value).toBeCloseTo(2 * Math.hypot(0.01, 1 - 1 / 1.01), 9);
  });

  it("no-load speed without a no-load current goes with Kv and volts: 4 %, and what charge and cells scatter", () => {
    const at = (charge: number) => machineWith({ "motor.noLoadCurrentA": 0, "pack.chargePercent": charge });
    const volts = (charge: number) => figuresOf(at(charge)).number("pack-open-voltage")!;
    const { value, low, high } = band(at(60), "no-load-head-speed");
    const scatter = (6 * 0.012) / volts(60);
    expect(high / value - 1).toBeCloseTo(2 * Math.hypot(0.04, volts(63) / volts(60) - 1, scatter), 9);
    expect(1 - low / value).toBeCloseTo(2 * Math.hypot(0.04, 1 - volts(57) / volts(60), scatter), 9);
  });
});

describe("a band with one side", () => {
  it("a full pack can't be fuller: only the scatter between cells goes up, 12 mV for each of six", () => {
    const { value, low, high, shares } = band(machineWith({}), "pack-open-voltage");
    expect(high - value).toBeCloseTo(2 * 6 * 0.012, 9);
    const volts = figuresOf(machineWith({ "pack.chargePercent": 97 })).number("pack-open-voltage")!;
    expect(value - low).toBeCloseTo(2 * Math.hypot(6 * 0.012, value - volts), 9);
    expect(shares.find(({ path }) => path === "pack.chargePercent")).toMatchObject({ up: 0 });
  });

  it("takes the mean of both sides as its uncertainty", () => {
    const { value, low, high, uncertainty } = band(machineWith({}), "pack-open-voltage");
    expect(uncertainty).toBeCloseTo((high - low) / (2 * coverage), 12);
    expect(high - value).not.toBeCloseTo(value - low, 2);
  });
});

describe("exact figures", () => {
  it.each(["gear-ratio", "set-head-speed", "motor-speed", "electrical-speed", "throttle-entered"] as const)(
    "%s has a band without width",
    (name) => {
      const { low, high, value, uncertainty, shares } = band(machineWith({}), name);
      expect([low, high, uncertainty, shares]).toEqual([value, value, 0, []]);
    },
  );
});

describe("figures that follow another", () => {
  it("the entered throttle stays entered: its head speed is as unsure as the reference", () => {
    const machine = machineWith({});
    const learned = band(machine, "learned-head-speed");
    for (const name of ["head-speed-entered", "stale-head-speed"] as const) {
      const { low, high, value, uncertainty } = band(machine, name, 1);
      expect(low / value).toBeCloseTo(learned.low / learned.value, 9);
      expect(high / value).toBeCloseTo(learned.high / learned.value, 9);
      expect(uncertainty / value).toBeCloseTo(learned.uncertainty / learned.value, 9);
    }
  });
});

describe("the model's own doubt", () => {
  const rotor = (machine: Machine, name: QuantityName, mode = 0) => {
    const { shares, value } = band(machine, name, mode);
    const share = shares.find(({ path }) => path === "model.rotor");
    return { up: (share?.up ?? 0) / value, down: (share?.down ?? 0) / value };
  };

  it("is in the band of all that the rotors ask for: 6 % of the torque on blades as large as the tested ones", () => {
    for (const name of ["hover-power", "full-pitch-power"] as const) {
      const { up, down } = rotor(machineWith({}), name, 1);
      expect(up).toBeCloseTo(0.06, 6);
      expect(down).toBeCloseTo(1 / 1.06 - 1, 6);
    }
    const room = band(machineWith({}), "speed-headroom-full-pitch", 1);
    expect(room.shares.find(({ path }) => path === "model.rotor")!.up).toBeLessThan(0);
  });

  it("grows on small blades as the model's own error does, at each mode's own speed", () => {
    // 240 mm across and 14 mm wide at 3,800 rpm: tips at a Reynolds number near 43,700, where the model expects 11 to 12 %.
    const small = { "mainRotor.diameterMm": 240, "mainRotor.chordMm": 14, "modes.0.headRpm": 3800 };
    const rest = { "mainRotor.rootCutoutMm": 25, "mainRotor.bladeCentreMm": 65, "tailRotor.diameterMm": 42 };
    const light = { "tailRotor.chordMm": 7, "airframe.massG": 35, "modes.1.headRpm": 2600 };
    const machine = machineWith({ ...rest, ...small, ...light });
    const { rig } = figuresOf(machine);
    const error = (headRpm: number) =>
      expectedError((rig.air.density * headRpm * rpm * 0.12 * 0.014) / rig.air.viscosity);
    expect(error(3800)).toBeGreaterThan(0.11);
    expect(error(3800)).toBeLessThan(0.12);
    expect(rotor(machine, "hover-power", 0).up).toBeCloseTo(error(3800), 6);
    // Slower: two thirds of the Reynolds number, 15 %.
    expect(error(2600)).toBeCloseTo(0.15, 2);
    expect(rotor(machine, "hover-power", 1).up).toBeCloseTo(error(2600), 6);
    const { low, high, value } = band(machine, "hover-power", 0);
    expect(high / value - 1).toBeGreaterThan(coverage * error(3800));
    expect(low).toBeGreaterThan(0);
  });

  it("of figures that belong to no mode is that of the learning run", () => {
    const machine = machineWith({ "mainRotor.chordMm": 12, "modes.0.headRpm": 4000 });
    const { rig } = figuresOf(machine);
    const learning = band(machine, "learning-head-speed");
    const error = rotorDoubt(figuresOf(machine), learning.value * rpm);
    expect(error).toBeGreaterThan(rotorDoubt(figuresOf(machine), 4000 * rpm));
    const moved = doubtedFigures(machine, { rotorTorque: 1 + error }).number("learning-head-speed")!;
    expect(learning.shares.find(({ path }) => path === "model.rotor")?.up).toBe(moved - learning.value);
    expect(rig.rotorTorque).toBe(1);
  });

  it("leaves no power below none, however small the blades", () => {
    const machine = machineWith({ "mainRotor.chordMm": 2, "modes.0.headRpm": 50, "airframe.massG": 10 });
    expect(rotorDoubt(figuresOf(machine), 50 * rpm)).toBeGreaterThan(1);
    const { low, high, value } = band(machine, "full-pitch-power");
    expect(low).toBe(0);
    expect(high).toBeGreaterThan(value);
  });

  it("of an iron-phosphate cell is larger than of a polymer cell: 30 mV", () => {
    // Spread of the published curves: Sunil, Pattipati, Balasingam, IEEE Trans. Instrum. Meas. (2025).
    const machine = machineWith({ "pack.chemistry": "life", "pack.chargePercent": 50 });
    const share = band(machine, "pack-open-voltage").shares.find(({ path }) => path === "model.cell-voltage");
    expect(share!.up).toBeCloseTo(6 * 0.03, 9);
  });
});

describe("figures without a value", () => {
  it("have no band", () => {
    const fast = figuresOf(machineWith({ "modes.0.headRpm": 3300 }));
    expect(bandOf(fast, "duty-hover", 0)).toBeNull();
    expect(bandOf(fast, "reference-state")).toBeNull();
  });

  it("end the band of a figure that is near them", () => {
    // Held by a hair: a little less charge or Kv and there is no duty any more, so nothing is added on that side.
    const ceiling = figuresOf(machineWith({})).number("ceiling-hover", 0)!;
    const { high, value } = band(machineWith({ "modes.0.headRpm": ceiling * 0.999 }), "duty-hover");
    expect(value).toBeLessThan(100);
    expect(high).toBe(100);
  });

  it("hold for a charge: a pack has none below none", () => {
    for (const machine of demos) {
      machine.modes.forEach((_, mode) => {
        const found = bandOf(figuresOf(machine), "lowest-charge", mode);
        if (!found) return;
        expect(found.low).toBeGreaterThanOrEqual(0);
        expect(found.high).toBeLessThanOrEqual(100);
      });
    }
    expect(band(machineWith({}), "lowest-charge", 0).low).toBe(0);
  });
});

it("a time has no band below none, though the speed may be lost at the start", () => {
  const cold = machineWith({ "pack.temperatureC": -10 });
  const found = bandOf(figuresOf(cold), "full-pitch-duration", 2)!;
  expect(found.low).toBe(0);
  expect(found.high).toBeGreaterThan(figuresOf(cold).number("full-pitch-duration", 2)!);
});

describe("on the demo machines", () => {
  it("every figure lies in its band, and the band is finite", () => {
    for (const machine of demos) {
      const figures = figuresOf(machine);
      for (const { name, mode } of everyQuantity(figures)) {
        const value = figures.number(name, mode ?? 0);
        const found = bandOf(figures, name, mode ?? 0);
        expect([name, found === null]).toEqual([name, value === null]);
        if (!found || value === null) continue;
        expect(Number.isFinite(found.low) && Number.isFinite(found.high)).toBe(true);
        expect(found.low).toBeLessThanOrEqual(value + 1e-12);
        expect(found.high).toBeGreaterThanOrEqual(value - 1e-12);
      }
    }
  });
});

describe("a band that could pass its end", () => {
  it.each(demos)("has no time in the air below none: $name", (machine) => {
    for (const chargePercent of [21, 23, 25]) {
      const { low, high, value } = band(
        machineWith({ "pack.chargePercent": chargePercent }, machine),
        "hover-duration",
      );
      expect(low).toBe(0);
      expect(high).toBeGreaterThan(value);
    }
  });
});
