import { describe, expect, it } from "vitest";
import { say } from "#blocks/say";
import { machineWith } from "../figures/machines.ts";
import { plain } from "./mounted.ts";

describe("short texts for the prose", () => {
  it("are the charge, a value, a mode's name and a field's", () => {
    expect(plain(say.charge(machineWith({ "pack.chargePercent": 62.4 })))).toBe("62 %");
    expect(plain(say.value(2310.4, "rpm"))).toBe("2,310 rpm");
    expect(say.value(null, "rpm")).toBe("cannot be held");
    expect(say.mode(machineWith({}), 1)).toBe("club");
    expect(say.mode(machineWith({ "modes.1.name": "" }), 1)).toBe("2");
    expect(say.field("gears.pinionTeeth")).toBe("Pinion");
    expect(() => say.field("gears.teeth")).toThrow(/no field/);
  });
});
