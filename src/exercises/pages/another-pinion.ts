/** Exercises of the page on another pinion: will it fit, what it does to ratio and current. */
import { gearRatio, twoStageRatio } from "#model/gears";
import { centreDistance } from "#model/gears-mesh";
import { torqueConstant } from "#model/motor";
import { currentAtLoad } from "#model/powertrain";
import { amount, tell, work } from "../amount.ts";
import { drawRatio, leastHoverPower, topRpm } from "../around.ts";
import { type Recipe, slip } from "../exercise.ts";

const motorMoves: Recipe = {
  id: "motor-moves",
  draw(hand, { gears }) {
    const module = amount(hand.pick([0.4, 0.5, 0.6, 0.7, 0.8, 1]), "mm");
    const before = hand.count(gears.pinionTeeth, 2, 8);
    const more = hand.pick([1, 2, 3]);
    const main = amount(hand.count(Math.max(gears.mainTeeth, 3 * before), 6, 30), "teeth");
    const [small, large] = [amount(before, "teeth"), amount(before + more, "teeth")];
    const [from, to] = [small, large].map((pinionTeeth) =>
      work(centreDistance, { module, pinionTeeth, mainTeeth: main }, "mm"),
    );
    if (!from || !to) return null;
    const shift = amount(Number((to.value - from.value).toFixed(6)), "mm");
    return {
      question: tell`A pinion of ${large} takes the place of one with ${small}. Module ${module}, main gear ${main}. How far must the motor move away from the main gear?`,
      answer: shift,
      steps: [from, to],
      because: "The shafts move apart by half the module for each tooth more; the main gear plays no part.",
      slips: [
        slip(
          "diameter-for-radius",
          2 * shift.value,
          "That is how much the pinion's diameter grows. The shaft moves by the radius.",
        ),
        slip("teeth-for-shift", more / 2, "The module makes millimetres of teeth: multiply by it."),
        slip("distance-for-shift", to.value, "That is the new distance of the shafts. By how much does it grow?"),
      ],
    };
  },
};

const ratioAndCurrent: Recipe = {
  id: "current-with-pinion",
  draw(hand, machine) {
    const { motor, gears } = machine;
    const turning = amount(topRpm(machine), "rpm").si;
    const torque = amount(hand.near((2.5 * leastHoverPower(machine)) / turning), "N m");
    const ratio = amount(drawRatio(hand, machine));
    const speedConstant = amount(hand.near(motor.kvRpmPerVolt), "rpm/V");
    const meshEfficiency = amount(hand.whole(88, 97), "%");
    const noLoadCurrent = amount(hand.near(motor.noLoadCurrentA, { otherwise: 1 }), "A");
    const constant = work(torqueConstant, { speedConstant }, "N m/A");
    const current = work(
      currentAtLoad,
      { torque, torqueConstant: constant, gearRatio: ratio, meshEfficiency, noLoadCurrent },
      "A",
    );
    const working = current.value - noLoadCurrent.value;
    if (gears.mainTeeth <= 0) return null;
    return {
      question: tell`The rotor asks for ${torque} behind a gear ratio of ${ratio}; the gears pass on ${meshEfficiency}. The motor has ${speedConstant} and takes ${noLoadCurrent} for itself. Which current flows through it?`,
      answer: current,
      steps: [constant, current],
      because: "Gears divide the torque that the motor must give; losses and its own current come on top.",
      slips: [
        slip(
          "gears-forgotten",
          working * ratio.value + noLoadCurrent.value,
          "The motor sees less torque than the rotor: the gears divide it.",
        ),
        slip(
          "loss-wrong-way",
          working * meshEfficiency.si ** 2 + noLoadCurrent.value,
          "Losses make the motor work harder: divide by the efficiency.",
        ),
        slip("own-current-forgotten", working, "The motor takes its no-load current on top."),
        slip(
          "rpm-for-radians",
          (working * Math.PI) / 30 + noLoadCurrent.value,
          "Kv in rpm must become radians per second: k is 60 over 2π Kv.",
        ),
      ],
    };
  },
};

const twoStages: Recipe = {
  id: "two-stages",
  draw(hand, { gears }) {
    const pinionTeeth = amount(hand.count(gears.pinionTeeth, 3, 10), "teeth");
    const mainTeeth = amount(hand.whole(45, 75), "teeth");
    const driverTeeth = amount(hand.whole(17, 24), "teeth");
    const drivenTeeth = amount(hand.whole(48, 76), "teeth");
    const ratio = work(twoStageRatio, { pinionTeeth, mainTeeth, driverTeeth, drivenTeeth }, "");
    const first = work(gearRatio, { pinionTeeth, mainTeeth }, "");
    const second = drivenTeeth.value / driverTeeth.value;
    return {
      question: tell`A pinion of ${pinionTeeth} drives a gear of ${mainTeeth}. On its shaft ${driverTeeth} drive a belt wheel of ${drivenTeeth}, which turns the rotor. How often does the motor turn for one turn of the rotor?`,
      answer: ratio,
      steps: [ratio],
      because: "Each pair divides the speed that it gets, so their ratios multiply.",
      slips: [
        slip(
          "ratios-added",
          first.value + second,
          "The second pair divides what the first has left: the ratios multiply.",
        ),
        slip("second-upside-down", first.value / second, "The second pair slows down too: driven over driving."),
        slip("first-only", first.value, "That is the first pair. The second one divides again."),
        slip("second-only", second, "That is the second pair. The first one counts too."),
      ],
    };
  },
};

export const anotherPinion = [motorMoves, ratioAndCurrent, twoStages];
