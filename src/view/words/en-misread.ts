/** The words of the page on readings that are wrong. */
import type { CauseKey } from "#figures/misread-causes";

type Sizes = Readonly<Record<string, number>>;
interface CauseWords {
  /** What it is called on a plot. */
  readonly short: string;
  /** A whole name, for a choice. */
  readonly name: string;
  /** With the size that fits best. `percent` is what it leaves open, as it fits best. */
  readonly found: (sizes: Sizes, percent: string) => string;
  /** How it shows in the modes. */
  readonly shows: string;
  /** What to do at the field or the bench that tells it from the others. */
  readonly check: string;
}

const whole = (value: number | undefined): string => String(Math.round(value ?? 0));

const causes: Readonly<Record<CauseKey, CauseWords>> = {
  nothing: {
    short: "nothing wrong",
    name: "nothing at all: the readings are as good as the instrument",
    found: () => "Nothing is wrong: the gaps are no larger than the doubt of a reading.",
    shows: "small gaps, some up and some down",
    check: "Read one mode three times over. If the three differ as much as the modes do, leave it alone.",
  },
  poles: {
    short: "magnets",
    name: "a display that was told the wrong number of magnets",
    found: ({ told, poles }) =>
      `The display was told ${whole(told)} magnets where there are ${whole(poles)}. The rotor itself is right.`,
    shows: "the same share in every mode, and the share is a ratio of two small whole numbers",
    check:
      "Count the magnets in the bell with the pack unplugged, and look up what the display was told. Or read one mode with another instrument: it will be right.",
  },
  "display-teeth": {
    short: "display's ratio",
    name: "a display that was told another gear ratio",
    found: ({ pinion, main }) =>
      `The display divides by other gears than the ones entered here: it fits ${whole(pinion)} to ${whole(main)} teeth.`,
    shows: "the same share in every mode, worth a tooth or two",
    check:
      "Compare the ratio that the display was told with the teeth you count. An instrument at the rotor doesn't know any ratio.",
  },
  blades: {
    short: "blades counted",
    name: "a tachometer set to another number of blades",
    found: ({ told, blades }) =>
      `The tachometer is set to ${whole(told)} ${told === 1 ? "blade" : "blades"} in front of ${whole(blades)}. The rotor itself is right.`,
    shows: "the same share in every mode, such as two thirds or one and a half",
    check:
      "Look at the tachometer's setting. It must be the number of blades that pass it, or 1 where it sees one mark.",
  },
  flicker: {
    short: "lamp light",
    name: "a tachometer that counts the flicker of a lamp",
    found: ({ flicker, mains }) =>
      `The tachometer counts a lamp: ${whole(flicker)} flashes a second, from mains of ${whole(mains)} Hz.`,
    shows: "the same speed in every mode, whatever was asked for",
    check: "Point it at the lamp with the rotor at rest: it still shows a speed. Measure by daylight, or shade it.",
  },
  teeth: {
    short: "teeth",
    name: "a gear with another number of teeth than entered",
    found: ({ pinion, main }) =>
      `The gears have other teeth than entered here: it fits ${whole(pinion)} to ${whole(main)}. Throttle values from before a change of gears look the same.`,
    shows: "the same share in every mode, worth a tooth or two; a display that was told the same teeth shows nothing",
    check:
      "Unplug the pack. Count the pinion's teeth, with a pen mark on the first one. Then ask yourself when the throttle values were worked out.",
  },
  reference: {
    short: "never measured",
    name: "a reference that was never measured, only worked out",
    found: (_, percent) =>
      `The reference here is worked out from a printed Kv, and never measured. It would be ${percent} off.`,
    shows: "the same share in every mode, of a few per cent",
    check:
      "Read the head speed while it learns, or read the motor's learned speed from the log, and enter it under 'what the controller has learned'.",
  },
  "pack-then": {
    short: "learned on another pack",
    name: "a reference learned on another pack, or on one that wasn't full",
    found: ({ charge, cells }) =>
      charge === undefined
        ? `It learned on ${whole(cells)} cells.`
        : `It learned on a pack that was down to about ${whole(charge)}\u00a0%.`,
    shows: "the same share in every mode; all too slow after a half-empty pack",
    check: "Let it learn again with the pack of these flights, full. Then read one mode.",
  },
  "pitch-then": {
    short: "learned with pitch",
    name: "a reference learned with pitch on the blades",
    found: () => "It learned with pitch on the blades, which held the motor back.",
    shows: "the same share in every mode, too slow",
    check: "Let it learn again with flat pitch and a still hand.",
  },
  ceiling: {
    short: "can't hold it",
    name: "a speed that pack and motor can't hold",
    found: ({ charge }) => `The fast modes can't be held: it fits a pack at about ${whole(charge)}\u00a0%.`,
    shows: "slow modes are right, fast ones fall short, and by more with pitch or with a tired pack",
    check:
      "Read the same mode with a full pack and little pitch. If it comes right, nothing is set wrong: you met the ceiling.",
  },
  "end-point": {
    short: "upper end point",
    name: "an upper end point of the throttle that is off",
    found: (_, percent) => `The upper end of the throttle's travel is ${percent} off.`,
    shows: "the same share in every mode, and no ratio of teeth or magnets",
    check:
      "Look at the throttle on the controller's side, in its log or its set-up: full stick must read 100 %. Take the pinion out of mesh first.",
  },
  "low-end": {
    short: "lower end point",
    name: "a lower end point of the throttle that is off",
    found: (_, percent) => `The lower end of the throttle's travel is ${percent} off; its upper end is right.`,
    shows: "slow modes are off by most, and towards full throttle it comes right",
    check:
      "Look at the throttle on the controller's side: stick down must read 0 %. Take the pinion out of mesh first.",
  },
  offset: {
    short: "a trim",
    name: "a trim that sits on the throttle",
    found: (_, percent) => `A trim of ${percent} of throttle sits on every mode.`,
    shows: "all modes are off by the same rpm, so slow ones by a larger share",
    check: "Look at the throttle trim and at every mix that ends in the throttle. Set them to nothing and read again.",
  },
  rounding: {
    short: "whole per cents",
    name: "a transmitter that takes whole per cents",
    found: () => "The throttle was rounded to whole per cents, no more.",
    shows: "small gaps of less than half a per cent of throttle, some up and some down",
    check: "Compare with the speed that the rounded throttle gives: the card lists it. There is nothing to mend.",
  },
  "wrong-whole": {
    short: "share of the top mode",
    name: "throttle worked out as a share of the fastest mode",
    found: ({ top }) =>
      `The throttle values are shares of your fastest mode, ${whole(top)} rpm, and not of what was learned.`,
    shows: "everything far too fast; the fastest mode asks for 100 %",
    check: "Divide the head speed you want by the learned head speed. The result is the throttle, and nothing else is.",
  },
};

export const enMisread = {
  causes,
  story: {
    optical: "an optical tachometer at the rotor",
    display: "the telemetry display",
    flat: "with flat pitch on the ground",
    hover: "in hover",
    "full-pitch": "at full pitch",
    told: (instrument: string, load: string, sure: string) =>
      `read with ${instrument}, ${load}, each reading good to ${sure}`,
    none: "on this machine no single fault can be told from another, so there is no case to puzzle over",
  },
  table: {
    caption: "What was asked for, and what was read",
    mode: "mode",
    asked: "asked for",
    read: "read",
    none: "\u2013",
    off: "off by",
    same: (low: string, high: string) => `Between the modes the gap goes from ${low} to ${high}.`,
    one: (gap: string) => `The gap is ${gap}. One mode alone tells little: read another.`,
  },
  guess: {
    ask: "One thing is wrong. Which one?",
    yes: (found: string, shows: string) => `${found} Its mark: ${shows}.`,
    no: (shows: string) => `That would show otherwise: ${shows}.`,
    next: "another case",
    nextWords: "Another case can be had here.",
  },
  plot: {
    title: "Read over asked for",
    unit: "%",
    x: "head speed asked for",
    y: "read over asked for",
    right: "as asked",
    none: "Nothing has been read yet.",
    points: (low: string, high: string) => `What was read lies between ${low} and ${high} of what was asked for.`,
    lines: (names: string) => `Lines show what would explain it: ${names}.`,
    hidden: "The lines come after your guess.",
    noLine: "No single cause goes through these points.",
  },
  shapes: {
    title: "The shapes that faults have",
    count: "miscounted",
    low: "lower end point",
    top: "can't hold it",
    words: "A miscount lies level. A wrong lower end point lifts the slow modes most, and at full throttle it is gone.",
    ceiling: (speed: string) => `A rotor that can't turn more than ${speed} falls at the fast end alone.`,
  },
  list: {
    name: "What would explain it",
    wait: "The page ranks the causes after your guess.",
    empty: "Type what you read in at least one mode.",
    none: "No single cause explains these readings. Read again with a second instrument, or look for two faults at once.",
    fits: (gap: string) => `explains it, to ${gap}`,
    misses: (gap: string) => `misses by up to ${gap}`,
    likely: (percent: string) => `${percent} likely`,
    check: "Check:",
    rest: (names: string) => `Further down: ${names}.`,
    one: "One fault at a time is looked for. What is likely beforehand is our own judgement.",
  },
  inputs: {
    title: "What you read",
    mode: "mode",
    asked: "asked for",
    read: "read, rpm",
    label: (mode: string) => `head speed read in the mode ${mode}, rpm`,
    bad: (text: string) => `“${text}” is no head speed: type a number from 1 to 20,000, or nothing.`,
    clear: "clear all",
    words: "Here you can type the head speeds that you read, mode by mode.",
  },
};
