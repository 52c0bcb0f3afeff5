import { describe, expect, it } from "vitest";
import { matchedCurrent } from "#blocks/matched";
import { secondMachine } from "#blocks/second-machine";
import { createBench } from "#machine/bench";
import { machineWith, number } from "../figures/machines.ts";
import { mounted, plain, wordsOf } from "./mounted.ts";

const start = () => {
  const bench = createBench(machineWith({}));
  const page = mounted(secondMachine(bench.now, bench.whatIf), bench);
  bench.subscribe(() => page.update(secondMachine(bench.now, bench.whatIf)));
  return page;
};

describe("the second machine on the bench", () => {
  it("starts with one tap: two cells more and the Kv to match, in one step of undo", () => {
    const { bench, button, one } = start();
    expect(one("table").classList).toContain("is-alone");
    button("8 cells (two more), Kv to match").click();
    expect(bench.whatIf?.pack.cells).toBe(8);
    expect(bench.whatIf?.motor.kvRpmPerVolt).toBe(840);
    expect(bench.now.pack.cells).toBe(6);
    expect(one("table").classList).not.toContain("is-alone");
    expect(one(".second-words").textContent).toMatch(/differ in: cells in series, capacity, .*motor Kv/);
    bench.undo();
    expect(bench.whatIf).toBeNull();
  });

  it("can be a copy, change places, and be dropped", () => {
    const { bench, button, one } = start();
    button("a copy, to change").click();
    expect(bench.whatIf).toEqual(bench.now);
    expect(one(".second-words").textContent).toContain("twins");
    bench.set("gears.pinionTeeth", 15, { machine: "what-if" });
    button("swap the two").click();
    expect([bench.now.gears.pinionTeeth, bench.whatIf?.gears.pinionTeeth]).toEqual([15, 13]);
    button("drop the what-if").click();
    expect(bench.whatIf).toBeNull();
    expect(button("swap the two").hidden).toBe(true);
  });

  it("is changed where it stands, and the first one stays", () => {
    const { bench, one } = start();
    bench.startWhatIf();
    const dial = one<HTMLInputElement>('td[data-machine="what-if"] [data-input="gears.pinionTeeth"] input');
    dial.dispatchEvent(new KeyboardEvent("keydown", { key: "ArrowUp", bubbles: true, cancelable: true }));
    expect([bench.now.gears.pinionTeeth, bench.whatIf?.gears.pinionTeeth]).toEqual([13, 14]);
    expect(dial.value).toBe("14");
  });

  it("is refused in words where the record has no room for it", () => {
    const bench = createBench(machineWith({ "motor.kvRpmPerVolt": 22 }));
    const { button, one } = mounted(secondMachine(bench.now, null), bench);
    button("8 cells (two more), Kv to match").click();
    expect(bench.whatIf).toBeNull();
    expect(plain(one(".input-problem").textContent)).toMatch(/Kv.*16\.5/);
  });

  it("says whether there is one", () => {
    expect(wordsOf(secondMachine(machineWith({}), null))).toMatch(/^One machine/);
    expect(wordsOf(secondMachine(machineWith({}), machineWith({})))).toMatch(/^Two machines/);
  });
});

describe("the current that is asked for before the second machine stands there", () => {
  it("is that of the proposal, with a scale that holds it and the first one's", () => {
    const machine = machineWith({});
    const { cells, current, scale } = matchedCurrent(machine, 2);
    const now = number(machine, "hover-pack-current", 2);
    expect(cells).toBe(8);
    expect(current).toBeGreaterThan(0.7 * now);
    expect(current).toBeLessThan(0.75 * now);
    expect(scale).toBeGreaterThan(now);
  });

  it("is none where the hover can't be held", () => {
    expect(matchedCurrent(machineWith({ "motor.kvRpmPerVolt": 300 }), 2).current).toBeNull();
  });
});
