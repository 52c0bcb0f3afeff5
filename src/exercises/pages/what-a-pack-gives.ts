/** Exercises of the page on packs: resistance, sag, cold, age and heat. */

import { fromCelsius } from "#model/constants";
import { loadedVoltage, resistiveHeat } from "#model/currents";
import { packResistance, resistanceFactor } from "#model/pack";
import { squareLaw } from "#model/scaling";
import { amount, tell, work } from "../amount.ts";
import { drawCellVoltage, drawCurrent } from "../around.ts";
import { type Recipe, slip } from "../exercise.ts";

const wholePack: Recipe = {
  id: "pack-resistance",
  draw(hand, { pack }) {
    const cells = amount(hand.count(pack.cells, 2, 2));
    const cellResistance = amount(hand.near(pack.cellResistanceMilliohm), "mΩ");
    const leadResistance = amount(hand.near(pack.leadResistanceMilliohm, { otherwise: cellResistance.value }), "mΩ");
    const whole = work(packResistance, { cells, cellResistance, temperatureFactor: amount(1), leadResistance }, "mΩ");
    const cellsOnly = cells.value * cellResistance.value;
    return {
      question: tell`Each of ${cells} cells in series has ${cellResistance} at 25 °C. Leads and plugs add ${leadResistance}. What is the resistance of the pack?`,
      answer: whole,
      steps: [whole],
      because: "In series the cells' resistances add up, and the leads come once on top.",
      slips: [
        slip("leads-forgotten", cellsOnly, "The current goes through leads and plugs too."),
        slip(
          "leads-per-cell",
          cells.value * (cellResistance.value + leadResistance.value),
          "The leads are there once, not once for each cell.",
        ),
        slip(
          "one-cell",
          cellResistance.value + leadResistance.value,
          "That is one cell with leads. The current goes through all of them.",
        ),
        slip(
          "parallel-for-series",
          cellResistance.value / cells.value + leadResistance.value,
          "You put the cells side by side. In series their resistances add up.",
        ),
      ],
    };
  },
};

const coldPack: Recipe = {
  id: "cold-pack",
  draw(hand, { pack }) {
    const celsius = hand.whole(-5, 8);
    const factor = amount(Number(resistanceFactor(fromCelsius(celsius)).toFixed(1)));
    const cells = amount(hand.count(pack.cells, 1, 2));
    const cellResistance = amount(hand.near(pack.cellResistanceMilliohm), "mΩ");
    const leadResistance = amount(hand.near(pack.leadResistanceMilliohm, { otherwise: 2 }), "mΩ");
    const cold = work(packResistance, { cells, cellResistance, temperatureFactor: factor, leadResistance }, "mΩ");
    const warm = cells.value * cellResistance.value + leadResistance.value;
    return {
      question: tell`${cells} cells have ${cellResistance} each at 25 °C, the copper leads ${leadResistance}. At ${celsius < 0 ? `minus ${-celsius}` : `${celsius}`} °C a cell has ${factor} times its warm resistance. What is the resistance of the cold pack?`,
      answer: cold,
      steps: [cold],
      because: "Cold slows what goes on inside the cells; the leads are copper and hardly notice.",
      slips: [
        slip("cold-forgotten", warm, "That is the warm pack. The cells have more in the cold."),
        slip("leads-cold-too", warm * factor.value, "Only the cells rise with the cold. The leads stay as they are."),
        slip(
          "factor-upside-down",
          (cells.value * cellResistance.value) / factor.value + leadResistance.value,
          "In the cold the cells have more resistance, not less.",
        ),
        slip("leads-forgotten", cold.value - leadResistance.value, "The leads are still there."),
      ],
    };
  },
};

const sag: Recipe = {
  id: "sag",
  draw(hand, machine) {
    const { pack } = machine;
    const openVoltage = amount(Number((pack.cells * drawCellVoltage(hand, machine)).toFixed(1)), "V");
    const current = amount(drawCurrent(hand, machine, 15), "A");
    // A sag of a twentieth to an eighth: enough to see, far from a pack on its knees.
    const resistance = amount(hand.near((0.09 * openVoltage.value * 1000) / current.value, { spread: 0.35 }), "mΩ");
    const left = work(loadedVoltage, { openVoltage, current, resistance }, "V");
    const lost = openVoltage.value - left.value;
    return {
      question: tell`A pack rests at ${openVoltage} and has ${resistance} with its leads. Now it gives ${current}. How many volts are left at the plug?`,
      answer: left,
      steps: [left],
      because: "Every ampere costs its share of volts inside the pack, before the plug.",
      slips: [
        slip("sag-for-rest", lost, "Those are the volts that are lost. How many are left?"),
        slip("sag-added", openVoltage.value + lost, "A load takes volts away; it adds none."),
        slip("milliohm-for-ohm", openVoltage.value - 1000 * lost, "Milliohms are thousandths of an ohm."),
        slip("sag-forgotten", openVoltage.value, "That is the pack at rest. The current costs volts inside it."),
      ],
    };
  },
};

const twiceTheCurrent: Recipe = {
  id: "heat-of-current",
  draw(hand, machine) {
    const slow = amount(drawCurrent(hand, machine, 8), "A");
    const fast = amount(Number((slow.value * hand.pick([1.5, 2, 2.5, 3])).toPrecision(3)), "A");
    const resistance = amount(hand.near(machine.pack.cells * machine.pack.cellResistanceMilliohm + 3), "mΩ");
    const before = work(resistiveHeat, { current: slow, resistance }, "W");
    const given = amount(Number(before.value.toPrecision(2)), "W");
    const heat = work(squareLaw, { before: given, from: slow, to: fast }, "W");
    const times = fast.value / slow.value;
    return {
      question: tell`At ${slow} a pack turns ${given} into heat inside itself. How much does it turn into heat at ${fast}?`,
      answer: heat,
      steps: [heat],
      because: "Heat in a resistance goes with the square of the current.",
      slips: [
        slip("linear-for-square", given.value * times, "That is heat in step with current. It goes with the square."),
        slip(
          "cube-for-square",
          given.value * times ** 3,
          "Too steep: heat goes with the square of the current, not with the cube.",
        ),
        slip("ratio-upside-down", given.value / times ** 2, "More current, more heat: turn the fraction over."),
      ],
    };
  },
};

export const whatAPackGives = [wholePack, coldPack, sag, twiceTheCurrent];
