/** Exercises of the page on two machines side by side: cells against Kv, weight, and what a doubt is worth. */

import { gravity } from "#model/constants";
import { currentForPower, resistiveHeat } from "#model/currents";
import { discArea, idealHoverPower } from "#model/momentum";
import { combinedDoubt, relativeChange } from "#model/scaling";
import { amount, tell, work } from "../amount.ts";
import { drawCellVoltage, leastHoverPower } from "../around.ts";
import { type Recipe, slip } from "../exercise.ts";

const moreCells: Recipe = {
  id: "more-cells-less-current",
  draw(hand, machine) {
    const cells = hand.count(machine.pack.cells, 1, 2);
    const each = drawCellVoltage(hand, machine);
    const few = amount(Number((cells * each).toFixed(1)), "V");
    const many = amount(Number((2 * few.value).toFixed(1)), "V");
    const power = amount(hand.near(4 * leastHoverPower(machine)), "W");
    const resistance = amount(hand.near(machine.motor.resistanceMilliohm + 10), "mΩ");
    const current = work(currentForPower, { power, voltage: many }, "A");
    const heat = work(resistiveHeat, { current, resistance }, "W");
    const before = currentForPower({ power: power.si, voltage: few.si }) ** 2 * resistance.si;
    return {
      question: tell`${amount(cells)} cells give ${few} under load, ${amount(2 * cells)} cells ${many}. You draw ${power} from the larger pack through wires of ${resistance}. How much heat do the wires get?`,
      answer: heat,
      steps: [current, heat],
      because: "Twice the volts carry the same power with half the current, and heat goes with the square of current.",
      slips: [
        slip("small-pack", before, "That is the smaller pack's current. The larger one needs half of it."),
        slip("linear-for-square", before / 2, "Half the current leaves a quarter of the heat, not half."),
        slip(
          "cells-for-volts",
          (power.value / (2 * cells)) ** 2 * resistance.si,
          "You counted cells. Power is current times volts.",
        ),
        slip(
          "volts-for-heat",
          current.value * resistance.si,
          "That is volts. Heat is current times current times resistance.",
        ),
      ],
    };
  },
};

const heavierPack: Recipe = {
  id: "heavier-pack",
  draw(hand, machine) {
    const massBefore = hand.near(machine.airframe.massG / 1000);
    const before = amount(massBefore, "kg");
    const after = amount(Number((massBefore * (1 + hand.whole(8, 25) / 100)).toPrecision(2)), "kg");
    const radius = amount(machine.mainRotor.diameterMm / 2000, "m");
    const [first, second] = [before, after].map(({ value }) => {
      const area = work(discArea, { radius }, "m²");
      return work(idealHoverPower, { thrust: amount(value * gravity, "N"), density: amount(1.2, "kg/m³"), area }, "W");
    });
    if (!first || !second) return null;
    const rise = work(relativeChange, { before: first, after: second }, "%");
    const share = after.value / before.value;
    return {
      question: tell`A bigger pack brings your machine from ${before} to ${after}. Ideal hover power goes with weight to the power of 1.5. By how many per cent does it rise?`,
      answer: rise,
      steps: [first, second, rise],
      because: "More weight pushes more air, and pushes it faster: weight times the root of weight.",
      relative: 0.02,
      slips: [
        slip(
          "linear-for-power",
          100 * (share - 1),
          "So much does the weight rise. The air must also be pushed faster.",
        ),
        slip(
          "square-for-power",
          100 * (share ** 2 - 1),
          "Too steep: the speed of the air goes only with the root of weight.",
        ),
        slip(
          "root-for-power",
          100 * (Math.sqrt(share) - 1),
          "That is the air's speed. The weight itself comes on top.",
        ),
        slip(
          "not-the-change",
          100 * share ** 1.5,
          "That is the new power as a share of the old one. How much of it is new?",
        ),
      ],
    };
  },
};

const twoDoubts: Recipe = {
  id: "two-doubts",
  draw(hand) {
    const kv = amount(hand.whole(3, 8), "%");
    const volts = amount(hand.pick([1, 2, 3, 4]), "%");
    const doubt = work(combinedDoubt, { first: kv, second: volts }, "%");
    return {
      question: tell`A motor's Kv is known to ${kv}, the pack's voltage to ${volts}. Neither error brings the other with it. How well is the no-load speed known, in per cent?`,
      answer: doubt,
      steps: [doubt],
      because: "Doubts that know nothing of each other add by their squares, so the larger one decides.",
      slips: [
        slip(
          "sum-for-squares",
          kv.value + volts.value,
          "They seldom err the same way together. Add their squares, and take the root.",
        ),
        slip("root-forgotten", kv.value ** 2 + volts.value ** 2, "Take the root of the sum."),
        slip(
          "difference",
          Math.abs(kv.value - volts.value),
          "Doubts don't cancel. Add their squares, and take the root.",
        ),
        slip("mean-for-squares", (kv.value + volts.value) / 2, "The result is never better known than its worst part."),
      ],
    };
  },
};

export const beforeYouBuy = [moreCells, heavierPack, twoDoubts];
