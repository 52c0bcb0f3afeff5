/** Exercises of the page on a punch in motion: what the rotor pays from its spin, for how long, and how far it runs over. */
import { speedAfterSurplus, spinGiven, spinTime } from "#model/spin";
import { amount, tell, work } from "../amount.ts";
import { leastHoverPower, storedNear, topRpm } from "../around.ts";
import { type Recipe, slip } from "../exercise.ts";

const paidFromSpin: Recipe = {
  id: "paid-from-spin",
  draw(hand, machine) {
    const from = amount(hand.near(topRpm(machine), { figures: 3 }), "rpm");
    const stored = amount(hand.near(storedNear(machine, from)), "J");
    const to = amount(Number((from.value * (1 - hand.whole(4, 10) / 100)).toPrecision(3)), "rpm");
    const given = work(spinGiven, { stored, from, to }, "J");
    return {
      question: tell`At ${from} a rotor stores ${stored}. A punch pulls it down to ${to}. How much energy did it give, in J?`,
      answer: given,
      steps: [given],
      because: "What it has left goes with the square of the speed; it gave the rest.",
      relative: 0.02,
      slips: [
        slip(
          "share-of-speed",
          stored.value * (1 - to.value / from.value),
          "Energy goes with the square of the speed: square the ratio first.",
        ),
        slip("left-for-given", stored.value - given.value, "That is what it has left. What did it give?"),
        slip(
          "ratio-upside-down",
          stored.value * ((from.value / to.value) ** 2 - 1),
          "You counted against the slower rotor. The store is that of the faster one.",
        ),
      ],
    };
  },
};

const paidForSeconds: Recipe = {
  id: "seconds-on-spin",
  draw(hand, machine) {
    const from = amount(hand.near(topRpm(machine), { figures: 3 }), "rpm");
    const stored = amount(hand.near(storedNear(machine, from)), "J");
    const to = amount(Number((from.value * 0.95).toPrecision(3)), "rpm");
    const power = amount(hand.near(2 * leastHoverPower(machine), { spread: 0.3 }), "W");
    const energy = work(spinGiven, { stored, from, to }, "J");
    const time = work(spinTime, { energy, power }, "s");
    return {
      question: tell`A punch wants ${power} more than the motor gives yet. The rotor stores ${stored} at ${from}. After how many seconds has it sunk to ${to}?`,
      answer: time,
      steps: [energy, time],
      because: "The rotor can give only what lies between the two speeds; divide that by the missing power.",
      relative: 0.03,
      slips: [
        slip("whole-store", stored.value / power.value, "That would stop the rotor. It gives only what lies between."),
        slip("ratio-upside-down", power.value / energy.value, "Seconds are joules for each watt: turn it over."),
        slip(
          "share-of-speed",
          (stored.value * (1 - to.value / from.value)) / power.value,
          "Energy goes with the square of the speed: square the ratio first.",
        ),
      ],
    };
  },
};

const runsOver: Recipe = {
  id: "runs-over",
  draw(hand, machine) {
    const from = amount(hand.near(topRpm(machine), { figures: 3 }), "rpm");
    const stored = amount(hand.near(storedNear(machine, from)), "J");
    const time = amount(hand.pick([0.1, 0.15, 0.2, 0.25]), "s");
    const power = amount(hand.near((0.12 * stored.value) / time.value, { spread: 0.3 }), "W");
    const after = work(speedAfterSurplus, { from, stored, power, time }, "rpm");
    const surplus = (power.value * time.value) / stored.value;
    return {
      question: tell`At ${from} a rotor stores ${stored}. You drop the pitch, and for ${time} the motor still gives ${power} too much. How fast does the head turn then?`,
      answer: after,
      steps: [after],
      because: "Add what came in to the store; the speed goes with the square root of it.",
      relative: 0.008,
      slips: [
        slip(
          "square-root-forgotten",
          from.value * (1 + surplus),
          "So much more energy is not so much more speed: take the square root.",
        ),
        slip("only-the-surplus", after.value - from.value, "That is how far it runs over. How fast does it turn then?"),
        slip(
          "slower-for-faster",
          from.value * Math.sqrt(Math.max(0, 1 - surplus)),
          "The surplus goes in, it doesn't come out: the rotor speeds up.",
        ),
      ],
    };
  },
};

export const roomAtTheTopInMotion = [paidFromSpin, paidForSeconds, runsOver];
