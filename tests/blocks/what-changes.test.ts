import { describe, expect, it } from "vitest";
import { whatChanges } from "#blocks/what-changes";
import { defaultMachine } from "#machine/machine";
import { machineWith } from "../figures/machines.ts";
import { leavesElements, mounted, plain, wordsOf } from "./mounted.ts";

const names = ["no-load-head-speed", "motor-speed", "electrical-speed"] as const;
const poles = (machine = defaultMachine, others = [14]) => whatChanges(machine, "motor.poles", others, names, 1);

describe("what one field changes", () => {
  it("is a table of figures, now and with other values", () => {
    const { all, one } = mounted(poles());
    expect(one("caption").textContent).toBe("What changes when only magnet poles changes");
    expect(all("thead th").map((each) => each.textContent)).toEqual(["figure", "now, 10", "with 14"]);
    // f = n p / 120: 19,385 rpm of the motor with 5 and 7 pairs of magnets.
    const cells = [...all("tbody tr")[2]!.querySelectorAll("td")].map((each) => plain(each.textContent));
    expect(cells).toEqual(["96,923 rpm", "135,692 rpm"]);
  });

  it("says in words what stays the same", () => {
    const { all } = mounted(poles());
    expect(all("tr.is-same")).toHaveLength(2);
    expect(plain(all("tr.is-same td")[0]?.textContent)).toMatch(/^[\d,]+ rpm$/);
    expect(all("tr.is-same td")[1]?.textContent).toBe("the same");
    expect(plain(wordsOf(poles()))).toMatch(
      /motor speed at the set speed: 19,385 rpm, the same\. electrical speed.*now, 10 96,923 rpm, with 14 135,692 rpm\.$/,
    );
  });

  it("leaves out a value that the machine has already", () => {
    expect(poles(defaultMachine, [10, 12]).state.columns).toEqual(["now, 10", "with 12"]);
  });

  it("follows the machine, and rests while nothing it shows has changed", () => {
    const { host, all, update } = mounted(poles());
    expect(leavesElements(host, () => update(poles(machineWith({ "pack.capacityMah": 4000 }))))).toBe(true);
    update(poles(machineWith({ "motor.poles": 8 })));
    expect(all("thead th")[1]?.textContent).toBe("now, 8");
  });
});
