/** What the pages on the governor compute beside their flights. */
import { describe, expect, it } from "vitest";
import { figuresOf } from "#figures/figures";
import { flightOf } from "#flights/flight";
import { governorFacts } from "#flights/hands";
import { departures } from "#flights/machine";
import { ceilingsWith, packedAs } from "#flights/packs";
import { clubTrainer } from "#machine/demos";
import { withValue } from "#machine/paths";

const fast = 2;

describe("a governor's figures", () => {
  it("droop by the missing duty over the gain, as a share of the reference", () => {
    const figures = figuresOf(clubTrainer);
    const missing = figures.number("duty-full-pitch", fast)! - figures.number("duty-hover", fast)!;
    const droop = governorFacts(clubTrainer, fast).droopRpm!;
    // Steady-state error of proportional control: e = u / Kp.
    expect(droop).toBeCloseTo((missing / 100 / 3) * figures.number("learned-head-speed")!, 9);
    expect(governorFacts(clubTrainer, fast, { proportionalGain: 6 }).droopRpm!).toBeCloseTo(droop / 2, 9);
    expect(governorFacts(clubTrainer, fast, { proportionalGain: 0 }).droopRpm).toBeNull();
    expect(governorFacts(withValue(clubTrainer, "modes.2.headRpm", 4500), fast).droopRpm).toBeNull();
  });

  it("droop no deeper in flight, where the climb takes load away, and not much less", () => {
    const request = {
      machine: clubTrainer,
      mode: fast,
      scenario: { kind: "punch", hold: 0.3 },
      integralGain: 0,
    } as const;
    const flown = flightOf(request);
    if (!flown.ok) throw new Error(flown.why);
    const droop = (governorFacts(clubTrainer, fast).droopRpm! * Math.PI) / 30;
    const lowest = flown.setSpeed - Math.min(...flown.trace.rotorSpeed);
    expect(lowest).toBeLessThan(droop);
    expect(lowest).toBeGreaterThan(0.5 * droop);
  });

  it("see by steps of the clock against one electrical turn", () => {
    // f = n p / 120, by definition: 2,450 rpm through 120 to 13, with 10 magnets, against a clock of 0.5 µs.
    const hertz = (2450 * (120 / 13) * 10) / 120;
    const facts = governorFacts(clubTrainer, fast);
    expect(facts.seesRpm).toBeCloseTo(2450 * hertz * 5e-7, 9);
    expect(facts.agesMs).toBeCloseTo(500 / hertz, 9);
    expect(facts.looksMs).toBe(2);
    expect(governorFacts(clubTrainer, fast, { loopHz: 50 }).looksMs).toBe(20);
  });

  it("jerk the duty more with more gain and more magnets", () => {
    const { jerkPercent } = governorFacts(clubTrainer, fast);
    expect(governorFacts(clubTrainer, fast, { proportionalGain: 12, poles: 20 }).jerkPercent).toBeCloseTo(
      8 * jerkPercent,
      9,
    );
  });
});

describe("a pack in another state", () => {
  it("is the same machine for the same one, and the machine itself where nothing is changed", () => {
    expect(packedAs(clubTrainer, "own")).toBe(clubTrainer);
    expect(packedAs(clubTrainer, "tired")).toBe(packedAs(clubTrainer, "tired"));
    expect(packedAs(clubTrainer, "full")).not.toBe(packedAs(clubTrainer, "tired"));
  });

  it("is full, or old and nearly empty, and else unchanged", () => {
    const used = withValue(clubTrainer, "pack.chargePercent", 55);
    expect(packedAs(used, "full")).toEqual(withValue(clubTrainer, "pack.chargePercent", 100));
    const { pack, ...rest } = packedAs(used, "tired");
    expect(pack.chargePercent).toBe(30);
    expect(pack.cellResistanceMilliohm / used.pack.cellResistanceMilliohm).toBeCloseTo(1.6, 9);
    expect(rest).toEqual((({ pack: _, ...others }) => others)(used));
  });

  it("takes the ceilings down, full pitch below hover", () => {
    const own = ceilingsWith(clubTrainer, fast, "own");
    const tired = ceilingsWith(clubTrainer, fast, "tired");
    expect(own.fullPitch).toBe(figuresOf(clubTrainer).number("ceiling-full-pitch", fast));
    expect(tired.hover!).toBeLessThan(own.hover!);
    expect(tired.fullPitch!).toBeLessThan(Math.min(own.fullPitch!, tired.hover!));
  });
});

describe("how a flight departs from the record", () => {
  it("names what is given and nothing else", () => {
    const all = { pack: "tired", headRpm: 2500, integralGain: undefined, title: "no departure" } as never;
    expect(departures(all)).toEqual({ pack: "tired", headRpm: 2500 });
  });

  it.each([
    ["head speed", { headRpm: 2000 }],
    ["quick gain", { proportionalGain: 9 }],
    ["patient gain", { integralGain: 60 }],
    ["loop", { loopHz: 100 }],
    ["magnets", { poles: 2 }],
    ["pack", { pack: "tired" }],
  ] as const)("changes the flight: %s", (_, options) => {
    const request = { machine: clubTrainer, mode: fast, scenario: { kind: "punch", hold: 0.3, after: 0.2 } } as const;
    const [plain, other] = [flightOf(request), flightOf({ ...request, ...options })];
    if (!plain.ok || !other.ok) throw new Error("not flown");
    expect(other.trace.rotorSpeed).not.toEqual(plain.trace.rotorSpeed);
  });
});
