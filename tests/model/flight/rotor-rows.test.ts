import { describe, expect, it } from "vitest";
import type { RotorMap } from "#model/flight/rotor-map";
import { climbCount, climbStep, rowOf, rowsAhead, rungOf, rungs, speedOf } from "#model/flight/rotor-rows";
import { rotorSurface } from "#model/flight/surface";
import { mainRotor, sample } from "./sample.ts";

const radius = 0.5;

/** The sample's rotors, with a note of each time that one of them is asked. */
function counted() {
  let asked = 0;
  const map: RotorMap = {
    thrust: (...state) => {
      asked += 1;
      return mainRotor.thrust(...state);
    },
    torque: mainRotor.torque,
  };
  const speeds = new Set<number>();
  const tail = (torque: number, speed: number) => {
    speeds.add(speed);
    return sample.tail!(torque, speed);
  };
  return { map, tail, speeds, asked: () => asked };
}

describe("the ladder of speeds", () => {
  it("has rungs 20 % apart, and each speed lies within a tenth of one", () => {
    expect(speedOf(31) / speedOf(30)).toBeCloseTo(1.2, 12);
    for (let speed = 20; speed < 900; speed *= 1.013) {
      expect(Math.abs(Math.log(speedOf(rungOf(speed)) / speed))).toBeLessThanOrEqual(Math.log(1.2) / 2 + 1e-12);
    }
  });

  it("reaches from a start to an overspeed of any reference", () => {
    expect(speedOf(rungs[0])).toBeLessThan(0.2);
    expect(speedOf(rungs.at(-1)!)).toBeGreaterThan(1.5);
  });
});

describe("a row", () => {
  it("is what the map gives, hovering and climbing", () => {
    const hover = rowOf(mainRotor, radius, 30, 0);
    const climb = rowOf(mainRotor, radius, 30, 2);
    const speed = speedOf(30);
    expect(hover.collectives[0]).toBeCloseTo(-0.62, 12);
    expect(climb.collectives[0]).toBeGreaterThanOrEqual(-0.03);
    for (const [row, rise] of [
      [hover, 0],
      [climb, 2 * climbStep * speed * radius],
    ] as const) {
      expect([row.thrust.length, row.torque.length]).toEqual([row.collectives.length, row.collectives.length]);
      for (const [i, collective] of row.collectives.entries()) {
        expect(row.thrust[i]).toBe(mainRotor.thrust(speed, collective, rise));
        expect(row.torque[i]).toBe(mainRotor.torque(speed, collective, rise));
      }
    }
  });

  it("is asked for once, for a map and a radius", () => {
    const { map, asked } = counted();
    const row = rowOf(map, radius, 30, 1);
    const before = asked();
    expect(rowOf(map, radius, 30, 1)).toBe(row);
    expect(asked()).toBe(before);
    expect(rowOf(map, 0.6, 30, 1)).not.toBe(row);
    expect(rowOf(counted().map, radius, 30, 1)).not.toBe(row);
  });
});

describe("rows ahead", () => {
  it("leave few questions for tables about other references", () => {
    const { map, tail, speeds, asked } = counted();
    const pieces = [...rowsAhead(map, tail, radius, 320)];
    for (const piece of pieces) piece();
    const before = asked();
    const known = speeds.size;
    for (const reference of [80, 180, 320, 600, 1400]) {
      const turn = asked();
      expect(rotorSurface(map, tail, radius, sample.airDensity, reference)).not.toBeNull();
      // How inflow counts is looked for at the reference itself.
      expect(asked() - turn).toBeLessThan(120);
    }
    expect(before).toBeGreaterThan(100 * rungs.length * climbCount);
    expect(speeds.size).toBe(known);
  });

  it("come the nearest first, and only those that aren't known", () => {
    const { map, tail, speeds } = counted();
    rotorSurface(map, tail, radius, sample.airDensity, 320);
    speeds.clear();
    const first = rowsAhead(map, tail, radius, 320).next().value;
    if (first) first();
    // One rung up, the first of its speeds that those of the reference don't hold.
    expect([...speeds]).toEqual([speedOf(rungOf(320) + 1 + rungs[0])]);
    for (const piece of rowsAhead(map, tail, radius, 320)) piece();
    expect([...rowsAhead(map, tail, radius, 320)]).toEqual([]);
  });
});
