/** The words of the page on how far to trust the numbers. */
export const enTrust = {
  what: { "thrust at the collective": "thrust", "torque at the thrust": "torque" },
  /** What each published rotor is, for somebody who has never seen the report. */
  rotors: {
    "TN 626, 2 blades": (across) => `two narrow blades, ${across(1.524)} across, 1937`,
    "TN 626, 3 blades": () => "three of them",
    "TN 626, 4 blades": () => "four of them",
    "TN 626, 5 blades": () => "five of them",
    "TM-81232": (across) => `two broad blades, ${across(2.286)} across, 1981`,
    "TN 2318, rotor 1": (across) => `two tapered blades, ${across(7.62)} across, 1951`,
    "TN 2318, rotor 2": (across) => `two straight ones, ${across(7.62)} across`,
  } as Readonly<Record<string, (across: (metres: number) => string) => string>>,
  tests: {
    title: "The model on every published rotor",
    axis: "model over measurement, %",
    perfect: "perfect",
    low: (bound: string) => `more than ${bound} too little`,
    high: (bound: string) => `more than ${bound} too much`,
    median: (median: string) => `half within ${median}`,
    summary: "The same in numbers",
    columns: ["rotor", "figure", "points", "half within", "nine in ten within", "worst", "on average"],
    words: (count: string, median: string, ninetieth: string) =>
      `Of ${count} measured figures half are met within ${median}, nine in ten within ${ninetieth}.`,
    beyond: (names: string, bound: string) => `Beyond what was asked for (half within ${bound}): ${names}.`,
    none: "Every set is within what was asked for.",
    worst: (name: string, what: string, size: string, way: string) =>
      `Worst is ${name}: ${what} comes out ${size} too ${way} on average.`,
    high1: "high",
    low1: "low",
  },
  one: {
    label: "Rotor shown",
    thrustTitle: (name: string) => `${name}: thrust against pitch`,
    torqueTitle: (name: string) => `${name}: torque against thrust`,
    pitch: "pitch",
    thrust: "thrust coefficient, thousandths",
    torque: "torque coefficient, hundred-thousandths",
    model: "model",
    modelAt: (mach: string) => `model, tips at Mach ${mach}`,
    measured: (name: string, rotor: string) => `The dots are measured on ${rotor} (${name}).`,
    within: (what: string, median: string, worst: string) =>
      `The model's ${what} is within ${median} of half of them, and ${worst} off at worst.`,
    readOff: "Their bars say how finely the printed graph can be read.",
    noBars: "The report prints no uncertainty, so they have no bars.",
    coefficient: "A coefficient is a thrust or torque freed of size, speed and air, so that rotors can be compared.",
    source: (source: string) => `Source: ${source}.`,
  },
  size: {
    title: "Error to expect against size and speed",
    x: "tip Reynolds number, thousands",
    y: "error",
    expected: "expected, not tested",
    none: "no published rotor here",
    main: "your main rotor",
    tail: "your tail rotor",
    whatIfMain: "what if: main",
    whatIfTail: "what if: tail",
    words: (mainError: string, tailError: string) =>
      `Expect ${mainError} on your main rotor and ${tailError} on your tail.`,
    numbers: (main: string, tail: string) =>
      `Their tips work at Reynolds numbers of ${main} and ${tail}: the smaller it is, the more the air sticks to the blade.`,
    bars: "A dot is the error that half of a tested rotor's figures keep within; its bar reaches to nine in ten.",
    both: (left: string, right: string) => `yours: ${left}, ${right}`,
    short: { main: "main", tail: "tail" },
    below: (least: string) => `The smallest rotor among the tests has ${least}; what lies left of it is our estimate.`,
    columns: ["tip Reynolds number", "error to expect, %"],
  },
  yours: {
    caption: (mode: string) => `Your rotors in ${mode}`,
    columns: { main: "main rotor", tail: "tail rotor" },
    rows: { tip: "tip speed", mach: "tip Mach number", reynolds: "tip Reynolds number", expected: "error to expect" },
    near: (near: string) => `By the Reynolds number of the main rotor's tips the nearest test is ${near}.`,
    tail: (share: string, error: string, whole: string) =>
      `In hover the tail takes ${share} of the cells' power, so ${error} of error there moves the whole by ${whole}.`,
  },
  broad: {
    compared: (name: string, theirs: string, yours: string) =>
      `The blades of ${name} are ${theirs} times as long as they are wide; yours are ${yours} times.`,
    beware: (error: string) =>
      `There half of the thrusts are off by ${error} or more. The nearer yours come to that, the less you should trust the pitch that this workbook names.`,
    fine: (error: string) => `Even there half of the thrusts are met within ${error}.`,
  },
  seen: (ninetieth: string, worstName: string, worst: string) =>
    `Nine in ten of all the figures are within ${ninetieth}. The worst rotor is ${worstName}: half of its figures are off by ${worst} or more.`,
} as const;
