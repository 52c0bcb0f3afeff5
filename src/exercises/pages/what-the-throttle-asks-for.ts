/** Exercises of the page on what the throttle asks for. */
import { setSpeed, throttleEntered, throttleForSpeed } from "#model/reference";
import { amount, tell, work } from "../amount.ts";
import { drawRatio, nearlyHalf, topRpm } from "../around.ts";
import { type Recipe, slip } from "../exercise.ts";

const headSpeedAsked: Recipe = {
  id: "head-speed-asked",
  draw(hand, machine) {
    const ratio = amount(drawRatio(hand, machine));
    const reference = amount(hand.near((topRpm(machine) * ratio.value) / 0.8), "rpm");
    const throttle = amount(hand.whole(60, 90), "%");
    const asked = work(setSpeed, { throttle, reference, gearRatio: ratio }, "rpm");
    return {
      question: tell`The controller has learned ${reference} at the motor as 100 %. The motor turns ${ratio} times for one turn of the rotor. Which head speed does ${throttle} throttle ask for?`,
      answer: asked,
      steps: [asked],
      because: "Throttle is a share of the learned speed, and the gears divide that speed on its way to the rotor.",
      slips: [
        slip(
          "percent-for-share",
          100 * asked.value,
          `Take the throttle as a share of one: ${throttle.value} % is 0.${throttle.value}.`,
        ),
        slip(
          "gears-forgotten",
          asked.value * ratio.value,
          "That is the motor's speed. The gears still stand between it and the rotor.",
        ),
        slip(
          "ratio-upside-down",
          asked.value * ratio.value ** 2,
          "The rotor turns slower than the motor: divide by the gear ratio.",
        ),
        slip(
          "throttle-forgotten",
          reference.value / ratio.value,
          "That is 100 %. The throttle asks for a share of it.",
        ),
      ],
    };
  },
};

const throttleWanted: Recipe = {
  id: "throttle-wanted",
  draw(hand, machine) {
    const gearRatio = amount(drawRatio(hand, machine));
    const headSpeed = amount(hand.near(topRpm(machine)), "rpm");
    const reference = amount(
      hand.near((headSpeed.value * gearRatio.value) / (hand.whole(60, 88) / 100), { spread: 0.01 }),
      "rpm",
    );
    const throttle = work(throttleForSpeed, { headSpeed, reference, gearRatio }, "%");
    return {
      question: tell`The learned reference is ${reference} at the motor; the gear ratio is ${gearRatio}. You want a head speed of ${headSpeed}. Which throttle asks for it?`,
      answer: throttle,
      steps: [throttle],
      because: "Bring the head speed back to the motor, then ask which share of the reference it is.",
      slips: [
        slip(
          "ratio-upside-down",
          1e4 / throttle.value,
          "The wanted speed goes on top: it is the part, the reference is the whole.",
        ),
        slip(
          "gears-forgotten",
          throttle.value / gearRatio.value,
          "You compare a rotor with a motor. Bring both to the same side of the gears.",
        ),
        slip(
          "ratio-for-speed",
          throttle.value / gearRatio.value ** 2,
          "The motor turns faster than the rotor: multiply the head speed by the gear ratio.",
        ),
      ],
    };
  },
};

const roundedThrottle: Recipe = {
  id: "rounded-throttle",
  draw(hand, machine) {
    // A round reference: whole per cents of it have three figures, so that rounding hides nothing.
    const full = amount(1000 * Math.max(1, Math.round(topRpm(machine) / 800) + hand.whole(0, 1)), "rpm");
    const wanted = amount(Math.round((full.value * hand.whole(600, 890)) / 5000) * 5, "rpm");
    const gearRatio = amount(1);
    const exact = work(throttleForSpeed, { headSpeed: wanted, reference: full, gearRatio }, "%");
    const entered = throttleEntered(exact.si);
    if (entered === null || nearlyHalf(exact.value)) return null;
    const real = work(
      setSpeed,
      { throttle: amount(Math.round(100 * entered), "%"), reference: full, gearRatio },
      "rpm",
    );
    const between = full.value / 100;
    const otherWay = real.value > wanted.value ? real.value - between : real.value + between;
    return {
      question: tell`100 % asks for ${full} at the rotor, and a mode wants ${wanted}. The transmitter takes whole per cent only. Which head speed does the nearest one give?`,
      answer: real,
      steps: [exact, real],
      because: "Round the throttle first, then ask what the rounded value really gives.",
      relative: 0.0005,
      slips: [
        slip(
          "not-rounded",
          wanted.value,
          "That is what you want. The transmitter rounds the throttle before it sends it.",
        ),
        slip("rounded-other-way", otherWay, "You rounded to the other side. Which whole per cent lies nearer?"),
        slip("throttle-forgotten", full.value, "That is 100 %. Work out the throttle first."),
      ],
    };
  },
};

export const whatTheThrottleAsksFor = [headSpeedAsked, throttleWanted, roundedThrottle];
