/** Exercises of the page on the governor's hands: steps, how often it looks, how long it winds up. */
import { commutationPeriod, correctionsPerTurn, dutyStepSpeed, integralTime } from "#model/loop";
import { amount, tell, work } from "../amount.ts";
import { ratioNow, topRpm } from "../around.ts";
import { type Recipe, slip } from "../exercise.ts";

const oneStep: Recipe = {
  id: "one-duty-step",
  draw(hand, machine) {
    const fullSpeed = amount(hand.near(1.25 * topRpm(machine)), "rpm");
    const steps = amount(hand.pick([200, 250, 400, 500, 800, 1000, 1024, 2000, 2048]));
    const step = work(dutyStepSpeed, { fullSpeed, steps }, "rpm");
    return {
      question: tell`A controller has ${steps} steps from no duty to full, and full duty gives ${fullSpeed} without a load. How many rpm at the rotor is one step worth?`,
      answer: step,
      steps: [step],
      because: "Without load the speed goes with the duty, so the steps share out the whole speed evenly.",
      slips: [
        slip("ratio-upside-down", steps.value / fullSpeed.value, "That is steps for each rpm. Turn the fraction over."),
        slip(
          "hundred-for-steps",
          fullSpeed.value / 100,
          "You took per cents. This controller has finer steps than that.",
        ),
        slip(
          "motor-for-rotor",
          step.value * Number(ratioNow(machine).toPrecision(2)),
          "That is the motor. The speed given is the rotor's already.",
        ),
      ],
    };
  },
};

const oneLook: Recipe = {
  id: "one-electrical-turn",
  draw(hand, machine) {
    const motorSpeed = amount(hand.near(topRpm(machine) * ratioNow(machine)), "rpm");
    const poles = amount(2 * hand.count(Math.max(2, machine.motor.poles / 2), 2, 2));
    const period = work(commutationPeriod, { motorSpeed: amount(motorSpeed.si, "rad/s"), poles }, "µs");
    return {
      question: tell`A motor with ${poles} magnet poles turns at ${motorSpeed}. How long does one electrical turn last, in microseconds?`,
      answer: period,
      steps: [period],
      because: "The controller gets one whole reading of the speed for each pair of magnets that passes.",
      slips: [
        slip("poles-for-pairs", period.value / 2, "You counted every magnet. An electrical turn takes a pair of them."),
        slip(
          "one-motor-turn",
          (period.value * poles.value) / 2,
          "That is a whole turn of the motor. Several electrical turns are in it.",
        ),
        slip("minute-for-second", period.value / 60, "The speed is counted in a minute. A minute has 60 seconds."),
        slip(
          "rpm-for-radians",
          (period.value * Math.PI) / 30,
          "Turn rpm into radians per second first: times 2π, over 60.",
        ),
      ],
    };
  },
};

const windUp: Recipe = {
  id: "wind-up",
  draw(hand, machine) {
    const integralGain = amount(hand.near(machine.controller.integralGain, { spread: 0.4, otherwise: 2 }), "1/s");
    const error = amount(hand.pick([2, 3, 4, 5, 6, 8]), "%");
    const from = hand.pick([60, 65, 70, 75, 80]);
    const dutyChange = amount(100 - from, "%");
    const time = work(integralTime, { dutyChange, integralGain, error }, "s");
    return {
      question: tell`In each second the integral part adds ${amount(integralGain.value)} times the speed error to the duty. The rotor stays ${error} of the reference too slow. How many seconds bring the duty from ${amount(from, "%")} to 100 %?`,
      answer: time,
      steps: [time],
      because: "Each second adds gain times error; divide the missing duty by that.",
      slips: [
        slip("percent-for-share", time.value / 100, "Take per cents on both sides, or shares on both."),
        slip(
          "error-forgotten",
          dutyChange.si / integralGain.value,
          "The gain works on the error: a small error fills slowly.",
        ),
        slip(
          "gain-multiplied",
          (dutyChange.si * integralGain.value) / error.si,
          "More gain fills faster: divide by it.",
        ),
        slip(
          "whole-duty",
          1 / (integralGain.value * error.si),
          "It doesn't start from nothing: count from the duty it has.",
        ),
      ],
    };
  },
};

const corrections: Recipe = {
  id: "corrections-per-turn",
  draw(hand, machine) {
    const loopRate = amount(hand.near(machine.controller.loopHz, { spread: 0.4, otherwise: 500 }), "Hz");
    const headSpeed = amount(hand.near(topRpm(machine)), "rpm");
    const count = work(correctionsPerTurn, { loopRate, headSpeed: amount(headSpeed.si, "rad/s") }, "");
    return {
      question: tell`A governor corrects ${amount(loopRate.value)} times a second. The rotor turns at ${headSpeed}. How many corrections fall into one turn of the rotor?`,
      answer: count,
      steps: [count],
      because: "One turn lasts a minute over the head speed; in that time it corrects so many times.",
      slips: [
        slip(
          "minute-for-second",
          count.value / 60,
          "The speed is counted in a minute, the corrections in a second: there is a factor of 60.",
        ),
        slip("ratio-upside-down", 1 / count.value, "Those are turns for each correction. Turn the fraction over."),
        slip(
          "turns-for-corrections",
          headSpeed.value / 60,
          "Those are turns in a second. How many corrections fall into one?",
        ),
        slip("radians-for-turns", count.value / (2 * Math.PI), "One turn is 2π radians."),
      ],
    };
  },
};

export const governorsHands = [oneStep, oneLook, windUp, corrections];
