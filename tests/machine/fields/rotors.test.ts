import { describe, expect, it } from "vitest";
import { mainRotor, tailRotor } from "#machine/fields/rotors";

describe("rotors", () => {
  it("have a speed limit only where one is printed", () => {
    expect(mainRotor.entries.ratedRpm.kind).toBe("nullable number");
  });

  it("have the sections whose thickness the names say", () => {
    const found = mainRotor.entries.bladeSection.choices.map(({ value, name }) => [value, name.match(/\d+/)?.[0]]);
    expect(found).toEqual([
      ["symmetric-12", "12"],
      ["symmetric-15", "15"],
    ]);
  });

  it("let the tail rotor be smaller than the main one everywhere on the sliders", () => {
    expect(tailRotor.entries.diameterMm.high).toBeLessThan(mainRotor.entries.diameterMm.high / 3);
    expect(tailRotor.entries.armMm.high).toBeGreaterThan(mainRotor.entries.diameterMm.high / 2);
  });
});
