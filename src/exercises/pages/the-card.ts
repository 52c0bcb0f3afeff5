/** Exercises of the page with the card: throttle to enter, what a per cent is worth, a measurement against the card. */
import { setSpeed, throttleEntered, throttleForSpeed } from "#model/reference";
import { relativeChange } from "#model/scaling";
import { amount, tell, work } from "../amount.ts";
import { drawRatio, nearlyHalf, topRpm } from "../around.ts";
import { type Recipe, slip } from "../exercise.ts";

const wholePercent: Recipe = {
  id: "card-throttle",
  draw(hand, machine) {
    const gearRatio = amount(drawRatio(hand, machine));
    const headSpeed = amount(hand.near(topRpm(machine), { figures: 3 }), "rpm");
    const reference = amount(
      hand.near((headSpeed.value * gearRatio.value) / (hand.whole(62, 88) / 100), { spread: 0.01 }),
      "rpm",
    );
    const exact = work(throttleForSpeed, { headSpeed, reference, gearRatio }, "%");
    const entered = throttleEntered(exact.si);
    if (entered === null || nearlyHalf(exact.value)) return null;
    return {
      question: tell`A mode wants ${headSpeed}. The reference is ${reference} at the motor, and the gear ratio is ${gearRatio}. Which whole per cent do you enter?`,
      answer: amount(Math.round(100 * entered), "%"),
      steps: [exact],
      because: "Bring the head speed back to the motor, take its share of the reference, and round it.",
      relative: 0,
      absolute: 0.51,
      slips: [
        slip(
          "ratio-upside-down",
          1e4 / exact.value,
          "The wanted speed goes on top: it is the part, the reference is the whole.",
        ),
        slip(
          "gears-forgotten",
          exact.value / gearRatio.value,
          "You compare a rotor with a motor. Bring both to the same side of the gears.",
        ),
        slip("rest-for-throttle", 100 - exact.value, "That is the rest up to 100 %. Which share is asked for?"),
      ],
    };
  },
};

const onePercent: Recipe = {
  id: "one-percent",
  draw(hand, machine) {
    const gearRatio = amount(drawRatio(hand, machine));
    const reference = amount(hand.near((topRpm(machine) * gearRatio.value) / 0.85), "rpm");
    const step = work(setSpeed, { throttle: amount(1, "%"), reference, gearRatio }, "rpm");
    return {
      question: tell`The reference is ${reference} at the motor; the gear ratio is ${gearRatio}. By how many rpm does one per cent of throttle move the rotor?`,
      answer: step,
      steps: [step],
      because: "One per cent is a hundredth of the reference, and the gears divide it.",
      slips: [
        slip(
          "gears-forgotten",
          step.value * gearRatio.value,
          "That is the motor. The gears divide it on the way to the rotor.",
        ),
        slip("percent-for-share", 100 * step.value, "That is 100 %. One per cent is a hundredth of it."),
        slip(
          "ratio-upside-down",
          step.value * gearRatio.value ** 2,
          "The rotor turns slower than the motor: divide by the gear ratio.",
        ),
      ],
    };
  },
};

const againstTheCard: Recipe = {
  id: "against-the-card",
  draw(hand, machine) {
    const card = amount(hand.near(topRpm(machine), { figures: 3 }), "rpm");
    const off = hand.pick([-8, -6, -5, -4, -3, 3, 4, 5, 6, 8]) / 100;
    const measured = amount(Math.round(card.value * (1 + off)), "rpm");
    const gap = work(relativeChange, { before: card, after: measured }, "%");
    return {
      question: tell`The card says ${card}, and you measure ${measured}. By how many per cent is the machine off the card, with a minus for too slow?`,
      answer: gap,
      steps: [gap],
      because: "The card is the measure: take the gap as a share of what it says.",
      relative: 0.015,
      slips: [
        slip("rpm-for-percent", measured.value - card.value, "Those are rpm. Which share of the card's speed is that?"),
        slip("not-the-gap", 100 + gap.value, "That is the measured speed as a share of the card's. How far off is it?"),
        slip(
          "share-of-measured",
          100 * (1 - card.value / measured.value),
          "You counted it against what you measured. The card is the measure.",
        ),
      ],
    };
  },
};

export const theCard = [wholePercent, onePercent, againstTheCard];
