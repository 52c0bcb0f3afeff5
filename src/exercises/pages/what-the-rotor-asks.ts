/** Exercises of the page on what the rotor asks for: disc, least power, the blades' own drag, how good a rotor is. */
import { gravity } from "#model/constants";
import { discArea, figureOfMerit, idealHoverPower } from "#model/momentum";
import { cubeLaw } from "#model/scaling";
import { amount, tell, work } from "../amount.ts";
import { leastHoverPower, topRpm } from "../around.ts";
import { type Recipe, slip } from "../exercise.ts";

const disc: Recipe = {
  id: "disc-area",
  draw(hand, { mainRotor }) {
    const diameter = amount(hand.near(mainRotor.diameterMm), "mm");
    const radius = amount(diameter.value / 2000, "m");
    const area = work(discArea, { radius }, "m²");
    return {
      question: tell`A rotor has a diameter of ${diameter}. Which area does its disc sweep, in square metres?`,
      answer: area,
      steps: [area],
      because: "The radius is half the diameter, and it is the radius that is squared.",
      slips: [
        slip("diameter-for-radius", 4 * area.value, "You squared the diameter. Halve it first."),
        slip("pi-forgotten", area.value / Math.PI, "That is a square. A disc has π times the square of its radius."),
        slip(
          "circumference-for-area",
          2 * Math.PI * radius.value,
          "That is the way round the disc. Its area has the radius squared.",
        ),
      ],
    };
  },
};

const leastPower: Recipe = {
  id: "least-power",
  draw(hand, { airframe, mainRotor }) {
    const mass = amount(hand.near(airframe.massG / 1000), "kg");
    const area = amount(hand.near((Math.PI * mainRotor.diameterMm ** 2) / 4e6), "m²");
    const density = amount(hand.pick([1.1, 1.15, 1.2, 1.25]), "kg/m³");
    const thrust = amount(mass.value * gravity, "N");
    const power = work(idealHoverPower, { thrust, density, area }, "W");
    const weightless = mass.value * Math.sqrt(mass.value / (2 * density.value * area.value));
    return {
      question: tell`A machine of ${mass} hovers in air of ${density}. Its disc has ${area}. Which power does it need at the very least?`,
      answer: power,
      steps: [power],
      because: "The disc must push air down with the machine's weight in newtons: 9.81 for each kilogram.",
      slips: [
        slip("mass-for-weight", weightless, "Thrust is a force: take 9.81 N for each kilogram."),
        slip("two-forgotten", power.value * Math.SQRT2, "Under the root stands twice the density times the area."),
        slip(
          "root-forgotten",
          thrust.value ** 2 / (2 * density.value * area.value),
          "Take the root: it is the speed of the air through the disc.",
        ),
        slip(
          "flow-for-power",
          power.value / thrust.value,
          "That is the speed of the air through the disc. Times thrust it is power.",
        ),
      ],
    };
  },
};

const ownDrag: Recipe = {
  id: "own-drag",
  draw(hand, machine) {
    const from = amount(hand.near(topRpm(machine) * 0.8), "rpm");
    const to = amount(Number((from.value * hand.pick([1.2, 1.25, 1.5, 2, 0.8, 0.5])).toPrecision(3)), "rpm");
    const before = amount(hand.near(0.3 * leastHoverPower(machine)), "W");
    const after = work(cubeLaw, { before, from, to }, "W");
    const times = to.value / from.value;
    return {
      question: tell`At ${from} the blades' own drag takes ${before}, whatever they carry. How much does it take at ${to}?`,
      answer: after,
      steps: [after],
      because: "Drag goes with the square of speed, and power is drag times speed once more: the cube.",
      slips: [
        slip(
          "linear-for-cube",
          before.value * times,
          "Twice the head speed is not twice the power here. It goes with the cube.",
        ),
        slip("square-for-cube", before.value * times ** 2, "That is the drag. Power is drag times speed once more."),
        slip("ratio-upside-down", before.value / times ** 3, "Turn the fraction over: faster blades take more."),
      ],
    };
  },
};

const howGood: Recipe = {
  id: "figure-of-merit",
  draw(hand, machine) {
    const idealPower = amount(hand.near(leastHoverPower(machine)), "W");
    const power = amount(Number((idealPower.value / (hand.whole(45, 75) / 100)).toPrecision(2)), "W");
    const merit = work(figureOfMerit, { idealPower, power }, "");
    return {
      question: tell`A perfect rotor would hover this machine with ${idealPower}. The real one takes ${power}. What is its figure of merit?`,
      answer: merit,
      steps: [merit],
      because: "It is the ideal power over the real one, so it is always below one.",
      slips: [
        slip("ratio-upside-down", 1 / merit.value, "No rotor is better than perfect: the ideal power goes on top."),
        slip("percent-for-share", 100 * merit.value, "Leave it as a share of one."),
        slip(
          "loss-for-merit",
          1 - merit.value,
          "That is the share that is lost. The figure of merit is the share that is used.",
        ),
      ],
    };
  },
};

export const whatTheRotorAsks = [disc, leastPower, ownDrag, howGood];
