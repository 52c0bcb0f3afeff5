/** Exercises of the page that flies a whole pack: duration by charge, and what is left. */
import { chargeUsed } from "#model/currents";
import { flightTime } from "#model/endurance";
import { amount, tell, work } from "../amount.ts";
import { drawCurrent } from "../around.ts";
import { type Recipe, slip } from "../exercise.ts";

const landAtTwenty: Recipe = {
  id: "land-at-twenty",
  draw(hand, machine) {
    const capacity = amount(hand.near(machine.pack.capacityMah), "mAh");
    const current = amount(drawCurrent(hand, machine, 8), "A");
    const used = amount(80, "%");
    const time = work(flightTime, { capacity, used, current }, "min");
    return {
      question: tell`A full pack of ${capacity} gives ${current} on average. You land with a fifth of its charge left. How many minutes do you fly?`,
      answer: time,
      steps: [time],
      because: "Four fifths of the charge are yours; the current takes its share of them in each minute.",
      slips: [
        slip("whole-charge", time.value / 0.8, "You flew it empty. A fifth stays in the pack."),
        slip("reserve-for-flight", time.value / 4, "You flew the fifth that should stay."),
        slip("hours-for-minutes", time.value / 60, "Those are hours: the capacity is counted in ampere hours."),
        slip(
          "multiplied",
          ((capacity.value / 1000) * 0.8 * current.value * 60) / 1000,
          "More current empties it sooner: divide by it.",
        ),
      ],
    };
  },
};

const chargeLeft: Recipe = {
  id: "charge-left",
  draw(hand, machine) {
    const capacity = amount(hand.near(machine.pack.capacityMah), "mAh");
    const current = amount(drawCurrent(hand, machine, 8), "A");
    const minutes = (60 * capacity.value * 0.6) / (1000 * current.value);
    const time = amount(Math.max(0.5, Math.round(2 * hand.near(minutes, { spread: 0.25 })) / 2), "min");
    const used = work(chargeUsed, { current, time, capacity }, "%");
    if (used.value > 85) return null;
    const left = amount(100 - used.value, "%");
    return {
      question: tell`You take off with a full pack of ${capacity} and draw ${current} on average. After ${time} you land. How much charge is left, in per cent?`,
      answer: left,
      steps: [used],
      because: "Current times time is the charge that went; what is left is the rest of the whole.",
      slips: [
        slip("used-for-left", used.value, "That is what you used. How much is left?"),
        slip(
          "minutes-for-hours",
          100 - 60 * used.value,
          "The capacity counts ampere hours: turn the minutes into hours.",
        ),
        slip("reserve-taken-off", left.value - 20, "The question is what is left in all, the last fifth included."),
      ],
    };
  },
};

const gentlerMode: Recipe = {
  id: "gentler-mode",
  draw(hand, machine) {
    const capacity = amount(hand.near(machine.pack.capacityMah), "mAh");
    const fast = amount(drawCurrent(hand, machine, 9), "A");
    const slow = amount(Number((fast.value * (1 - hand.whole(15, 35) / 100)).toPrecision(2)), "A");
    const used = amount(80, "%");
    const short = work(flightTime, { capacity, used, current: fast }, "min");
    const long = work(flightTime, { capacity, used, current: slow }, "min");
    const gain = amount(long.value - short.value, "min");
    return {
      question: tell`A gentler mode draws ${slow} on average in place of ${fast}. You use 80 % of ${capacity} in both. How many minutes longer do you fly?`,
      answer: gain,
      steps: [short, long],
      because: "Work out both flights and take the difference; time goes with one over current.",
      relative: 0.02,
      slips: [
        slip("total-for-gain", long.value, "That is the whole flight. How much longer is it than the other?"),
        slip(
          "current-of-difference",
          (((capacity.value / 1000) * 0.8) / (fast.value - slow.value)) * 60,
          "You flew on the difference of the currents. Work out each flight by itself.",
        ),
        slip(
          "linear-for-inverse",
          short.value * (1 - slow.value / fast.value),
          "Time goes with one over current: a third less current is half as long again.",
        ),
      ],
    };
  },
};

export const wholePack = [landAtTwenty, chargeLeft, gentlerMode];
