import { describe, expect, it } from "vitest";
import { demos, outgrownDemo } from "#machine/demos";
import { defaultMachine } from "#machine/machine";
import { withValue } from "#machine/paths";
import { machineTitle } from "#view/machine-name";

describe("what a machine is called", () => {
  it("is a demo's name while it has that demo's parts, whatever is wished of it", () => {
    for (const demo of demos) expect(machineTitle(demo)).toBe(demo.name);
    for (const [path, value] of [
      ["pack.chargePercent", 40],
      ["modes.0.headRpm", 1700],
      ["place.temperatureC", 5],
      ["controller.learned.throttlePercent", 60],
    ] as const) {
      expect(machineTitle(withValue(defaultMachine, path, value)), path).toBe(defaultMachine.name);
    }
  });

  it("says so when parts are others, and leaves a name of its owner's alone", () => {
    const grown = withValue(defaultMachine, "pack.cells", 12);
    expect(outgrownDemo(grown)).toBe(defaultMachine);
    expect(machineTitle(grown)).toBe("6-cell club trainer, changed");
    expect(machineTitle(withValue(grown, "name", "The tall one"))).toBe("The tall one");
    expect(machineTitle(withValue(grown, "name", ""))).toBe("a machine without a name");
  });
});
