/** Exercises of the page that follows the turns from the motor's Kv to the rotor. */
import { gearRatio } from "#model/gears";
import { noLoadSpeed } from "#model/motor";
import { openVoltage } from "#model/pack";
import { setSpeed } from "#model/reference";
import { relativeChange } from "#model/scaling";
import { amount, tell, work } from "../amount.ts";
import { drawCellVoltage, drawRatio } from "../around.ts";
import { type Recipe, slip } from "../exercise.ts";

const teethRatio: Recipe = {
  id: "gear-ratio",
  draw(hand, { gears }) {
    const pinionTeeth = amount(hand.count(gears.pinionTeeth, 2, 8), "teeth");
    const mainTeeth = amount(hand.count(Math.max(gears.mainTeeth, 3 * pinionTeeth.value), 6, 30), "teeth");
    const ratio = work(gearRatio, { pinionTeeth, mainTeeth }, "");
    return {
      question: tell`The pinion has ${pinionTeeth}, the main gear ${mainTeeth}. How often does the motor turn while the rotor turns once?`,
      answer: ratio,
      steps: [ratio],
      because: "Each tooth of the main gear needs one of the pinion, so the small gear turns more often.",
      slips: [
        slip(
          "ratio-upside-down",
          1 / ratio.value,
          "That is the rotor's turns for one of the motor. Turn the fraction over.",
        ),
        slip("difference-for-ratio", mainTeeth.value - pinionTeeth.value, "Gears divide; they don't subtract."),
        slip(
          "sum-for-ratio",
          (mainTeeth.value + pinionTeeth.value) / pinionTeeth.value,
          "Only the main gear's teeth go on top. The sum belongs to the distance of the shafts.",
        ),
      ],
    };
  },
};

const kvToHeadSpeed: Recipe = {
  id: "kv-to-head-speed",
  draw(hand, machine) {
    const { pack, motor } = machine;
    const cells = pack.cells;
    const volts = amount(Number((cells * drawCellVoltage(hand, machine)).toFixed(1)), "V");
    const speedConstant = amount(hand.near(motor.kvRpmPerVolt), "rpm/V");
    const ratio = amount(drawRatio(hand, machine));
    const noLoadCurrent = amount(hand.near(motor.noLoadCurrentA, { otherwise: 1 }), "A");
    const resistance = amount(hand.near(motor.resistanceMilliohm + 20), "mΩ");
    const speed = work(
      noLoadSpeed,
      { speedConstant, openVoltage: volts, noLoadCurrent, resistance, gearRatio: ratio },
      "rpm",
    );
    return {
      question: tell`A motor of ${speedConstant} runs on ${amount(cells)} cells that rest at ${volts} together, through a gear ratio of ${ratio}. With nothing to drive it takes ${noLoadCurrent} through ${resistance}. What is the head speed at full duty?`,
      answer: speed,
      steps: [speed],
      because: "Kv counts turns for each volt that is left for turning, and the gears divide them.",
      slips: [
        slip(
          "cells-for-volts",
          (speedConstant.value * cells) / ratio.value,
          "You counted cells. Kv wants volts: how many do they have together?",
        ),
        slip(
          "gears-forgotten",
          speed.value * ratio.value,
          "That is the motor. The gears divide it on the way to the rotor.",
        ),
        slip(
          "ratio-upside-down",
          speed.value * ratio.value ** 2,
          "The rotor turns slower than the motor: divide by the gear ratio.",
        ),
        slip(
          "volts-divided",
          speedConstant.value / volts.value / ratio.value,
          "More volts turn the motor faster: multiply by them.",
        ),
      ],
    };
  },
};

const oneToothMore: Recipe = {
  id: "one-tooth-more",
  draw(hand, { gears }) {
    const before = hand.count(gears.pinionTeeth, 2, 8);
    const main = amount(hand.count(Math.max(gears.mainTeeth, 3 * before), 4, 30), "teeth");
    const motor = amount(1000 * hand.whole(20, 30), "rpm");
    const [pinion, bigger] = [amount(before, "teeth"), amount(before + 1, "teeth")];
    const headSpeed = (pinionTeeth: typeof pinion) => {
      const ratio = work(gearRatio, { pinionTeeth, mainTeeth: main }, "");
      return work(setSpeed, { throttle: amount(100, "%"), reference: motor, gearRatio: ratio }, "rpm");
    };
    const [slow, fast] = [headSpeed(pinion), headSpeed(bigger)];
    const change = work(relativeChange, { before: slow, after: fast }, "%");
    return {
      question: tell`The pinion gets one tooth more: ${bigger} in place of ${pinion}, on a main gear of ${main}. The motor keeps its speed. By how many per cent does the rotor turn faster?`,
      answer: change,
      steps: [slow, fast, change],
      because: "Head speed goes with the pinion's teeth, so one tooth is worth one part in the old count.",
      relative: 0.015,
      slips: [
        slip(
          "share-of-main-gear",
          100 / main.value,
          "You counted the tooth against the main gear. It joined the pinion.",
        ),
        slip(
          "share-of-new",
          100 / bigger.value,
          "You took the share of the new count. A rise is a share of what was before.",
        ),
        slip(
          "not-the-change",
          100 + change.value,
          "That is the new speed as a share of the old one. How much of it is new?",
        ),
      ],
    };
  },
};

const oneCellMore: Recipe = {
  id: "one-cell-more",
  draw(hand, machine) {
    const cells = hand.count(machine.pack.cells, 1, 2);
    const cellVoltage = amount(drawCellVoltage(hand, machine), "V");
    const speedConstant = amount(hand.near(machine.motor.kvRpmPerVolt), "rpm/V");
    const ratio = amount(drawRatio(hand, machine));
    const none = { noLoadCurrent: amount(0, "A"), resistance: amount(0, "mΩ") };
    const volts = work(openVoltage, { cells: amount(1), cellVoltage }, "V");
    const rise = work(noLoadSpeed, { speedConstant, openVoltage: volts, ...none, gearRatio: ratio }, "rpm");
    return {
      question: tell`You go from ${amount(cells)} to ${amount(cells + 1)} cells of ${cellVoltage}, with ${speedConstant} and a gear ratio of ${ratio}. Leave losses aside. How many rpm does the fastest head speed gain?`,
      answer: rise,
      steps: [volts, rise],
      because: "Only the new cell's volts count for the gain, and the gears divide what Kv makes of them.",
      slips: [
        slip(
          "gears-forgotten",
          rise.value * ratio.value,
          "That is what the motor gains. The gears divide it on the way to the rotor.",
        ),
        slip("cells-for-volts", speedConstant.value / ratio.value, "One cell is not one volt: how many does it have?"),
        slip(
          "total-for-gain",
          rise.value * (cells + 1),
          "That is the new speed as a whole. Only the gain is asked for.",
        ),
      ],
    };
  },
};

export const fromKvToHeadSpeed = [teethRatio, kvToHeadSpeed, oneToothMore, oneCellMore];
