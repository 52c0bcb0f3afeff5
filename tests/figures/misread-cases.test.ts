import { describe, expect, it } from "vitest";
import { figuresOf } from "#figures/figures";
import { explain } from "#figures/misread";
import { plantedCase } from "#figures/misread-cases";
import { demos } from "#machine/demos";
import { machineWith } from "./machines.ts";

describe("cases to puzzle over", () => {
  it("are laid at their own fault's door, for every demo machine, with at least five different faults", () => {
    for (const machine of demos) {
      const figures = figuresOf(machine);
      const keys = new Set<string>();
      for (let number = 0; number < 7; number++) {
        const planted = plantedCase(figures, number);
        if (!planted) continue;
        keys.add(planted.key);
        const [first] = explain(figures, planted.reading);
        expect(first).toMatchObject({ key: planted.key, fits: true });
        expect(planted.reading.rows).toHaveLength(machine.modes.length);
      }
      expect(keys.size).toBeGreaterThanOrEqual(5);
    }
  });

  it("are the same again for the same number, and go round", () => {
    const figures = figuresOf(machineWith({}));
    expect(plantedCase(figures, 1)).toEqual(plantedCase(figures, 1));
    expect(plantedCase(figures, 1)).toEqual(plantedCase(figures, 8));
  });

  it("begin with a tooth, and pass over what a machine can't show", () => {
    const figures = figuresOf(machineWith({}));
    expect(plantedCase(figures, 0)?.key).toBe("teeth");
    // With such a motor and pack nothing is ever out of reach: the third case is another one.
    const strong = figuresOf(machineWith({ "motor.kvRpmPerVolt": 1400, "pack.cellResistanceMilliohm": 1 }));
    expect(plantedCase(figures, 2)?.key).toBe("ceiling");
    expect(plantedCase(strong, 2)?.key).toBe("low-end");
    // The next case has the next place, so that nobody gets the same one twice.
    for (let number = 0; number < 7; number++) {
      const place = plantedCase(figures, number)?.place ?? -1;
      expect(plantedCase(figures, place + 1)?.place).not.toBe(place);
    }
  });
});
