import { describe, expect, it } from "vitest";
import { bandLoad, bandLoadPick, carriedPlot, placePlot } from "#blocks/band-plots";
import { bandFacts, gripTable, placeTable } from "#blocks/band-tables";
import { modeChoice, modeChosen } from "#blocks/mode-choice";
import { pulsePlot } from "#blocks/pulse-plot";
import { figuresOf } from "#figures/figures";
import { answer, answersNow } from "#view/answers";
import { machineWith } from "../figures/machines.ts";
import { mounted, plain, wordsOf } from "./mounted.ts";

const trainer = figuresOf(machineWith({}));
const heavy = figuresOf(machineWith({ "airframe.massG": 20_000 }));

describe("the currents against throttle", () => {
  it("show the mode on the motor's curve, to be dragged in throttle", () => {
    const { state } = carriedPlot(trainer, 0, "hover");
    const own = trainer.bearings.point("hover", 0)!;
    const [handle] = state.handles!;
    expect(handle).toMatchObject({ path: "modes.0.headRpm", value: 1850, moves: "x", y: own.motorCurrent });
    expect(handle!.x! * handle!.scale!).toBeCloseTo(1850, 6);
    expect(state.zones?.map((zone) => zone.x)).toEqual([
      [null, 60],
      [90, null],
    ]);
    expect(state.curves.map((curve) => curve.key)).toEqual(["motor", "pack", "buffer"]);
  });

  it("say where the turn is in hover, and that there is none at full pitch", () => {
    expect(plain(wordsOf(carriedPlot(trainer, 0, "hover")))).toMatch(
      /least at about 6\d % throttle\. Slower than that it grows again/,
    );
    expect(wordsOf(carriedPlot(trainer, 0, "full-pitch"))).toContain("here the low end is a rest");
    expect(wordsOf(carriedPlot(heavy, 0, "hover"))).toContain("carries the machine");
    const slow = figuresOf(machineWith({ "modes.0.headRpm": 700 }));
    expect(wordsOf(carriedPlot(slow, 0, "hover"))).toContain("can't be held with this load");
  });

  it("stand on a page", () => {
    expect(mounted(carriedPlot(trainer, 0, "hover")).one("figure").dataset.plot).toBe("band-currents");
  });
});

describe("the pulses", () => {
  it("last for the duty, as high as the motor's current, and come to what the pack gives", () => {
    const { state } = pulsePlot(trainer, 0);
    const { duty, motorCurrent, packCurrent } = trainer.bearings.point("hover", 0)!;
    const blocks = state.curves.find(({ key }) => key === "pulses")!;
    expect(Array.from(blocks.xs).slice(0, 4)).toEqual([0, duty, duty, 1]);
    expect(Array.from(blocks.ys).slice(0, 4)).toEqual([motorCurrent, motorCurrent, 0, 0]);
    // The mean of the blocks, by their areas.
    const areas = Array.from(blocks.xs)
      .slice(1)
      .map((x, i) => (x - blocks.xs[i]!) * blocks.ys[i]!);
    expect(areas.reduce((sum, area) => sum + area, 0) / 3).toBeCloseTo(packCurrent, 9);
    expect(state.levels?.[0]?.at).toBe(packCurrent);
    expect(plain(state.words)).toContain(`${motorCurrent.toFixed(1)} A all the time`);
  });

  it("are not drawn where nobody hovers", () => {
    const { state } = pulsePlot(heavy, 0);
    expect([state.curves, state.levels]).toEqual([[], []]);
    expect(state.words).toContain("can't be held");
    expect(mounted(pulsePlot(trainer, 0)).one("figure").dataset.plot).toBe("pulses");
  });
});

describe("the currents against the pinion", () => {
  it("hatch the pinions that lie outside the band", () => {
    const { state } = placePlot(trainer, 0);
    const low = state.zones?.find(({ key }) => key === "low")?.x?.[0];
    // Throttle goes as one over the teeth: 13 teeth at 61.2 % make 60 % at 13.26.
    const throttle = trainer.number("throttle", 0)!;
    expect(low!).toBeCloseTo((13 * throttle) / 60, 1);
    const high = state.zones?.find(({ key }) => key === "high")?.x?.[1];
    expect(Math.abs(high! / ((13 * throttle) / 90) - 1)).toBeLessThan(0.02);
    expect(state.handles?.[0]).toMatchObject({ path: "gears.pinionTeeth", x: 13 });
    expect(wordsOf(placePlot(heavy, 0))).toContain("can't be held in hover");
  });

  it("are told in figures at a low, the present and a high place", () => {
    const { state } = placeTable(trainer, 0);
    expect(state.columns).toEqual(["", "18 teeth", "13 teeth", "10 teeth"]);
    const row = (title: string) => state.rows.find((each) => each.title.startsWith(title))?.cells.map(plain) ?? [];
    expect(row("motor current")[1]).toBe(`${trainer.number("hover-motor-current", 0)!.toFixed(1)} A`);
    const heats = row("current's heat").map(Number.parseFloat);
    expect(heats).toEqual([...heats].sort((a, b) => b - a));
    const motor = row("motor's heat").map(Number.parseFloat);
    expect(motor).toEqual([...motor].sort((a, b) => a - b));
    expect(plain(state.words)).toContain(`from ${row("current's heat")[1]} to ${row("current's heat")[0]} in hover`);
    expect(placeTable(heavy, 0).state.words).toBe("");
    // A machine that is geared for 45 % already has no lower place to be compared with.
    const low = placeTable(figuresOf(machineWith({ "gears.pinionTeeth": 18 })), 0).state;
    expect([low.columns[1], low.words]).toEqual(["18 teeth", ""]);
  });
});

describe("what the governor has to work with", () => {
  it("compares the mode with both ends of the band", () => {
    const { state } = gripTable(trainer, 0);
    expect(state.columns.slice(2)).toEqual(["bottom of the band", "top of the band"]);
    const row = (title: string) => state.rows.find((each) => each.title.startsWith(title))?.cells.map(plain) ?? [];
    expect(row("throttle").slice(1)).toEqual(["60 %", "90 %"]);
    const [, low, high] = row("the blades store").map(Number.parseFloat);
    // Energy goes with the square of speed: (60/90)².
    expect(low! / high!).toBeCloseTo(4 / 9, 2);
    expect(state.words).toContain("no reason");
    const coarse = figuresOf(machineWith({ "controller.dutySteps": 64 }));
    expect(gripTable(coarse, 0).state.words).toContain("hunts");
  });
});

describe("the first question", () => {
  it("is answered by the chain, or says why not", () => {
    const facts = bandFacts(trainer, 0);
    expect(facts.motor).toBeCloseTo(trainer.number("hover-motor-current", 0)!, 9);
    expect(facts.words).toContain(`${(facts.motor! / facts.pack!).toFixed(1)} times`);
    expect(bandFacts(heavy, 0)).toMatchObject({ motor: null, pack: null });
  });

  it("begins with the mode that the page says, until the reader chooses another", () => {
    expect([modeChosen(trainer.machine, {}), modeChosen(trainer.machine, {}, 0)]).toEqual([2, 0]);
    expect(modeChosen(trainer.machine, { mode: 1 }, 0)).toBe(1);
    expect(modeChoice(trainer.machine, {}, 0).state.chosen).toBe(0);
  });
});

it("the load is one of two", () => {
  expect(bandLoad({})).toBe("hover");
  const page = mounted(bandLoadPick(answersNow()));
  page.all<HTMLInputElement>("input[value=full-pitch]")[0]!.click();
  expect(bandLoad(answersNow())).toBe("full-pitch");
  answer("band-load", null);
});
