/** Exercises of the page on two gears: how far apart, which teeth meet, how fast they pass, how fast the tail turns. */

import { meetingTurns, pitchLineSpeed, tailSpeed, toothMeeting } from "#model/gears";
import { centreDistance } from "#model/gears-mesh";
import { amount, tell, work } from "../amount.ts";
import { ratioNow, topRpm } from "../around.ts";
import { type Recipe, slip } from "../exercise.ts";

/** Modules that model gears are cut in, mm: ISO 54 and DIN 780. */
const modules = [0.4, 0.5, 0.6, 0.7, 0.8, 1];

const shaftDistance: Recipe = {
  id: "centre-distance",
  draw(hand, { gears }) {
    const module = amount(hand.pick(modules), "mm");
    const pinionTeeth = amount(hand.count(gears.pinionTeeth, 2, 8), "teeth");
    const mainTeeth = amount(hand.count(Math.max(gears.mainTeeth, 3 * pinionTeeth.value), 8, 30), "teeth");
    const distance = work(centreDistance, { module, pinionTeeth, mainTeeth }, "mm");
    const gap = (module.value * (mainTeeth.value - pinionTeeth.value)) / 2;
    return {
      question: tell`A pinion of ${pinionTeeth} and a main gear of ${mainTeeth} are both of module ${module}. How far apart are their shafts?`,
      answer: distance,
      steps: [distance],
      because: "Module times teeth is a gear's diameter, and the shafts stand two radii apart.",
      slips: [
        slip(
          "diameter-for-radius",
          2 * distance.value,
          "You added diameters. Between the shafts lie two radii: halve it.",
        ),
        slip("difference-for-sum", gap, "The gears stand beside each other: their radii add up."),
        slip(
          "one-gear-only",
          (module.value * mainTeeth.value) / 2,
          "That is the main gear's radius. The pinion has one too.",
        ),
        slip(
          "module-forgotten",
          (mainTeeth.value + pinionTeeth.value) / 2,
          "That is a number of teeth. The module makes millimetres of it.",
        ),
      ],
    };
  },
};

const sameTeeth: Recipe = {
  id: "same-teeth-again",
  draw(hand, { gears }) {
    const pinion = hand.count(gears.pinionTeeth, 3, 8);
    const main = hand.count(Math.max(gears.mainTeeth, 3 * pinion), 8, 30);
    const meeting = toothMeeting(pinion, main);
    // With every tooth meeting every other, or one gear dividing the other, there is nothing to find.
    if (!meeting || meeting.common === 1 || meeting.common === pinion) return null;
    const turns = work(meetingTurns, { pinionTeeth: amount(pinion, "teeth"), common: amount(meeting.common) }, "turns");
    return {
      question: tell`A pinion of ${amount(pinion, "teeth")} drives a gear of ${amount(main, "teeth")}. Two marked teeth meet now. After how many turns of the main gear do the same two meet again?`,
      answer: turns,
      steps: [turns],
      because: `Both counts can be divided by ${meeting.common}; each gear turns as often as the other has teeth, over that number.`,
      absolute: 0.1,
      relative: 0,
      slips: [
        slip("other-gear", meeting.pinionTurns, "Those are the pinion's turns. The main gear is asked for."),
        slip("divisor-forgotten", pinion, "So long it takes only when no number divides both counts. Here one does."),
        slip(
          "teeth-for-turns",
          (pinion * main) / meeting.common,
          "Those are the teeth that pass. How many turns of the main gear is that?",
        ),
        slip(
          "divisor-for-turns",
          meeting.common,
          "That number divides both counts. Now see how often it goes into the pinion.",
        ),
      ],
    };
  },
};

const tailRotorSpeed: Recipe = {
  id: "tail-speed",
  draw(hand, machine) {
    const tailRatio = amount(hand.near(Math.max(1.5, machine.gears.tailRatio)));
    const headSpeed = amount(hand.near(topRpm(machine)), "rpm");
    const gearRatio = amount(Number(ratioNow(machine).toPrecision(2)));
    const speed = work(tailSpeed, { headSpeed, tailRatio }, "rpm");
    return {
      question: tell`The main rotor turns at ${headSpeed}. The tail turns ${tailRatio} times for each of its turns, the motor ${gearRatio} times. How fast is the tail rotor?`,
      answer: speed,
      steps: [speed],
      because: "The tail is driven from the main shaft, so the motor's gears don't enter again.",
      slips: [
        slip(
          "ratio-upside-down",
          headSpeed.value / tailRatio.value,
          "The tail turns faster than the main rotor: multiply.",
        ),
        slip("motor-gears", headSpeed.value * gearRatio.value, "That is the motor. The tail has a ratio of its own."),
        slip(
          "both-gears",
          speed.value * gearRatio.value,
          "You geared it twice. The head speed is behind the motor's gears already.",
        ),
      ],
    };
  },
};

const passingTeeth: Recipe = {
  id: "pitch-line-speed",
  draw(hand, machine) {
    const module = amount(hand.pick(modules), "mm");
    const pinionTeeth = amount(hand.count(machine.gears.pinionTeeth, 2, 8), "teeth");
    const motorSpeed = amount(hand.near(topRpm(machine) * ratioNow(machine)), "rpm");
    const speed = work(pitchLineSpeed, { module, pinionTeeth, motorSpeed: amount(motorSpeed.si, "rad/s") }, "m/s");
    return {
      question: tell`A pinion of ${pinionTeeth}, module ${module}, turns at ${motorSpeed}. How fast do its teeth pass the point where they mesh, in m/s?`,
      answer: speed,
      steps: [speed],
      because: "Speed at the teeth is turning speed in radians per second times the pinion's radius in metres.",
      slips: [
        slip(
          "diameter-for-radius",
          2 * speed.value,
          "Module times teeth is the diameter. Use the radius with radians per second.",
        ),
        slip(
          "rpm-for-radians",
          speed.value * (30 / Math.PI),
          "Turn rpm into radians per second first: times 2π, over 60.",
        ),
        slip("minute-for-second", speed.value * 60, "That is metres in a minute. A second is asked for."),
        slip("turns-for-radians", speed.value / (2 * Math.PI), "One turn is 2π radians."),
      ],
    };
  },
};

export const twoGears = [shaftDistance, sameTeeth, tailRotorSpeed, passingTeeth];
