/** Exercises of the page on readings that are wrong: poles miscounted, a tooth off, a cell missing. */
import { gearRatio } from "#model/gears";
import { openVoltage } from "#model/pack";
import { shownSpeed } from "#model/poles";
import { setSpeed } from "#model/reference";
import { relativeChange } from "#model/scaling";
import { amount, tell, work } from "../amount.ts";
import { drawCellVoltage, topRpm } from "../around.ts";
import { type Recipe, slip } from "../exercise.ts";

const polesMiscounted: Recipe = {
  id: "poles-miscounted",
  draw(hand, machine) {
    const pairs = hand.count(machine.motor.poles / 2, 2, 2);
    const told = Math.max(1, pairs + hand.pick([-3, -2, -1, 1, 2, 3]));
    if (told === pairs) return null;
    const [poles, polesSet] = [amount(2 * pairs), amount(2 * told)];
    const speed = amount(hand.near(topRpm(machine)), "rpm");
    const shown = work(shownSpeed, { polesSet, poles, speed }, "rpm");
    const error = work(relativeChange, { before: speed, after: shown }, "%");
    return {
      question: tell`A motor has ${poles} magnet poles, but the display was told ${polesSet}. The rotor really turns at ${speed}. By how many per cent is the display off, with a minus for too low?`,
      answer: error,
      steps: [shown, error],
      because: "The display divides by the poles it was told, so its error is the true count over the told one.",
      relative: 0.015,
      slips: [
        slip(
          "ratio-upside-down",
          100 * (told / pairs - 1),
          "Turn the fraction over: told more poles, a display shows less speed.",
        ),
        slip("shown-for-error", 100 + error.value, "That is what it shows as a share of the truth. How far off is it?"),
        slip(
          "poles-for-percent",
          2 * (pairs - told),
          "That is how many poles are miscounted. Which share of the speed is it?",
        ),
      ],
    };
  },
};

const whichPinion: Recipe = {
  id: "which-pinion",
  draw(hand, machine) {
    const believed = hand.count(machine.gears.pinionTeeth, 2, 9);
    const fitted = believed + hand.pick([-2, -1, 1, 2]);
    const main = amount(hand.count(Math.max(machine.gears.mainTeeth, 4 * believed), 6, 40), "teeth");
    const expected = amount(hand.near(topRpm(machine)), "rpm");
    const ratio = (teeth: number) => work(gearRatio, { pinionTeeth: amount(teeth, "teeth"), mainTeeth: main }, "");
    const [then, now] = [ratio(believed), ratio(fitted)];
    const motor = amount(expected.value * then.value, "rpm");
    const real = work(setSpeed, { throttle: amount(100, "%"), reference: motor, gearRatio: now }, "rpm");
    const measured = amount(Math.round(real.value), "rpm");
    return {
      question: tell`With a pinion of ${amount(believed, "teeth")} a mode should give ${expected}. You measure ${measured}, and the governor is not at its limit. How many teeth does the pinion really have?`,
      answer: amount(fitted, "teeth"),
      steps: [real],
      because: "The motor's speed is right, so measured over expected speed is real over believed teeth.",
      relative: 0,
      absolute: 0.4,
      slips: [
        slip(
          "ratio-upside-down",
          believed ** 2 / fitted,
          "A bigger pinion turns the rotor faster, a smaller one slower: turn the fraction over.",
        ),
        slip("as-believed", believed, "With so many teeth it would be as you expected."),
      ],
    };
  },
};

const cellMissing: Recipe = {
  id: "cell-missing",
  draw(hand, machine) {
    const cells = hand.count(machine.pack.cells, 1, 3);
    const cellVoltage = amount(drawCellVoltage(hand, machine), "V");
    const pack = (count: number) => work(openVoltage, { cells: amount(count), cellVoltage }, "V");
    const [whole, less] = [pack(cells), pack(cells - 1)];
    const change = work(relativeChange, { before: whole, after: less }, "%");
    const lost = amount(-change.value, "%");
    return {
      question: tell`You meant to fly ${amount(cells)} cells of ${cellVoltage} and took a pack with one cell less. By how many per cent does the fastest head speed without load fall?`,
      answer: lost,
      steps: [whole, less, change],
      because: "Without load, speed goes with the volts, and one cell is its share of them.",
      relative: 0.02,
      slips: [
        slip(
          "share-of-smaller",
          100 / (cells - 1),
          "You counted the cell against the smaller pack. The pack you meant to fly is the measure.",
        ),
        slip("volts-for-percent", cellVoltage.value, "Those are volts. Which share of the whole pack is one cell?"),
        slip("left-for-lost", 100 - lost.value, "That is what is left. How much is missing?"),
      ],
    };
  },
};

export const itReadsWrong = [polesMiscounted, whichPinion, cellMissing];
