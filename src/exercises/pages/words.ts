/** Exercises of the page of words: several numbers of one moment, and a word that says which of them is meant. */
import { speedHeadroom } from "#model/headroom";
import { electricalSpeed } from "#model/poles";
import { setSpeed } from "#model/reference";
import { amount, tell, work } from "../amount.ts";
import { drawRatio, topRpm } from "../around.ts";
import { type Recipe, slip } from "../exercise.ts";
import { rounded } from "../hand.ts";

const throttleOrDuty: Recipe = {
  id: "throttle-or-duty",
  draw(hand, machine) {
    const gearRatio = amount(drawRatio(hand, machine));
    const throttle = amount(hand.whole(74, 92), "%");
    const duty = amount(hand.whole(45, 68), "%");
    const reference = amount(hand.near((topRpm(machine) * gearRatio.value) / throttle.si), "rpm");
    const asked = work(setSpeed, { throttle, reference, gearRatio }, "rpm");
    return {
      question: tell`A hover takes a duty of ${duty} at a throttle of ${throttle}. The reference is ${reference} at the motor, and the gear ratio ${gearRatio}. Which set speed does the rotor have?`,
      answer: asked,
      steps: [asked],
      because: "Throttle is the share of the reference that is asked for. Duty is what holding it costs.",
      slips: [
        slip("duty-for-throttle", asked.value * (duty.value / throttle.value), "Duty names no speed. Which word does?"),
        slip(
          "motor-for-head",
          asked.value * gearRatio.value,
          "That is the motor speed. A set speed is one of the rotor: the gears stand between.",
        ),
        slip(
          "reference-for-set",
          asked.value / throttle.si,
          "That is the whole reference. The mode asks for a share of it.",
        ),
      ],
    };
  },
};

const threeSpeeds: Recipe = {
  id: "three-speeds",
  draw(hand, machine) {
    const poles = amount(2 * hand.count(machine.motor.poles / 2, 2, 2));
    const head = amount(hand.near(topRpm(machine)), "rpm");
    const motorSpeed = amount(rounded(head.value * drawRatio(hand, machine), 3), "rpm");
    const electrical = work(electricalSpeed, { motorSpeed, poles }, "rpm");
    const pairs = poles.value / 2;
    return {
      question: tell`A rotor turns at ${head} and its motor at ${motorSpeed}. The motor has ${poles} magnets. How large is the electrical speed?`,
      answer: electrical,
      steps: [electrical],
      because: "One motion has three speeds; the electrical one is the motor's, once for each pair of magnets.",
      slips: [
        slip("head-for-motor", head.value * pairs, "The controller sits at the motor, before the gears."),
        slip("magnets-for-pairs", motorSpeed.value * poles.value, "One electrical turn takes a pair, north and south."),
        slip(
          "motor-for-electrical",
          motorSpeed.value,
          "That is the motor speed. The windings are gone round more often.",
        ),
      ],
    };
  },
};

const headroomOrDroop: Recipe = {
  id: "headroom-or-droop",
  draw(hand, machine) {
    const step = Math.max(1, Math.round(topRpm(machine) / 100));
    const asked = amount(hand.near(topRpm(machine)), "rpm");
    const room = step * hand.whole(5, 9);
    const more = step * hand.whole(3, 6);
    const dip = step * hand.whole(2, 4);
    const ceiling = amount(asked.value + room, "rpm");
    const inHover = amount(ceiling.value + more, "rpm");
    const lowest = amount(asked.value - dip, "rpm");
    const headroom = work(speedHeadroom, { ceiling, setSpeed: asked }, "rpm");
    return {
      question: tell`The set speed is ${asked}, the ceiling ${inHover} in hover and ${ceiling} at full pitch. A gust of pitch pulls the rotor down to ${lowest} for a moment. How much headroom is there at full pitch?`,
      answer: headroom,
      steps: [headroom],
      because: "Headroom is counted from the set speed up to the ceiling of the same moment.",
      slips: [
        slip("droop-for-headroom", dip, "That is how far it droops. Headroom lies above the set speed."),
        slip(
          "hover-for-full-pitch",
          room + more,
          "That is the headroom in hover. Full pitch has a ceiling of its own.",
        ),
        slip("from-the-lowest", room + dip, "Count from the speed that is asked for, not from the dip."),
        slip("fall-of-ceiling", more, "That is how far the ceiling sinks. What is left above the set speed?"),
      ],
    };
  },
};

export const theWords = [throttleOrDuty, threeSpeeds, headroomOrDroop];
