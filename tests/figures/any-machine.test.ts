import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { catalogue } from "#figures/catalogue";
import { everyQuantity, type Figures, figuresOf } from "#figures/figures";
import { obstacle, whyNone } from "#figures/why";
import type { Machine } from "#machine/machine";
import { withValue } from "#machine/paths";
import { anyMachine } from "../machine/arbitrary.ts";
import { emptyWord } from "../support/plain.ts";
import { learnedAt } from "./machines.ts";

// The rotors of a machine take some milliseconds to solve, those of a strange one more.
const long = { timeout: 60_000 };
const runs = { numRuns: 25 };

/** Machines with one mode less to work out than the record allows. */
const machines = anyMachine.map((machine): Machine => ({ ...machine, modes: machine.modes.slice(0, 2) }));

const inHand = (figures: Figures) =>
  everyQuantity(figures).map(({ name, mode }) => [name, mode ?? 0, figures.value(name, mode ?? 0)] as const);

describe("any machine", long, () => {
  it("has figures that are finite numbers, words, or nothing with a reason", () => {
    fc.assert(
      fc.property(machines, (machine) => {
        const figures = figuresOf(machine);
        for (const [name, mode, value] of inHand(figures)) {
          if (typeof value === "number") expect([name, Number.isFinite(value)]).toEqual([name, true]);
          else if (typeof value === "string") expect(catalogue[name].unit).toBe("text");
          else expect([name, whyNone(figures, name, mode)]).not.toEqual([name, "there is no value for this machine."]);
        }
      }),
      runs,
    );
  });

  it("has warnings with proper figures and words", () => {
    fc.assert(
      fc.property(machines, (machine) => {
        for (const { value, limit, words, mode } of figuresOf(machine).warnings) {
          // Names are the reader's own, and may hold anything.
          const own = machine.modes.reduce((text, { name }) => text.replaceAll(`"${name}"`, ""), words);
          expect(own).not.toMatch(emptyWord);
          expect(Number.isFinite(limit) && (value === null || Number.isFinite(value))).toBe(true);
          expect(mode === null || machine.modes[mode] !== undefined).toBe(true);
        }
      }),
      runs,
    );
  });

  it("holds together: room, duty, throttle and head speed, charge", () => {
    fc.assert(
      fc.property(machines, (machine) => {
        const figures = figuresOf(machine);
        for (const mode of machine.modes.keys()) {
          const of = (...[name]: Parameters<Figures["number"]>) => figures.number(name, mode);
          const set = of("set-head-speed")!;
          for (const load of ["hover", "full-pitch"] as const) {
            const [ceiling, room] = [of(`ceiling-${load}`), of(`speed-headroom-${load}`)];
            expect(room === null).toBe(ceiling === null);
            if (ceiling !== null) expect(room! / set).toBeCloseTo(ceiling / set - 1, 9);
            const warned = figures.warnings.some((each) => each.name === "no-headroom" && each.mode === mode);
            if (of(`duty-${load}`) === null) expect(warned).toBe(true);
            expect(obstacle(figures, load, mode) === null || warned).toBe(true);
          }
          const reference = of("learned-head-speed");
          if (reference !== null) expect((of("throttle")! / 100) * (reference / set)).toBeCloseTo(1, 9);
          const [entered, real] = [of("throttle-entered"), of("head-speed-entered")];
          if (reference !== null) {
            expect(Math.abs(entered! - of("throttle")!)).toBeLessThanOrEqual(0.5 + 1e-9 * entered!);
            expect(Math.abs(real! - (entered! / 100) * reference)).toBeLessThanOrEqual(1e-9 * reference);
          }
        }
      }),
      runs,
    );
  });

  it("holds full pitch at its lowest charge and not below it", () => {
    fc.assert(
      fc.property(machines, (machine) => {
        const lowest = figuresOf(machine).number("lowest-charge", 0);
        const duty = (charge: number) =>
          figuresOf(withValue(machine, "pack.chargePercent", charge)).number("duty-full-pitch", 0);
        if (lowest === null) expect(duty(100)).toBeNull();
        else {
          expect(duty(Math.min(100, lowest + 1e-6))).not.toBeNull();
          if (lowest > 1e-6) expect(duty(lowest - 1e-6)).toBeNull();
        }
      }),
      runs,
    );
  });

  it("asks for more head speed with more throttle, in proportion", () => {
    fc.assert(
      fc.property(machines, fc.double({ min: 0.3, max: 3, noNaN: true }), (machine, factor) => {
        const base = learnedAt(20_000, 50, machine);
        const faster = withValue(base, "modes.0.headRpm", base.modes[0]!.headRpm * factor);
        const [before, after] = [base, faster].map((each) => figuresOf(each).number("throttle", 0)!);
        expect(after! / before!).toBeCloseTo(factor, 9);
      }),
      runs,
    );
  });
});
