/** Exercises of the page on the tip of the blade: its speed, the pull at the bolt, the energy stored. */
import { bladePull, tipMach, tipSpeed } from "#model/blades";
import { squareLaw } from "#model/scaling";
import { amount, tell, work } from "../amount.ts";
import { storedNear, topRpm } from "../around.ts";
import { type Recipe, slip } from "../exercise.ts";

const speedOfTips: Recipe = {
  id: "tip-speed",
  draw(hand, machine) {
    const diameter = amount(hand.near(machine.mainRotor.diameterMm), "mm");
    const headSpeed = amount(hand.near(topRpm(machine)), "rpm");
    const radius = amount(diameter.value / 2000, "m");
    const speed = work(tipSpeed, { speed: amount(headSpeed.si, "rad/s"), radius }, "m/s");
    return {
      question: tell`A rotor of ${diameter} diameter turns at ${headSpeed}. How fast are its blade tips, in m/s?`,
      answer: speed,
      steps: [speed],
      because: "Tip speed is turning speed in radians per second times the radius in metres.",
      slips: [
        slip("diameter-for-radius", 2 * speed.value, "The tips run round at the radius: halve the diameter."),
        slip(
          "rpm-for-radians",
          (speed.value * 30) / Math.PI,
          "Turn rpm into radians per second first: times 2π, over 60.",
        ),
        slip("minute-for-second", 60 * speed.value, "That is metres in a minute. A second is asked for."),
        slip(
          "turns-for-radians",
          speed.value / (2 * Math.PI),
          "One turn is 2π radians: the tip goes all the way round.",
        ),
      ],
    };
  },
};

const machOfTips: Recipe = {
  id: "tip-mach",
  draw(hand, machine) {
    const tips = amount(
      hand.near(tipSpeed({ speed: amount(topRpm(machine), "rpm").si, radius: machine.mainRotor.diameterMm / 2000 })),
      "m/s",
    );
    const forward = amount(hand.whole(15, 40), "m/s");
    const soundSpeed = amount(hand.pick([330, 334, 337, 340, 343, 346]), "m/s");
    const advancing = amount(tips.value + forward.value, "m/s");
    const mach = work(tipMach, { tipSpeed: advancing, soundSpeed }, "");
    return {
      question: tell`The tips turn at ${tips} while the machine flies at ${forward}. Sound runs at ${soundSpeed}. Which Mach number has the tip that moves forwards?`,
      answer: mach,
      steps: [mach],
      because: "On the advancing side the speed of flight comes on top of the tip's own.",
      slips: [
        slip(
          "flight-forgotten",
          tips.value / soundSpeed.value,
          "So it is in hover. In flight the advancing tip has the speed of flight on top.",
        ),
        slip(
          "retreating-tip",
          Math.abs(tips.value - forward.value) / soundSpeed.value,
          "That is the tip that moves backwards.",
        ),
        slip("ratio-upside-down", 1 / mach.value, "Mach is the tip over sound. Turn the fraction over."),
      ],
    };
  },
};

const pullAtBolt: Recipe = {
  id: "blade-pull",
  draw(hand, machine) {
    const { bladeMassG, bladeCentreMm } = machine.mainRotor;
    const mass = amount(hand.near(bladeMassG), "g");
    const centre = amount(hand.near(bladeCentreMm), "mm");
    const headSpeed = amount(hand.near(topRpm(machine)), "rpm");
    const pull = work(
      bladePull,
      { mass: amount(mass.si, "kg"), centre: amount(centre.si, "m"), speed: amount(headSpeed.si, "rad/s") },
      "N",
    );
    return {
      question: tell`A blade of ${mass} has its centre of mass ${centre} from the shaft. The rotor turns at ${headSpeed}. How strong is the pull at its bolt?`,
      answer: pull,
      steps: [pull],
      because:
        "Pull is mass times distance times the square of the turning speed, in kilograms, metres and radians per second.",
      slips: [
        slip(
          "linear-for-square",
          pull.value / headSpeed.si,
          "The turning speed enters twice: pull goes with its square.",
        ),
        slip(
          "rpm-for-radians",
          pull.value * (30 / Math.PI) ** 2,
          "Turn rpm into radians per second first: times 2π, over 60.",
        ),
        slip("radians-forgotten", pull.value / (2 * Math.PI) ** 2, "One turn is 2π radians, and the speed is squared."),
        slip("halved", pull.value / 2, "The half belongs to energy, not to pull."),
      ],
    };
  },
};

const storedEnergy: Recipe = {
  id: "stored-energy",
  draw(hand, machine) {
    const { blades } = machine.mainRotor;
    const headSpeed = amount(hand.near(topRpm(machine)), "rpm");
    const faster = amount(Number((headSpeed.value * hand.pick([1.1, 1.2, 1.25, 0.8])).toPrecision(3)), "rpm");
    const given = amount(hand.near(storedNear(machine, headSpeed)), "J");
    const after = work(squareLaw, { before: given, from: headSpeed, to: faster }, "J");
    const times = faster.value / headSpeed.value;
    return {
      question: tell`The ${amount(blades)} blades of a rotor store ${given} together at ${headSpeed}. How much do they store at ${faster}?`,
      answer: after,
      steps: [after],
      because: "Stored energy goes with the square of speed: a little faster is a lot more energy.",
      slips: [
        slip("linear-for-square", given.value * times, "Energy goes with the square of speed, not in step with it."),
        slip(
          "cube-for-square",
          given.value * times ** 3,
          "Too steep: the cube belongs to the power of drag. Energy goes with the square.",
        ),
        slip("ratio-upside-down", given.value / times ** 2, "Turn the fraction over: a faster rotor stores more."),
        slip("blades-counted-twice", after.value * blades, "The figure holds all blades already."),
      ],
    };
  },
};

export const tipOfTheBlade = [speedOfTips, machOfTips, pullAtBolt, storedEnergy];
