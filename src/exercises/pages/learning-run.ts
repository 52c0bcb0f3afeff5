/** Exercises of the page that rehearses the learning run. */

import { openCellVoltage } from "#model/ocv";
import { openVoltage } from "#model/pack";
import { learnedReference, setSpeed } from "#model/reference";
import { relativeChange } from "#model/scaling";
import { amount, tell, work } from "../amount.ts";
import { drawRatio, topRpm } from "../around.ts";
import { type Recipe, slip } from "../exercise.ts";

const storedReference: Recipe = {
  id: "stored-reference",
  draw(hand, machine) {
    const throttle = amount(hand.pick([40, 45, 50, 55, 60, 70]), "%");
    const ratio = drawRatio(hand, machine);
    const motorSpeed = amount(hand.near((topRpm(machine) * ratio * throttle.si) / 0.85), "rpm");
    const reference = work(learnedReference, { motorSpeed, throttle }, "rpm");
    return {
      question: tell`The controller learns at ${throttle} throttle and counts ${motorSpeed} at the motor. Which motor speed does it store as 100 %?`,
      answer: reference,
      steps: [reference],
      because: "It takes speed as proportional to throttle, so the whole is the part over its share.",
      slips: [
        slip(
          "multiplied-by-throttle",
          motorSpeed.value * throttle.si,
          "100 % must be more than was counted: divide by the throttle.",
        ),
        slip(
          "percent-for-share",
          motorSpeed.value / throttle.value,
          `Take the throttle as a share of one: ${throttle.value} % is 0.${throttle.value}.`,
        ),
        slip("throttle-forgotten", motorSpeed.value, "That is the speed at the learning throttle. 100 % is more."),
      ],
    };
  },
};

const afterLearning: Recipe = {
  id: "after-learning",
  draw(hand, machine) {
    const learnt = amount(hand.pick([40, 45, 50, 55]), "%");
    const counted = amount(hand.near((topRpm(machine) * learnt.si) / 0.85), "rpm");
    const throttle = amount(hand.whole(62, 90), "%");
    const reference = work(learnedReference, { motorSpeed: counted, throttle: learnt }, "rpm");
    const asked = work(setSpeed, { throttle, reference, gearRatio: amount(1) }, "rpm");
    return {
      question: tell`At ${learnt} throttle, while it learned, you measured ${counted} at the rotor. Which head speed does ${throttle} ask for afterwards?`,
      answer: asked,
      steps: [reference, asked],
      because: "Learned speed over learning throttle is 100 %; your throttle takes its share of that.",
      slips: [
        slip(
          "share-of-learning-speed",
          counted.value * throttle.si,
          "100 % is not the speed of the run, but what the run stands for at full throttle.",
        ),
        slip("stopped-at-reference", reference.value, "That is 100 %. The throttle asks for a share of it."),
        slip(
          "shares-upside-down",
          (counted.value * learnt.value) / throttle.value,
          "More throttle than in the run means more speed: turn the fraction over.",
        ),
      ],
    };
  },
};

const tiredPack: Recipe = {
  id: "tired-pack",
  draw(hand, { pack }) {
    const cells = amount(hand.count(pack.cells, 1, 2));
    const cell = (charge: number) =>
      amount(Math.round(100 * (openCellVoltage(pack.chemistry, charge) ?? 3.8)) / 100, "V");
    const [fullCell, tiredCell] = [cell(1), cell(hand.whole(35, 65) / 100)];
    const full = work(openVoltage, { cells, cellVoltage: fullCell }, "V");
    const tired = work(openVoltage, { cells, cellVoltage: tiredCell }, "V");
    const change = work(relativeChange, { before: tired, after: full }, "%");
    const low = work(relativeChange, { before: full, after: tired }, "%");
    const short = amount(-low.value, "%");
    return {
      question: tell`Speed in the learning run goes with the pack's volts. It should have ${fullCell} in each of ${cells} cells; yours have ${tiredCell}. By how many per cent is every head speed too low afterwards?`,
      answer: short,
      steps: [full, tired, low],
      because: "What the run stores is low by the missing share of volts, and so is every mode.",
      relative: 0.02,
      slips: [
        slip(
          "share-of-tired",
          change.value,
          "You counted the gap against the tired pack. The full one is the measure.",
        ),
        slip(
          "volts-for-percent",
          full.value - tired.value,
          "Those are volts. Which share of the full pack's volts is missing?",
        ),
        slip("rest-for-loss", 100 - short.value, "That is what is left of the speed. How much is missing?"),
      ],
    };
  },
};

export const learningRun = [storedReference, afterLearning, tiredPack];
