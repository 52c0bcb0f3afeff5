import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type FlightRequest, flightOf, sizeOf } from "#flights/flight";
import { laneAt, laneNames, lineOf } from "#flights/lanes";
import { packStates } from "#flights/packs";
import { packMixes, type Scenario } from "#flights/scenarios";
import { flightWords } from "#flights/told";
import { demos } from "#machine/demos";
import { fields } from "#machine/fields";
import type { Machine } from "#machine/machine";
import { withValue } from "#machine/paths";
import { brokenRules } from "#machine/rules";
import { anyMachine } from "../machine/arbitrary.ts";
import { blemishes, emptyWord } from "../support/plain.ts";

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const scenarios: fc.Arbitrary<Scenario> = fc.oneof(
  fc.record({ kind: fc.constant("punch" as const), hold: number(0.1, 3) }),
  fc.constantFrom(
    { kind: "pumps" } as const,
    { kind: "unload" } as const,
    { kind: "spool-up" } as const,
    { kind: "autorotation", bailOut: true } as const,
    { kind: "autorotation", bailOut: false } as const,
  ),
  fc.record({
    kind: fc.constant("learning" as const),
    throttlePercent: number(20, 90),
    setup: fc.record({
      chargePercent: number(0, 100),
      pitchDeg: number(-4, 10),
      swingDeg: number(0, 8),
      complete: fc.boolean(),
      seconds: number(5, 20),
    }),
  }),
  fc.record({
    kind: fc.constant("drawn" as const),
    seconds: number(0.5, 5),
    collectivesDeg: fc.array(number(-20, 20), { maxLength: 9 }),
  }),
);
/** What a reader's sliders can do: a demo machine with a few fields anywhere in their ranges. */
const sliders = fields.filter(({ kind, path }) => /^(number|integer)$/.test(kind) && !/secondStage|learned/.test(path));
const moved = fc
  .tuple(
    fc.constantFrom(...demos),
    fc.array(fc.tuple(fc.constantFrom(...sliders), number(0, 1)), { minLength: 1, maxLength: 5 }),
  )
  .map(([demo, moves]) =>
    moves.reduce<Machine>((machine, [{ path, kind, low, high, wholeEven }, share]) => {
      const value = low + share * (high - low);
      const step = wholeEven ? 2 : 1;
      const whole = kind === "integer" ? step * Math.round(value / step) : value;
      const next = withValue(machine, path.replace("*", "0"), whole);
      return brokenRules(next).length === 0 ? next : machine;
    }, demo),
  );
const machines = fc.oneof({ weight: 3, arbitrary: moved }, { weight: 1, arbitrary: anyMachine });
const requests: fc.Arbitrary<FlightRequest> = fc.record({
  machine: machines,
  mode: fc.constant(0),
  scenario: scenarios,
  antiWindup: fc.constantFrom("none", "clamping", "back-calculation"),
  pack: fc.constantFrom(...packStates),
});

/** Numbers throughout, words that say something, and an end by the end. */
function sound(request: FlightRequest): string {
  const result = flightOf(request);
  expect(blemishes(sizeOf(request))).toEqual([]);
  if (!result.ok) {
    expect(result.why).toMatch(/^[A-Z].+[.:].*$/s);
    expect(result.why).not.toMatch(emptyWord);
    return "refused";
  }
  for (const [name, column] of Object.entries(result.trace)) {
    expect([name, column.every(Number.isFinite)]).toEqual([name, true]);
  }
  expect(blemishes([result.spans, result.end, result.events])).toEqual([]);
  const words = flightWords(result, request.scenario);
  expect(words).toMatch(/^\S.*\.$/);
  expect(words).not.toMatch(emptyWord);
  if (result.end.why !== "flown") expect(result.endWords).toMatch(/^\S.*\.$/);
  for (const name of laneNames) {
    const { times, values } = lineOf(result.trace, name, 300);
    expect(times.length).toBe(values.length);
    expect(times.length).toBeLessThanOrEqual(600);
    expect(laneAt(result.trace, name, result.end.time / 2)).not.toBeNaN();
  }
  return result.end.why;
}

describe("any machine in flight", { timeout: 180_000 }, () => {
  it("gives numbers and words, or says why it can't fly, and never goes on without end", () => {
    const ends = new Set<string>();
    fc.assert(
      fc.property(requests, (request) => {
        ends.add(sound(request));
      }),
      { numRuns: 40 },
    );
    expect(ends).toContain("flown");
  });

  it("flies whole packs to an end too", () => {
    const packs = fc.record({ machine: machines, mix: fc.constantFrom(...packMixes) });
    fc.assert(
      fc.property(packs, ({ machine, mix }) => {
        sound({ machine, mode: 0, scenario: { kind: "whole-pack", mix } });
      }),
      { numRuns: 5 },
    );
  });
});
