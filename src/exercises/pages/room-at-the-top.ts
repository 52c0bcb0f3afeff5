/** Exercises of the page on the room above the set speed. */
import { speedHeadroom } from "#model/headroom";
import { ceilingSpeed } from "#model/powertrain";
import { setSpeed } from "#model/reference";
import { relativeChange } from "#model/scaling";
import { amount, tell, work } from "../amount.ts";
import { drawCellVoltage, drawCurrent, drawRatio, topRpm } from "../around.ts";
import { type Recipe, slip } from "../exercise.ts";

const roomInPercent: Recipe = {
  id: "room-in-percent",
  draw(hand, machine) {
    const setTo = amount(hand.near(topRpm(machine), { figures: 3 }), "rpm");
    const ceiling = amount(Number((setTo.value * (1 + hand.whole(6, 18) / 100)).toPrecision(3)), "rpm");
    const headroom = work(speedHeadroom, { ceiling, setSpeed: setTo }, "rpm");
    const share = work(relativeChange, { before: setTo, after: ceiling }, "%");
    return {
      question: tell`The governor holds ${setTo}. Full duty would give ${ceiling} at this load. How much room is that, in per cent of the set speed?`,
      answer: share,
      steps: [headroom, share],
      because: "Room is what the ceiling has above the set speed, counted against the set speed.",
      relative: 0.02,
      slips: [
        slip(
          "share-of-ceiling",
          (100 * headroom.value) / ceiling.value,
          "You counted it against the ceiling. The set speed is the measure.",
        ),
        slip("rpm-for-percent", headroom.value, "Those are rpm. Which share of the set speed is that?"),
        slip(
          "whole-for-room",
          (100 * ceiling.value) / setTo.value,
          "That is the ceiling as a share of the set speed. Room is what lies above 100 %.",
        ),
      ],
    };
  },
};

const ceilingUnderLoad: Recipe = {
  id: "ceiling-under-load",
  draw(hand, machine) {
    const openVoltage = amount(Number((machine.pack.cells * drawCellVoltage(hand, machine)).toFixed(1)), "V");
    const current = amount(drawCurrent(hand, machine, 18), "A");
    const resistance = amount(hand.near((0.13 * openVoltage.value * 1000) / current.value, { spread: 0.3 }), "mΩ");
    const speedConstant = amount(hand.near(machine.motor.kvRpmPerVolt), "rpm/V");
    const gearRatio = amount(drawRatio(hand, machine));
    const ceiling = work(ceilingSpeed, { speedConstant, openVoltage, current, resistance, gearRatio }, "rpm");
    const unloaded = (speedConstant.value * openVoltage.value) / gearRatio.value;
    return {
      question: tell`At full pitch a motor of ${speedConstant} takes ${current} from a pack that rests at ${openVoltage}. The way there has ${resistance} in all, the gear ratio is ${gearRatio}. What is the ceiling?`,
      answer: ceiling,
      steps: [ceiling],
      because: "Take off the volts that the current costs; Kv makes turns of the rest, and the gears divide them.",
      slips: [
        slip("sag-forgotten", unloaded, "So fast only without a load. The current costs volts on its way."),
        slip("sag-added", 2 * unloaded - ceiling.value, "A load takes volts away; it adds none."),
        slip(
          "gears-forgotten",
          ceiling.value * gearRatio.value,
          "That is the motor. The gears divide it on the way to the rotor.",
        ),
        slip("sag-only", unloaded - ceiling.value, "That is what the load costs. What is left?"),
      ],
    };
  },
};

const roomAtNinety: Recipe = {
  id: "short-at-ninety",
  draw(hand, machine) {
    const full = amount(Math.round(hand.near(topRpm(machine) / 0.85) / 20) * 20, "rpm");
    const throttle = amount(hand.pick([85, 90]), "%");
    const asked = work(setSpeed, { throttle, reference: full, gearRatio: amount(1) }, "rpm");
    const ceiling = amount(Math.round((asked.value * hand.whole(88, 97)) / 1000) * 10, "rpm");
    const short = work(speedHeadroom, { ceiling: asked, setSpeed: ceiling }, "rpm");
    return {
      question: tell`100 % asks for ${full} at the rotor, and you fly at ${throttle}. On a half-empty pack the ceiling at full pitch is ${ceiling}. By how many rpm is the governor short?`,
      answer: short,
      steps: [asked, short],
      because: "The throttle asks for a share of the learned speed, whatever ceiling the pack has left.",
      relative: 0.02,
      slips: [
        slip(
          "rest-to-reference",
          full.value - asked.value,
          "That is the rest up to 100 %. It is a number in the controller, not a reserve.",
        ),
        slip(
          "ceiling-against-reference",
          full.value - ceiling.value,
          "You compared with 100 %. The governor asks only for the throttle's share.",
        ),
        slip(
          "share-of-ceiling",
          ceiling.value * (1 - throttle.value / 100),
          "The throttle is a share of the learned speed, not of the ceiling.",
        ),
      ],
    };
  },
};

export const roomAtTheTop = [roomInPercent, ceilingUnderLoad, roomAtNinety];
