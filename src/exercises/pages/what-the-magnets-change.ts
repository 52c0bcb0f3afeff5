/** Exercises of the page on magnet poles: nothing for the rotor, all for whoever counts. */
import { electricalSpeed, motorSpeedLimit, shownSpeed } from "#model/poles";
import { amount, tell, work } from "../amount.ts";
import { drawRatio, ratioNow, topRpm } from "../around.ts";
import { type Recipe, slip } from "../exercise.ts";

const even = (pairs: number) => amount(2 * pairs);
const pairsOf = (poles: number): number => Math.max(2, Math.round(poles / 2));

const electricalTurns: Recipe = {
  id: "electrical-speed",
  draw(hand, machine) {
    const poles = even(hand.count(pairsOf(machine.motor.poles), 2, 2));
    const motorSpeed = amount(hand.near(topRpm(machine) * ratioNow(machine)), "rpm");
    const speed = work(electricalSpeed, { motorSpeed, poles }, "rpm");
    return {
      question: tell`A motor with ${poles} magnet poles turns at ${motorSpeed}. Which electrical speed must the controller follow?`,
      answer: speed,
      steps: [speed],
      because: "One turn of the motor is one electrical turn for each pair of magnets.",
      slips: [
        slip("poles-for-pairs", 2 * speed.value, "You counted every magnet. An electrical turn takes a pair of them."),
        slip(
          "divided-by-pairs",
          motorSpeed.value / (poles.value / 2),
          "More magnets make more electrical turns, not fewer: multiply.",
        ),
        slip(
          "poles-forgotten",
          motorSpeed.value,
          "That is the motor's own speed. How many electrical turns are in one of its turns?",
        ),
      ],
    };
  },
};

const fastestMotor: Recipe = {
  id: "fastest-motor",
  draw(hand, machine) {
    const poles = even(hand.count(pairsOf(machine.motor.poles), 2, 2));
    const electricalLimit = amount(hand.near(machine.controller.electricalRpmLimit, { spread: 0.2 }), "rpm");
    const limit = work(motorSpeedLimit, { electricalLimit, poles }, "rpm");
    return {
      question: tell`A controller can follow ${electricalLimit} electrical. The motor has ${poles} magnet poles. How fast may the motor turn?`,
      answer: limit,
      steps: [limit],
      because: "The controller's limit is shared out among the pairs of magnets.",
      slips: [
        slip("poles-for-pairs", limit.value / 2, "You divided by every magnet. Two of them make one electrical turn."),
        slip(
          "multiplied",
          (electricalLimit.value * poles.value) / 2,
          "The motor turns slower than the field inside it: divide.",
        ),
        slip(
          "poles-forgotten",
          electricalLimit.value,
          "That is the electrical speed. The motor turns once for several of those.",
        ),
      ],
    };
  },
};

const wrongDisplay: Recipe = {
  id: "wrong-display",
  draw(hand, machine) {
    const pairs = hand.count(pairsOf(machine.motor.poles), 1, 2);
    const told = Math.max(1, pairs + hand.pick([-2, -1, 1, 2]));
    if (told === pairs) return null;
    const [poles, polesSet] = [even(pairs), even(told)];
    const speed = amount(hand.near(topRpm(machine)), "rpm");
    const shown = work(shownSpeed, { polesSet, poles, speed }, "rpm");
    const gears = amount(drawRatio(hand, machine));
    return {
      question: tell`The rotor turns at ${speed} behind gears of ${gears} to 1, and the motor has ${poles} poles. Somebody told the display ${polesSet}. Which head speed does it show?`,
      answer: shown,
      steps: [shown],
      because: "The display counts electrical turns and divides them by the number that it was told.",
      slips: [
        slip(
          "ratio-upside-down",
          speed.value ** 2 / shown.value,
          "Turn the fraction over: told more poles, a display shows less speed.",
        ),
        slip("nothing-changes", speed.value, "The rotor doesn't change, but the display divides by the wrong number."),
        slip("one-side-pairs", shown.value * 2, "Take poles on both sides, or pairs on both."),
        slip(
          "gears-counted-twice",
          shown.value * gears.value,
          "The gears are right already; only the poles were told wrong.",
        ),
      ],
    };
  },
};

export const whatTheMagnetsChange = [electricalTurns, fastestMotor, wrongDisplay];
