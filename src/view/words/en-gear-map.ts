/** The words of the map of gears and of the comparison beside it. */
import type { GearMark } from "#figures/gear-map";
import type { GearQuantity, Held } from "#figures/gearing";

interface QuantityWords {
  /** Says in the row of choices what the map shows. */
  readonly pick: string;
  readonly title: (mode: string) => string;
  /** Of the pairs that fit, the one with the highest or the lowest value is named as ... */
  readonly best: "highest" | "lowest";
  readonly named: string;
  readonly row: string;
}

const marks: Readonly<Record<GearMark, { readonly tag: string; readonly says: string }>> = {
  "no-hover": { tag: "none", says: "the mode can't be held, not even in hover" },
  "over-limit": { tag: "over", says: "full duty could drive the blades past their maker's limit" },
  "above-band": { tag: "above", says: "above the usable band" },
  "below-band": { tag: "below", says: "below the usable band" },
  "motor-fast": { tag: "fast", says: "the motor turns faster than it may" },
  short: { tag: "short", says: "full pitch isn't held" },
};

const quantities: Readonly<Record<GearQuantity, QuantityWords>> = {
  speed: {
    pick: "most speed",
    title: () => "Most the rotor can turn at full pitch",
    best: "highest",
    named: "turns fastest",
    row: "most the rotor can turn, full pitch",
  },
  room: {
    pick: "room",
    title: (mode) => `Room above the head speed of ${mode}, at full pitch`,
    best: "highest",
    named: "has the most room",
    row: "room above the set speed, full pitch",
  },
  throttle: {
    pick: "throttle",
    title: (mode) => `Throttle of ${mode}, after learning again`,
    best: "lowest",
    named: "asks for the least throttle",
    row: "throttle, after learning again",
  },
  current: {
    pick: "current",
    title: () => "Current through the motor at full pitch",
    best: "lowest",
    named: "draws the least",
    row: "motor current, full pitch",
  },
  "hover-heat": {
    pick: "heat in hover",
    title: () => "Heat of motor and controller in hover",
    best: "lowest",
    named: "stays coolest",
    row: "heat of motor and controller, hover",
  },
  "full-heat": {
    pick: "heat at full pitch",
    title: () => "Heat of motor and controller at full pitch",
    best: "lowest",
    named: "stays coolest",
    row: "heat of motor and controller, full pitch",
  },
  duration: {
    pick: "hover time",
    title: (mode) => `Hover time in ${mode}`,
    best: "highest",
    named: "stays up longest",
    row: "hover time",
  },
  tip: {
    pick: "fastest tips",
    title: () => "Fastest that full duty can drive the tips, at flat pitch",
    best: "lowest",
    named: "drives them least",
    row: "fastest the tips can be driven",
  },
};

export const enGearMap = {
  quantities,
  marks,
  pick: "The map shows",
  pinion: "pinion",
  main: "main gear",
  axes: "pinion →",
  down: "main ↓",
  nothing: "–",
  cannot: "not possible",
  now: "now",
  whatIf: "what if",
  fits: "Framed: the slot of your motor mount reaches.",
  outside: "Pale: it doesn't reach, or you need another mount.",
  legend: "Marks on this map",
  mark: (tag: string, says: string) => `${tag}: ${says}`,
  pair: (pinion: number, main: number) => `${pinion} on ${main}`,
  label: (pinion: number, main: number) => `Pinion ${pinion}, main gear ${main}`,
  ratio: (ratio: string) => `${ratio} motor turns for one of the rotor`,
  fitted: "fitted now",
  tried: "the what-if",
  stays: "the motor stays where it is",
  moves: (millimetres: string, way: "away" | "towards", fits: boolean) =>
    `the motor moves ${millimetres} ${way === "away" ? "away from" : "towards"} the main gear, ${fits ? "within your slot" : "further than your slot goes"}`,
  how: "Choose a pair by click, tap or Enter: it becomes the what-if. Arrow keys walk over the map.",
  chosen: (pair: string) => `The what-if now has ${pair}.`,
  same: (pair: string) => `${pair} is what is fitted. Choose another pair to compare.`,
  sum: (now: string, fitting: number, best: string, named: string, value: string) =>
    `${now} Of the ${fitting} pairs that fit, ${best} ${named}: ${value}.`,
  sumNow: (pair: string, value: string) => `With ${pair}: ${value}.`,
  none: (now: string) => `${now} Of the pairs that fit, none has this figure.`,
  trouble: (count: number, says: string) => (count === 1 ? `One of them: ${says}.` : `${count} of them: ${says}.`),
  table: "Table of the pairs that fit",
  columns: { ratio: "ratio", moves: "motor moves, mm", stands: "stands against it" },
  compare: {
    caption: (mode: string) => `What the choice costs, in ${mode}`,
    waiting: "Choose a pair on the map: its column stands here.",
    held: {
      "full-pitch": "full pitch too",
      hover: "hover only",
      not: "not held",
    } satisfies Record<Held, string>,
    rows: {
      held: "head speed is held at",
      contact: "pairs of teeth in contact",
      motor: "motor speed",
    },
    gap: {
      speed: (gap: string) => `${gap} at full pitch`,
      current: (gap: string) => `${gap} through the motor there`,
      "full-heat": (gap: string) => `${gap} of heat there`,
      duration: (gap: string) => `${gap} of hover`,
    },
    sum: (pair: string, parts: readonly string[]) => `${pair} means ${parts.join(", ")}.`,
    apart: (pair: string) => `With one of the two, ${pair} or the pair fitted now, this mode can't be flown.`,
    heatNone: "With one of the two pinions this mode can't be held there, so there is nothing to compare.",
    heatFull: (motor: string, motorThen: string, controller: string, controllerThen: string) =>
      `At full pitch it is ${motor} and ${motorThen} in the motor, ${controller} and ${controllerThen} in the controller.`,
    heat: (motor: string, motorThen: string, controller: string, controllerThen: string) =>
      `The motor goes from ${motor} to ${motorThen}, the current's heat in the controller from ${controller} to ${controllerThen}.`,
    difference: "difference",
  },
} as const;
