import { describe, expect, it } from "vitest";
import { controller, fittedWith } from "#machine/fields/controller";
import { cells, kvRpmPerVolt } from "#machine/fields/electric";
import { gears } from "#machine/fields/gears";

describe("the controller", () => {
  // Common practice, no source.
  it("starts with the band and the throttle of common practice", () => {
    expect(controller.entries.usableLowPercent.default).toBe(60);
    expect(controller.entries.usableHighPercent.default).toBe(90);
    expect(controller.entries.learned.entries.throttlePercent.default).toBe(50);
  });

  it("has learned nothing at first", () => {
    expect(controller.entries.learned.entries.motorRpm.default).toBeNull();
    expect(fittedWith.nullMeans).toBe("the parts fitted now");
  });

  it("remembers parts within the limits that the parts themselves have", () => {
    const { cells: then, kvRpmPerVolt: kvThen } = fittedWith.entries;
    expect([then.min, then.max]).toEqual([cells.min, cells.max]);
    expect([kvThen.min, kvThen.max]).toEqual([kvRpmPerVolt.min, kvRpmPerVolt.max]);
    expect(then.name).not.toBe(cells.name);
    const [{ driverTeeth }, stage] = [fittedWith.entries.secondStage.entries, gears.entries.secondStage.entries];
    expect([driverTeeth.min, driverTeeth.max]).toEqual([stage.driverTeeth.min, stage.driverTeeth.max]);
    expect(Object.keys(fittedWith.entries)).toEqual(
      "cells chemistry kvRpmPerVolt pinionTeeth mainTeeth bladeCount diameterMm chordMm secondStage".split(" "),
    );
  });
});
