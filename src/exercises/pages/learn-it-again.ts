/** Exercises of the page on a reference that was learned with other parts. */

import type { Machine } from "#machine/machine";
import { gearRatio } from "#model/gears";
import { setSpeed, throttleForSpeed } from "#model/reference";
import { relativeChange, squareLaw } from "#model/scaling";
import { amount, tell, work } from "../amount.ts";
import { topRpm } from "../around.ts";
import { type Recipe, slip } from "../exercise.ts";
import type { Hand } from "../hand.ts";

/** A pinion near the machine's, another one or two teeth away, and a main gear for both. */
function drawPinions(hand: Hand, { gears }: Machine) {
  const then = hand.count(gears.pinionTeeth, 2, 9);
  const main = amount(hand.count(Math.max(gears.mainTeeth, 4 * then), 6, 40), "teeth");
  const [pinionThen, pinionNow] = [amount(then, "teeth"), amount(then + hand.pick([-2, -1, 1, 2]), "teeth")];
  return {
    pinionThen,
    pinionNow,
    main,
    ratioThen: work(gearRatio, { pinionTeeth: pinionThen, mainTeeth: main }, ""),
    ratioNow: work(gearRatio, { pinionTeeth: pinionNow, mainTeeth: main }, ""),
  };
}

const staleSpeed: Recipe = {
  id: "stale-speed",
  draw(hand, machine) {
    const { pinionThen, pinionNow, main, ratioThen, ratioNow } = drawPinions(hand, machine);
    const reference = amount(Number(((topRpm(machine) * ratioThen.value) / 0.85).toPrecision(2)), "rpm");
    const throttle = amount(hand.whole(62, 88), "%");
    const now = work(setSpeed, { throttle, reference, gearRatio: ratioNow }, "rpm");
    const then = setSpeed({ throttle: throttle.si, reference: reference.value, gearRatio: ratioThen.value });
    return {
      question: tell`The controller learned ${reference} at the motor with a pinion of ${pinionThen}. Now it has ${pinionNow}, on a main gear of ${main}, and nobody learned again. Which head speed does ${throttle} give?`,
      answer: now,
      steps: [ratioNow, now],
      because: "The governor still holds the old motor speed; only the gears of today stand between it and the rotor.",
      slips: [
        slip("nothing-changes", then, "So it was with the old pinion. The motor's speed stays, the rotor's doesn't."),
        slip(
          "wrong-way",
          then ** 2 / now.value,
          "A bigger pinion takes the rotor further for each turn of the motor, a smaller one less far.",
        ),
        slip("throttle-forgotten", now.value / throttle.si, "That is 100 %. The throttle asks for a share of it."),
        slip(
          "gears-forgotten",
          now.value * ratioNow.value,
          "That is the motor. The gears divide it on the way to the rotor.",
        ),
      ],
    };
  },
};

const oldSpeedBack: Recipe = {
  id: "old-speed-back",
  draw(hand, machine) {
    const { pinionThen, pinionNow, main, ratioThen, ratioNow } = drawPinions(hand, machine);
    const headSpeed = amount(hand.near(topRpm(machine)), "rpm");
    const reference = amount(Number(((headSpeed.value * ratioThen.value) / 0.8).toPrecision(2)), "rpm");
    const throttle = work(throttleForSpeed, { headSpeed, reference, gearRatio: ratioNow }, "%");
    const old =
      100 * throttleForSpeed({ headSpeed: headSpeed.value, reference: reference.value, gearRatio: ratioThen.value });
    return {
      question: tell`The controller learned ${reference} at the motor. In place of ${pinionThen} now ${pinionNow} drive the main gear of ${main}, and nobody learned again. Which throttle asks for ${headSpeed} at the rotor?`,
      answer: throttle,
      steps: [ratioNow, throttle],
      because: "The reference is a motor speed and has stayed; today's gears bring the head speed back to the motor.",
      slips: [
        slip("nothing-changes", old, "So it was with the old pinion. Today's gears ask for another motor speed."),
        slip(
          "wrong-way",
          old ** 2 / throttle.value,
          "With a bigger pinion the same head speed needs less motor speed, with a smaller one more.",
        ),
        slip(
          "gears-forgotten",
          throttle.value / ratioNow.value,
          "You compare a rotor with a motor. Bring both to the same side of the gears.",
        ),
        slip(
          "ratio-upside-down",
          1e4 / throttle.value,
          "The wanted speed goes on top: it is the part, the reference is the whole.",
        ),
      ],
    };
  },
};

const pullAfterwards: Recipe = {
  id: "pull-afterwards",
  draw(hand, { gears }) {
    const before = hand.count(gears.pinionTeeth, 2, 9);
    const pinions = [amount(before, "teeth"), amount(before + hand.pick([1, 2]), "teeth")] as const;
    const pull = work(squareLaw, { before: amount(100, "%"), from: pinions[0], to: pinions[1] }, "%");
    const change = work(relativeChange, { before: amount(100, "%"), after: pull }, "%");
    const times = pinions[1].value / before;
    return {
      question: tell`You go from ${pinions[0]} to ${pinions[1]} on the pinion and don't learn again. Head speed rises with the teeth. By how many per cent does the pull at the blade bolts rise?`,
      answer: change,
      steps: [pull, change],
      because: "Head speed goes with the pinion's teeth, and pull with the square of head speed.",
      relative: 0.015,
      slips: [
        slip("linear-for-square", 100 * (times - 1), "So much does the head speed rise. Pull goes with its square."),
        slip("cube-for-square", 100 * (times ** 3 - 1), "Too steep: pull goes with the square of head speed."),
        slip("not-the-change", pull.value, "That is the new pull as a share of the old one. How much of it is new?"),
      ],
    };
  },
};

export const learnItAgain = [staleSpeed, oldSpeedBack, pullAfterwards];
