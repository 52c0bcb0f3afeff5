import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { learningChecklist } from "#blocks/learning-checklist";
import { learningFacts, learningGuess, learningPlot } from "#blocks/learning-run";
import { learningInputs, learningSetup } from "#blocks/learning-setup";
import { learningStored } from "#blocks/learning-stored";
import { storedBy } from "#flights/rehearsal";
import { properLearning } from "#flights/scenarios";
import { createBench } from "#machine/bench";
import { answer, answersNow } from "#view/answers";
import { machineWith } from "../figures/machines.ts";
import { leavesElements, mounted, plain, wordsOf } from "./mounted.ts";

const machine = machineWith({});
const half = { "learning-pack": 50 };
const guessed = { ...half, "learning-guess-pack": "high" };

beforeEach(() => {
  for (const id of Object.keys(answersNow())) answer(id, null);
  // Where nothing tells what is on the screen, all is flown at once.
  vi.stubGlobal("IntersectionObserver", undefined);
});
afterEach(() => vi.unstubAllGlobals());

describe("how the run is made", () => {
  it("is as it should be until a line is unticked, and again when it is ticked", () => {
    const block = mounted(learningInputs(machine, answersNow()));
    expect(learningSetup(machine, answersNow())).toEqual(properLearning);
    const ticks = block.all<HTMLInputElement>("input[type=checkbox]");
    expect(ticks.map((tick) => tick.checked)).toEqual([true, true, true, true, true]);
    for (const tick of ticks) tick.click();
    expect(learningSetup(machine, answersNow())).toEqual({
      chargePercent: 50,
      pitchDeg: 5,
      swingDeg: 4,
      complete: false,
      seconds: 8,
    });
    expect(leavesElements(block.host, () => block.update(learningInputs(machine, answersNow())))).toBe(true);
    expect(ticks.map((tick) => tick.checked)).toEqual([false, false, false, false, false]);
    expect(plain(block.one("[role=status]").textContent)).toBe(
      "Not as it should be: the pack stands at 50 %, 5.0° of pitch are left in, the hand moves the pitch by 4.0°, the blades are off and you stop after 8 s.",
    );
    for (const tick of ticks) tick.click();
    expect(learningSetup(machine, answersNow())).toEqual(properLearning);
  });

  it("has sliders that end at what the machine has, and take the tick with them", () => {
    const block = mounted(
      learningInputs(
        machineWith({ "modes.0.collectiveMaxDeg": 4, "modes.1.collectiveMaxDeg": 4, "modes.2.collectiveMaxDeg": 6 }),
        {},
      ),
    );
    expect(block.one<HTMLInputElement>('[data-slip="pitch"] input[type=range]').max).toBe("6");
    const held = block.one<HTMLInputElement>('[data-slip="time"] input[type=range]');
    held.value = "15";
    held.dispatchEvent(new Event("input"));
    block.update(learningInputs(machine, answersNow()));
    expect(block.one<HTMLInputElement>('[data-slip="time"] input[type=checkbox]').checked).toBe(true);
    held.value = "14";
    held.dispatchEvent(new Event("input"));
    block.update(learningInputs(machine, answersNow()));
    // 15 to 20 s: common practice.
    expect(block.one<HTMLInputElement>('[data-slip="time"] input[type=checkbox]').checked).toBe(false);
    expect(plain(block.one(".learning-end").textContent)).toBe("you stop after 14 s");
  });

  it("takes no answer that lies outside", () => {
    expect(learningSetup(machine, { "learning-pack": 3, "learning-time": "x" })).toEqual(properLearning);
  });
});

describe("what will be stored", () => {
  it("is asked only when something is wrong, and the run waits for it", () => {
    expect(learningGuess(machine, {})).toBeNull();
    expect(learningPlot(machine, null, {}).state.go).toBe(true);
    expect(learningPlot(machine, null, half).state.go).toBe(false);
    expect(wordsOf(learningPlot(machine, null, half))).toMatch(/as soon as you have guessed/);
    expect(learningPlot(machine, null, guessed).state.go).toBe(true);
    expect(learningGuess(machine, half)!.state.ask).toMatch(/^This time the pack isn't full\. What does/);
    // Another combination is another question; a slider is not.
    expect(learningPlot(machine, null, { ...guessed, "learning-pack": 70 }).state.go).toBe(true);
    expect(learningPlot(machine, null, { ...guessed, "learning-pitch": 5 }).state.go).toBe(false);
  });

  it("is answered with the machine's own figures", () => {
    const stored = storedBy(machine, { ...properLearning, chargePercent: 50 });
    if (!("off" in stored)) throw new Error(stored.words);
    const share = (-100 * stored.off).toFixed(1);
    const reply = plain(wordsOf(learningGuess(machine, guessed)!));
    expect(reply).toContain(`That is ${share} % too low.`);
    expect(reply).toMatch(
      /The answer: “too little.*”.*In sporty you ask for 2,450 rpm, and the head turns 2,2\d\d rpm/,
    );
    const short = learningGuess(machine, { "learning-time": 8, "learning-guess-time": "nothing" })!;
    expect(short.state.right).toBe("nothing");
    expect(plain(wordsOf(short))).toMatch(/Held for 8 s; it takes 15 to 20 s\. Nothing is stored/);
  });

  it("shows the run beside the right one, which ends later and faster", () => {
    const words = plain(wordsOf(learningPlot(machine, null, guessed)));
    const speeds = [...words.matchAll(/the head turns at ([\d,]+) rpm/gi)].map((m) => Number(m[1]!.replace(",", "")));
    expect(speeds).toHaveLength(2);
    expect(speeds[0]).toBeLessThan(speeds[1]! - 100);
  });

  it("is the questions' answer once they are answered, and costs nothing before", () => {
    expect(learningFacts(machine, 2, false).halfPack).toBeNull();
    const facts = learningFacts(machine, 2, true);
    expect(facts.heaviest).toBe("pack");
    expect(facts.replies.pitch).not.toMatch(/%/);
    expect(facts.halfPack! / 2450).toBeLessThan(0.93);
    expect(plain(facts.replies.pack)).toMatch(
      /one to one\. Half a pack: \d\.\d % too low\. .* No blades: 0\.\d % too high\./,
    );
  });
});

describe("what every mode then does", () => {
  it("stays hidden until the reader has guessed", () => {
    const block = mounted(learningStored(machine, half));
    expect(plain(block.one("table").textContent)).toContain("2,450…");
    expect(block.one(".learning-take").hidden).toBe(true);
    block.update(learningStored(machine, guessed));
    expect(plain(block.one("table").textContent)).toMatch(/2,4502,2\d\d−2\d\d\+\d+/);
  });

  it("can be taken over into the machine, as one step of undo", () => {
    const bench = createBench(machine);
    const block = mounted(learningStored(machine, guessed), bench);
    const button = block.button("put this reference into my machine");
    button.click();
    const { learned } = bench.now.controller;
    expect(learned.motorRpm! / 12_586).toBeCloseTo(1, 2);
    expect(learned.fittedWith).toMatchObject({ cells: 6, pinionTeeth: 13 });
    block.update(learningStored(bench.now, guessed));
    expect(button.disabled).toBe(true);
    expect(block.one(".learning-take [role=status]").textContent).toMatch(/Undo/);
    bench.undo();
    expect(bench.now).toEqual(machine);
    block.update(learningStored(bench.now, guessed));
    expect(button.disabled).toBe(false);
  });

  it("warns of a rotor that lifts, and stays as before when nothing was stored", () => {
    const lifts = { "learning-pitch": 8, "learning-guess-pitch": "low" };
    expect(plain(wordsOf(learningStored(machine, lifts)))).toMatch(/the rotor lifts \d+ % of the weight/);
    const lifted = mounted(learningStored(machine, lifts));
    expect(plain(lifted.one(".learning-lift").textContent)).toMatch(/^At the pitch of this run/);
    lifted.update(learningStored(machine, guessed));
    expect(lifted.one(".learning-lift").hidden).toBe(true);
    const short = { "learning-time": 8, "learning-guess-time": "low" };
    const block = mounted(learningStored(machine, short));
    expect(block.one("tbody").textContent).toContain("as before");
    expect(block.one(".learning-take").hidden).toBe(true);
  });
});

describe("the list for the field", () => {
  it("keeps its ticks, counts them, and starts over", () => {
    const block = mounted(learningChecklist({}));
    const boxes = block.all<HTMLInputElement>("input");
    expect(boxes).toHaveLength(14);
    expect(plain(block.one("li").textContent)).toMatch(/pinion is out of mesh.*Turn the main gear itself/);
    boxes[0]!.click();
    block.update(learningChecklist(answersNow()));
    boxes[2]!.click();
    block.update(learningChecklist(answersNow()));
    expect(boxes.map((box) => box.checked).filter(Boolean)).toHaveLength(2);
    expect(block.one("[role=status]").textContent).toBe("2 of 14 ticked.");
    block.button("start over").click();
    block.update(learningChecklist(answersNow()));
    expect(block.one("[role=status]").textContent).toBe("0 of 14 ticked.");
  });
});
