import { describe, expect, it } from "vitest";
import { topOfBand } from "#blocks/top-of-band";
import { figuresOf } from "#figures/figures";
import { machineWith } from "../figures/machines.ts";
import { plain } from "./mounted.ts";

const of = (changes: Readonly<Record<string, unknown>>) => topOfBand(figuresOf(machineWith(changes)), 1);

describe("room above the top of the band at half charge", () => {
  it("is the ceiling of the same machine on half a pack, less the band's end", () => {
    const { roomAtHalf } = of({});
    const half = figuresOf(machineWith({ "pack.chargePercent": 50 }));
    const top = figuresOf(machineWith({})).number("usable-high-head-speed")!;
    expect(roomAtHalf).toBeCloseTo(half.number("ceiling-full-pitch", 1)! - top, 6);
    // The charge now doesn't matter.
    expect(of({ "pack.chargePercent": 80 }).roomAtHalf).toBeCloseTo(roomAtHalf!, 6);
  });

  it("is gone or there, in words", () => {
    expect(of({ "controller.usableHighPercent": 99 }).roomAtHalf).toBeLessThan(0);
    expect(plain(of({ "controller.usableHighPercent": 99 }).words)).toMatch(
      /has sunk to [\d,]+ rpm\..*waiting for less pitch/,
    );
    expect(of({ "controller.usableHighPercent": 70 }).roomAtHalf).toBeGreaterThan(0);
    expect(plain(of({ "controller.usableHighPercent": 70 }).words)).toMatch(
      /lies at [\d,]+ rpm: this machine has room/,
    );
  });

  it("isn't there where the motor doesn't turn the rotor", () => {
    const { roomAtHalf, words } = of({ "pack.cells": 1, "motor.noLoadCurrentA": 60, "motor.resistanceMilliohm": 5000 });
    expect(roomAtHalf).toBeNull();
    expect(words).toMatch(/no ceiling at all/);
  });
});
