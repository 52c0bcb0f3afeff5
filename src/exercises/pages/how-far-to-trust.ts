/** Exercises of the page on trust: the size of an error, the low end of a band, and which doubt is worth measuring. */
import { speedHeadroom } from "#model/headroom";
import { combinedDoubt, relativeChange } from "#model/scaling";
import { amount, tell, work } from "../amount.ts";
import { topRpm } from "../around.ts";
import { type Recipe, slip } from "../exercise.ts";
import { rounded } from "../hand.ts";

const errorOfModel: Recipe = {
  id: "error-of-model",
  draw(hand, { airframe }) {
    const measured = amount(hand.near((9.81 * airframe.massG) / 1000, { figures: 3, spread: 0.3, otherwise: 20 }), "N");
    const off = hand.pick([-1, 1]) * hand.whole(8, 24);
    const computed = amount(rounded(measured.value * (1 + off / 100), 3), "N");
    const error = work(relativeChange, { before: measured, after: computed }, "%");
    return {
      question: tell`A model says that a rotor lifts ${computed}. On the stand it lifts ${measured}. By how many per cent is the model off, with a minus for too low?`,
      answer: error,
      steps: [error],
      because: "What was measured is the measure: the error is the gap as a share of it.",
      relative: 0.015,
      slips: [
        slip(
          "share-of-the-model",
          100 * (1 - measured.value / computed.value),
          "You took the gap as a share of the model's figure. The measured one is what counts.",
        ),
        slip(
          "model-for-error",
          100 + error.value,
          "That is the model's figure as a share of the truth. How far off is it?",
        ),
      ],
    };
  },
};

const lowEnd: Recipe = {
  id: "low-end-of-band",
  draw(hand, machine) {
    // A band in steps that suit the rotor: about half a per cent of its speed.
    const step = Math.max(1, Math.round(topRpm(machine) / 200));
    const asked = amount(hand.near(topRpm(machine)), "rpm");
    const room = step * hand.whole(9, 16);
    const below = step * hand.whole(2, 4);
    const above = step * hand.whole(1, 3);
    const middle = amount(asked.value + room, "rpm");
    const low = amount(middle.value - below, "rpm");
    const high = amount(middle.value + above, "rpm");
    const sure = work(speedHeadroom, { ceiling: low, setSpeed: asked }, "rpm");
    return {
      question: tell`A ceiling reads ${middle}, with a band from ${low} to ${high}. The mode asks for ${asked}. How much room is there still, if the truth lies at the bad end?`,
      answer: sure,
      steps: [sure],
      because: "Room is sure only if it is there at the end that hurts: for a ceiling, the low one.",
      slips: [
        slip("middle-for-end", room, "That is the room at the figure itself. The truth may lie lower."),
        slip("wrong-end", room + above, "That is the kind end of the band. Which end would hurt you?"),
        slip("band-for-room", below, "That is how far the band reaches down. How much room is left then?"),
      ],
    };
  },
};

const oneMeasured: Recipe = {
  id: "one-doubt-measured",
  draw(hand) {
    const [large, small] = [amount(hand.whole(60, 99) / 10, "%"), amount(hand.whole(25, 45) / 10, "%")];
    const measured = amount(hand.whole(10, 20) / 10, "%");
    const [before, after] = [large, measured].map((first) => work(combinedDoubt, { first, second: small }, "%"));
    if (!before || !after) return null;
    return {
      question: tell`One input moves a figure by ${large}, another by ${small}; neither knows of the other. You measure the first, and it now moves the figure by ${measured}. How wide is the doubt to each side?`,
      answer: after,
      steps: [before, after],
      because: "Doubts that know nothing of each other add as squares, so the largest one rules until it is measured.",
      relative: 0.015,
      slips: [
        slip(
          "added-straight",
          measured.value + small.value,
          "They are seldom both at their worst. Add the squares, then take the root.",
        ),
        slip("before-measuring", before.value, "That was the doubt before you measured. Put the new one in."),
        slip(
          "wrong-one-measured",
          Math.hypot(large.value, measured.value),
          "You narrowed the smaller one. The larger one was measured.",
        ),
      ],
    };
  },
};

export const howFarToTrust = [errorOfModel, lowEnd, oneMeasured];
