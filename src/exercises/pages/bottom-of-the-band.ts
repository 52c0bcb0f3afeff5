/** Exercises of the page on the bottom of the band: low duty, its currents and heat, and what the rotor still stores. */
import { resistiveHeat } from "#model/currents";
import { packCurrent } from "#model/powertrain";
import { setSpeed } from "#model/reference";
import { squareLaw } from "#model/scaling";
import { amount, tell, work } from "../amount.ts";
import { drawCurrent, drawRatio, storedNear, topRpm } from "../around.ts";
import { type Recipe, slip } from "../exercise.ts";

const twoCurrents: Recipe = {
  id: "two-currents",
  draw(hand, machine) {
    const current = amount(drawCurrent(hand, machine, 12), "A");
    const duty = amount(hand.whole(38, 58), "%");
    const pack = work(packCurrent, { duty, current }, "A");
    return {
      question: tell`The controller works at ${duty} duty, and ${current} flow through the motor. How much current leaves the pack?`,
      answer: pack,
      steps: [pack],
      because: "The controller takes from the pack only in its share of the time; the motor's current runs on.",
      slips: [
        slip(
          "percent-for-share",
          100 * pack.value,
          `Take the duty as a share of one: ${duty.value} % is 0.${duty.value}.`,
        ),
        slip(
          "divided-by-duty",
          current.value / duty.si,
          "The pack gives less current than the motor takes: multiply by the duty.",
        ),
        slip(
          "same-current",
          current.value,
          "That is the motor's current. The pack gives it only for the share of the duty.",
        ),
        slip("rest-of-duty", current.value * (1 - duty.si), "You took the time in which it is off."),
      ],
    };
  },
};

const controllerHeat: Recipe = {
  id: "controller-heat",
  draw(hand, machine) {
    const duty = amount(hand.whole(38, 55), "%");
    const current = amount(drawCurrent(hand, machine, 12), "A");
    const resistance = amount(hand.near(machine.controller.resistanceMilliohm, { otherwise: 3 }), "mΩ");
    const heat = work(resistiveHeat, { current, resistance }, "W");
    return {
      question: tell`At ${duty} duty a motor takes ${current} through a controller of ${resistance}. How much heat does that current leave in the controller?`,
      answer: heat,
      steps: [heat],
      because: "The motor's current flows through the controller all the time, also while the pack is switched off.",
      slips: [
        slip(
          "pack-current",
          heat.value * duty.si ** 2,
          "You took the pack's current. The motor's flows through the switches at all times.",
        ),
        slip(
          "duty-for-heat",
          heat.value * duty.si,
          "While the pack is off, the current still runs through the controller.",
        ),
        slip(
          "linear-for-square",
          (current.value * resistance.value) / 1000,
          "That is volts. Heat is current times current times resistance.",
        ),
        slip("milliohm-for-ohm", 1000 * heat.value, "Milliohms are thousandths of an ohm."),
      ],
    };
  },
};

const storedAtLowSpeed: Recipe = {
  id: "stored-at-low-speed",
  draw(hand, machine) {
    const full = amount(Math.round(hand.near(topRpm(machine)) / 50) * 50, "rpm");
    const throttle = amount(hand.pick([50, 55, 60, 65, 70]), "%");
    const before = amount(hand.near(storedNear(machine, full)), "J");
    const slow = work(setSpeed, { throttle, reference: full, gearRatio: amount(1) }, "rpm");
    const stored = work(squareLaw, { before, from: full, to: slow }, "J");
    return {
      question: tell`At ${full} the blades store ${before}. You slow them down to ${throttle} of that speed. How much do they still store to catch a descent with?`,
      answer: stored,
      steps: [slow, stored],
      because: "Stored energy goes with the square of speed, so a slow rotor forgives less.",
      slips: [
        slip(
          "linear-for-square",
          before.value * throttle.si,
          "Energy goes with the square of speed, not in step with it.",
        ),
        slip(
          "cube-for-square",
          before.value * throttle.si ** 3,
          "Too steep: the cube belongs to the power of drag. Energy goes with the square.",
        ),
        slip("lost-for-left", before.value * (1 - throttle.si ** 2), "That is what they lost. How much is left?"),
      ],
    };
  },
};

const lowestSpeed: Recipe = {
  id: "lowest-speed",
  draw(hand, machine) {
    const gearRatio = amount(drawRatio(hand, machine));
    const throttle = amount(hand.pick([55, 60, 65]), "%");
    const reference = amount(hand.near((topRpm(machine) * gearRatio.value) / 0.85), "rpm");
    const lowest = work(setSpeed, { throttle, reference, gearRatio }, "rpm");
    return {
      question: tell`The learned reference is ${reference} at the motor, the gear ratio ${gearRatio}. Your usable band begins at ${throttle}. Which is the slowest head speed in it?`,
      answer: lowest,
      steps: [lowest],
      because: "The band is a share of the reference, and the gears turn it into a head speed.",
      slips: [
        slip(
          "gears-forgotten",
          lowest.value * gearRatio.value,
          "That is the motor. The gears divide it on the way to the rotor.",
        ),
        slip(
          "rest-of-throttle",
          (lowest.value * (100 - throttle.value)) / throttle.value,
          "You took the part outside the band.",
        ),
        slip("throttle-forgotten", lowest.value / throttle.si, "That is 100 %. The band begins at a share of it."),
      ],
    };
  },
};

export const bottomOfTheBand = [twoCurrents, controllerHeat, storedAtLowSpeed, lowestSpeed];
