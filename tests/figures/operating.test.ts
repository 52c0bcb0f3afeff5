import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type SteadyLoad, steadyLoads } from "#figures/asked";
import { doubtedFigures, figuresOf } from "#figures/figures";
import {
  ceilingIn,
  lastsFor,
  type NotOperating,
  type Operating,
  operatingOf,
  type PowerBalance,
} from "#figures/operating";
import { notOperatingWords } from "#figures/operating-words";
import type { Rig } from "#figures/rig";
import { createBench } from "#machine/bench";
import { clubTrainer, demos } from "#machine/demos";
import { fields } from "#machine/fields";
import type { Machine } from "#machine/machine";
import { withValue } from "#machine/paths";
import { rpm } from "#model/constants";
import { anyMachine } from "../machine/arbitrary.ts";
import { number } from "./machines.ts";

const rigOf = (machine: Machine): Rig => figuresOf(machine).rig;
const sum = (parts: object): number => Object.values(parts).reduce((all: number, part: number) => all + part, 0);

/** How far the parts are from the whole, as a share of it. */
const imbalance = ({ source, heat, rotors }: PowerBalance): number =>
  Math.abs(source - sum(heat) - sum(rotors)) / source;

/** Every point of a machine that is wrong, in words; none when all is well. */
function faults(machine: Machine, modes: readonly number[] = machine.modes.map((_, mode) => mode)): string[] {
  const rig = rigOf(machine);
  return modes.flatMap((mode) =>
    steadyLoads.flatMap((load) =>
      [undefined, 0.1].flatMap((charge) => {
        const found = operatingOf(rig, load, mode, charge === undefined ? {} : { charge });
        const at = `${load}, mode ${mode}, charge ${charge}`;
        if (!found.ok) {
          const words = notOperatingWords(found);
          return /^There is no .*\. .*\.$/.test(words) && !/NaN|undefined|Infinity/.test(words)
            ? []
            : [`${at}: ${words}`];
        }
        const { balance, point } = found;
        const wrong = imbalance(balance);
        const parts = [...Object.entries(balance.heat), ...Object.entries(balance.rotors)];
        // Drag of a blade at a negative lift can't be below nothing; rounding can.
        const negative = parts.filter(([name, watts]) => name !== "induced" && watts < -1e-9 * balance.source);
        return [
          ...(wrong < 1e-9 ? [] : [`${at}: parts miss the whole by ${wrong}`]),
          ...(negative.length === 0 ? [] : [`${at}: less than nothing in ${negative}`]),
          ...(point.duty > 0 && point.duty <= 1 + 1e-9 ? [] : [`${at}: duty ${point.duty}`]),
        ];
      }),
    ),
  );
}

const held = (found: Operating | NotOperating): Operating => {
  if (!found.ok) throw new Error(notOperatingWords(found));
  return found;
};

describe("the power of an operating point", () => {
  it.each(demos.map((demo) => [demo.name, demo] as const))(
    "of the %s adds up, in every load, at any charge",
    (_, demo) => {
      expect(faults(demo)).toEqual([]);
      for (const load of steadyLoads) expect(operatingOf(rigOf(demo), load, 1).ok).toBe(true);
    },
  );

  it("adds up at the limits of every input", () => {
    const found = fields.flatMap((field) => {
      if (field.kind === "text" || field.kind === "choice") return [];
      const path = field.path.replace(".*.", ".0.");
      return [field.min, field.max].flatMap((value) => {
        const bench = createBench(clubTrainer);
        return bench.set(path, value) ? [] : faults(bench.now, [0]).map((fault) => `${path} = ${value}: ${fault}`);
      });
    });
    expect(found).toEqual([]);
  });

  it("adds up for any machine that can be built", () => {
    fc.assert(
      fc.property(anyMachine, (machine) => {
        expect(faults(machine, [0])).toEqual([]);
      }),
      { seed: 20_260_301, numRuns: 60 },
    );
  });

  it("is seen not to add up when a part is missing, or counted wrong", () => {
    const { balance } = held(operatingOf(rigOf(clubTrainer), "climb", 0));
    const { heat, rotors } = balance;
    expect(imbalance(balance)).toBeLessThan(1e-12);
    for (const part of Object.keys(heat)) {
      const broken = { ...balance, heat: { ...heat, [part]: 0 } };
      expect([part, imbalance(broken) > 1e-6]).toEqual([part, true]);
    }
    for (const part of Object.keys(rotors)) {
      const broken = { ...balance, rotors: { ...rotors, [part]: (rotors[part as keyof typeof rotors] ?? 0) * 1.001 } };
      expect([part, imbalance(broken) > 1e-6]).toEqual([part, true]);
    }
  });

  it("adds up under a doubt about the rotors too, which leaves the weight that is raised as it was", () => {
    const plain = held(operatingOf(rigOf(clubTrainer), "climb", 0));
    const doubted = held(operatingOf(doubtedFigures(clubTrainer, { rotorTorque: 1.05 }).rig, "climb", 0));
    expect(imbalance(doubted.balance)).toBeLessThan(1e-9);
    expect(doubted.balance.shaft / plain.balance.shaft).toBeCloseTo(1.05, 9);
    expect(doubted.balance.rotors.raising).toBe(plain.balance.rotors.raising);
  });
});

describe("an operating point", () => {
  const rig = rigOf(clubTrainer);
  const at = (load: SteadyLoad, mode = 1, options = {}) => held(operatingOf(rig, load, mode, options));

  it("agrees with the figures of the same machine, which read their loads from a table", () => {
    const hover = at("hover");
    const full = at("full-pitch");
    const figure = (name: Parameters<typeof number>[1]) => number(clubTrainer, name, 1);
    expect(100 * hover.point.duty).toBeCloseTo(figure("duty-hover"), 3);
    expect(hover.point.packCurrent).toBeCloseTo(figure("hover-pack-current"), 3);
    expect(hover.balance.rotors.profile + hover.balance.rotors.induced).toBeCloseTo(figure("hover-power"), 3);
    expect(full.balance.shaft / figure("full-pitch-power")).toBeCloseTo(1, 4);
    for (const [load, point] of [
      ["hover", hover],
      ["full-pitch", full],
    ] as const) {
      expect(sum(point.balance.heat) / figure(`${load}-board-heat`)).toBeCloseTo(1, 4);
      expect(100 * point.efficiencies.chain).toBeCloseTo(figure(`${load}-efficiency`), 3);
      expect(point.point.motorCurrent / figure(`${load}-motor-current`)).toBeCloseTo(1, 4);
      expect((lastsFor(rig, point) ?? 0) / 60).toBeCloseTo(figure(`${load}-duration`), 3);
    }
    for (const [load, name] of [
      ["hover", "ceiling-hover"],
      ["full-pitch", "ceiling-full-pitch"],
    ] as const) {
      const ceiling = ceilingIn(rig, load, 1);
      expect(ceiling.ok && ceiling.speed / rpm).toBeCloseTo(figure(name), 6);
    }
  });

  it("has efficiencies that make up the chain's", () => {
    for (const load of steadyLoads) {
      const { pack, lead, controller, motor, gears, chain } = at(load).efficiencies;
      expect(pack * lead * controller * motor * gears).toBeCloseTo(chain, 12);
      expect(chain).toBeLessThan(1);
    }
    expect(at("hover").efficiencies.merit).toBeGreaterThan(0.2);
    expect(at("climb").efficiencies.merit).toBeNull();
  });

  it("in a climb raises the weight, and takes less induced power than hovering at that thrust", () => {
    const { asked, balance } = at("climb");
    expect(asked.climb).toBeGreaterThan(3);
    // Raising a weight takes W V, and the drag area's own drag goes on top of it: mechanics.
    expect(balance.rotors.raising / (rig.weight * asked.climb)).toBeCloseTo(1, 6);
    const drag = 0.5 * rig.air.density * rig.parts.airframe.dragArea * asked.climb ** 2;
    expect(asked.thrust).toBeCloseTo(rig.weight + drag, 5);
    expect(balance.rotors.airframe).toBeCloseTo(drag * asked.climb, 9);
    // Momentum theory in climb, Leishman, Principles of Helicopter Aerodynamics, ch. 2: v = -V/2 + sqrt(V²/4 + v_h²).
    const square = asked.thrust / (2 * rig.air.density * Math.PI * rig.parts.mainRotor.radius ** 2);
    const ideal = asked.thrust * (Math.sqrt(asked.climb ** 2 / 4 + square) - asked.climb / 2);
    expect(balance.rotors.induced / ideal).toBeGreaterThan(1);
    // Straight blades carry badly in a climb: they push at the tip and brake at the root.
    expect(balance.rotors.induced / ideal).toBeLessThan(3);
  });

  it("on the ground moves no air, and in fast flight fights the airframe most", () => {
    const flat = at("flat").balance.rotors;
    expect(Math.abs(flat.induced)).toBeLessThan(1e-6 * flat.profile);
    expect([flat.airframe, flat.raising]).toEqual([0, 0]);
    const { airframe, profile, induced, tail } = at("forward").balance.rotors;
    expect(Math.max(airframe, profile, induced, tail)).toBe(airframe);
    // Power of a drag area: rho V³ f / 2.
    const fast = at("forward").asked.airspeed;
    expect(airframe).toBeCloseTo(0.5 * rig.air.density * fast ** 3 * rig.parts.airframe.dragArea, 9);
    expect(fast).toBeCloseTo(0.25 * number(clubTrainer, "tip-speed", 1), 9);
  });

  it("takes more duty and a lower ceiling from a pack that is emptier", () => {
    for (const load of steadyLoads) {
      const [full, low] = [at(load, 1, { charge: 1 }), at(load, 1, { charge: 0.2 })];
      expect(low.point.duty).toBeGreaterThan(full.point.duty);
      const [most, least] = [ceilingIn(rig, load, 1, { charge: 1 }), ceilingIn(rig, load, 1, { charge: 0.2 })];
      expect(most.ok && least.ok && least.speed < most.speed).toBe(true);
      // At the ceiling itself full duty holds the load.
      if (!most.ok || load === "forward") continue;
      const there = withValue(clubTrainer, "modes.1.headRpm", (0.9999 * most.speed) / rpm);
      expect(held(operatingOf(rigOf(there), load, 1, { charge: 1 })).point.duty).toBeCloseTo(1, 3);
    }
  });
});
