import { describe, expect, it } from "vitest";
import { gravity } from "#model/constants";
import { everydayEnergies, nearestEnergy } from "#model/energies";

const joules = (part: string) => everydayEnergies.find((e) => e.what.includes(part))!.joules;
const kinetic = (mass: number, speed: number) => 0.5 * mass * speed * speed;

describe("everyday energies", () => {
  it("are those of OpenStax College Physics, table 7.1 and example 10.9, within their rounding", () => {
    expect(joules("tennis")).toBeCloseTo(kinetic(0.0577, 100 / 3.6), 0);
    expect(Math.abs(joules("car at") / kinetic(1000, 90 / 3.6) - 1)).toBeLessThan(0.01);
    expect(joules("rescue")).toBe(526_000);
  });

  it("follow from the masses and speeds that their sources name", () => {
    expect(Math.abs(joules("cyclist") - kinetic(100, 20 / 3.6))).toBeLessThan(1);
    expect(Math.abs(joules("100 kg falling") - 100 * gravity * 10)).toBeLessThan(10);
    expect(joules("baseball")).toBeCloseTo(kinetic(0.145, 45), 0);
    expect(joules("cricket")).toBeCloseTo(kinetic(0.16, 40), 0);
    expect(joules("walking")).toBeCloseTo(kinetic(70, 1.4), 0);
    expect(joules("sprinting")).toBeCloseTo(kinetic(70, 8), 0);
    expect(joules("bag")).toBeCloseTo(gravity * 0.75, 1);
  });

  it("stand in order, each with a source", () => {
    const list = everydayEnergies.map((e) => e.joules);
    expect([...list].sort((a, b) => a - b)).toEqual(list);
    expect(everydayEnergies.every((e) => e.source.length > 3)).toBe(true);
  });

  it("offer the nearest in proportion", () => {
    // Two uniform blades of 0.15 kg and 0.8 m at 2000 rpm hold 1404 J, closed form.
    const near = nearestEnergy(1404)!;
    expect(near.energy.what).toContain("cyclist");
    expect(near.times).toBeCloseTo(0.91, 2);
    expect(nearestEnergy(0)).toBeNull();
    expect(nearestEnergy(Number.NaN)).toBeNull();
  });
});
