import { describe, expect, it } from "vitest";
import { compareGears, teethMore } from "#blocks/gear-compare";
import { pinionTurnPlot, turnFacts } from "#blocks/pinion-turn-plot";
import { figuresOf } from "#figures/figures";
import { machineWith } from "../figures/machines.ts";
import { mounted, plain } from "./mounted.ts";

const trainer = figuresOf(machineWith({}));
const other = figuresOf(machineWith({ "gears.pinionTeeth": 15, "gears.mainTeeth": 118 }));

describe("two pairs of gears side by side", () => {
  it("waits for the second", () => {
    const { state } = compareGears(trainer, null, 2);
    expect(state.columns).toEqual(["", "13 on 120"]);
    expect(state.words).toBe("Choose a pair on the map: its column stands here.");
  });

  it("gives each its figures and the difference with its sign", () => {
    const { state } = compareGears(trainer, other, 2);
    expect(state.columns).toEqual(["", "13 on 120", "15 on 118", "difference"]);
    const row = (title: string) => state.rows.find((each) => each.title.startsWith(title))?.cells.map(plain);
    // 120/13 and 118/15, by definition.
    expect(row("ratio")).toEqual(["9.23", "7.87", "−1.36"]);
    expect(row("head speed is held")).toEqual(["full pitch too", "full pitch too", ""]);
    // 2450 rpm times the ratio.
    expect(row("motor speed")?.slice(0, 2)).toEqual(["22,615 rpm", "19,273 rpm"]);
    const speeds = [trainer, other].map((each) => `${Math.round(each.number("ceiling-full-pitch", 2)!)}`);
    expect(
      row("most the rotor")
        ?.slice(0, 2)
        .map((text) => text.replace(/\D/g, "")),
    ).toEqual(speeds);
    expect(row("most the rotor")?.[2]).toMatch(/^\+3\d\d rpm$/);
    expect(state.words).toMatch(/^15 on 118 means \+3\d\d/);
  });

  it("says so where one of them can't fly the mode, and bears a what-if with fewer modes", () => {
    const slow = figuresOf(machineWith({ "gears.pinionTeeth": 9 }));
    const { state } = compareGears(trainer, slow, 2);
    expect(state.rows.find((row) => row.title.startsWith("hover time"))?.cells[1]).toBe("not possible");
    expect(state.rows.find((row) => row.title.startsWith("hover time"))?.cells[2]).toBe("–");
    const few = figuresOf({ ...other.machine, modes: other.machine.modes.slice(0, 1) });
    const throttle = compareGears(trainer, few, 2).state.rows.find((row) => row.title.startsWith("throttle"));
    expect(plain(throttle?.cells[1])).toBe(`${Math.round(few.number("throttle", 0)!)} %`);
  });
});

describe("two teeth more", () => {
  it("heat what the chain says they heat", () => {
    const heats = (figures: typeof trainer) => {
      const { copperHeat, noLoadHeat, controllerHeat } = figures.bearings.point("hover", 2)!;
      return [copperHeat + noLoadHeat, controllerHeat] as const;
    };
    const fifteen = figuresOf(machineWith({ "gears.pinionTeeth": 15 }));
    const [motor, controller] = [0, 1].map((i) => heats(fifteen)[i]! > heats(trainer)[i]!);
    expect([motor, controller]).toEqual([false, true]);
    expect(teethMore(trainer, 2, 2).right).toBe("controller");
    // A motor that idles for nothing only has its copper to heat.
    const easy = figuresOf(machineWith({ "motor.noLoadCurrentA": 0 }));
    expect(teethMore(easy, 2, 2).right).toBe("both");
    expect(teethMore(easy, 2, -1).right).toBe("neither");
    const none = figuresOf(machineWith({ "gears.pinionTeeth": 9 }));
    expect(teethMore(none, 2, 2).words).toContain("nothing to compare");
  });
});

describe("the turn", () => {
  it("is marked on the plot, and the zone of too much current begins where it is said", () => {
    const { state } = pinionTurnPlot(trainer, 2);
    const { best, tooMuch, words } = turnFacts(trainer, 2);
    expect(state.points?.[0]?.x).toBe(best);
    expect(state.zones?.[0]?.x?.[0]).toBe(tooMuch! - 0.5);
    expect(state.words).toContain(words);
    expect(state.handles?.[0]).toMatchObject({ path: "gears.pinionTeeth", x: 13 });
  });

  it("takes more than 35 times the capacity from the pinion on that it names", () => {
    // I = (V - k G w) / R at full duty: M. Drela, First-Order DC Electric Motor Model, MIT (2007). 35 C: common practice.
    const current = (pinion: number) => {
      const figures = figuresOf(machineWith({ "gears.pinionTeeth": pinion }));
      const { train } = figures.rig;
      const resistance = train.motorResistance + train.controllerResistance + train.packResistance;
      const speed = (figures.number("ceiling-full-pitch", 2)! * Math.PI) / 30;
      return (train.openVoltage - train.torqueConstant * train.gearRatio * speed) / resistance;
    };
    const limit = (35 * trainer.machine.pack.capacityMah) / 1000;
    const { tooMuch } = turnFacts(trainer, 2);
    expect(current(tooMuch!)).toBeGreaterThan(limit);
    expect(current(tooMuch! - 1)).toBeLessThan(limit);
    const easy = figuresOf(machineWith({ "pack.capacityMah": 50_000 }));
    expect(turnFacts(easy, 2)).toMatchObject({ tooMuch: null });
    expect(turnFacts(easy, 2).words).toContain("The pack bears the current of all of them.");
  });

  it("is not there where the pack gives whatever is asked for", () => {
    const strong = figuresOf(
      machineWith({
        "pack.cellResistanceMilliohm": 0.1,
        "pack.leadResistanceMilliohm": 0,
        "pack.capacityMah": 50_000,
        "motor.resistanceMilliohm": 0.5,
        "controller.resistanceMilliohm": 0,
      }),
    );
    expect(turnFacts(strong, 0)).toMatchObject({ best: null });
    expect(turnFacts(strong, 0).words).toContain("each tooth still adds a little");
    expect(pinionTurnPlot(strong, 0).state.points).toEqual([]);
  });

  it("stands on a page", () => {
    const page = mounted(pinionTurnPlot(trainer, 2));
    expect(page.one("figure").dataset.plot).toBe("pinion-turn");
  });
});
