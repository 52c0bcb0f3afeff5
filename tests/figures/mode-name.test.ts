import { describe, expect, it } from "vitest";
import { modeName } from "#figures/mode-name";
import { machineWith } from "./machines.ts";

describe("what a mode is called", () => {
  it("is its name, or its number where it has none", () => {
    const machine = machineWith({ "modes.1.name": "", "modes.2.name": "  " });
    expect([0, 1, 2, 3].map((mode) => modeName(machine, mode))).toEqual(["gentle", "2", "3", "4"]);
  });
});
