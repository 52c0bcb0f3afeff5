/** The words around the exercises of a page, in English. Questions, hints and solutions stand with the exercises. */
export const enExercises = {
  title: "Try it with numbers",
  metric:
    "These questions stay in metric units, because the formulas are worked in them. An answer with another unit behind it is understood.",
  numbers: (seed: number) => `Numbers ${seed}`,
  none: "This machine gives these exercises no numbers to work with.",
  answer: "Your answer",
  answerIn: (unit: string) => `Your answer, in ${unit}`,
  check: "check",
  another: "new numbers",
  show: "show me",
  solution: "solution",
  hide: "hide the solution",
  right: "Right.",
  changed: "Your machine has changed, and these numbers with it.",
  given: (text: string) => `You said ${text}.`,
  solved: (answer: string) => `The model says ${answer}.`,
};
