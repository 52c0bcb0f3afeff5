/** The words of the blocks about blades as turning masses. */
export const enBlades = {
  disc: {
    title: "Your rotor from above",
    words: (blades: number, diameter: string, tip: string) =>
      `${blades === 1 ? "One blade" : `${blades} blades`} on a circle of ${diameter}: the tips move at ${tip}.`,
    pull: (pull: string, kilograms: string) => `Each blade pulls at its bolt with ${pull}, the weight of ${kilograms}.`,
    tip: "at the tip",
    bolt: "pull at the bolt",
    hung: "hung on a bolt at rest",
  },
  energy: {
    title: "Energy in the blades against head speed",
    x: "head speed",
    y: "energy",
    limit: "over the printed limit",
    curve: "your blades",
    now: (speed: string, energy: string) => `At ${speed} the blades hold ${energy}.`,
    like: (times: string, what: string) => `That is ${times} times ${what}.`,
    half: (energy: string) => `At half that speed it would be ${energy}: a quarter.`,
    none: "A blade with its centre of mass out there can't be: check mass, cut-out and centre.",
    handle: (name: string) => `${name}: head speed`,
  },
  pull: {
    title: "Pull at one blade's bolt against head speed",
    y: "pull",
    now: (speed: string, pull: string, kilograms: string) =>
      `At ${speed} each blade pulls with ${pull}, the weight of ${kilograms}.`,
    limit: (speed: string, pull: string) => `At the printed limit of ${speed} it would be ${pull}.`,
    noLimit: "The maker of these blades prints no limit, so none is drawn. Ask for it before you fly.",
    over: (percent: string, more: string) => `${percent} over the limit would be ${more} more pull.`,
  },
  limits: {
    title: "One tip speed, many head speeds",
    x: "rotor diameter",
    y: "head speed",
    curve: (tip: string) => `tips at ${tip}`,
    over: "tips faster than that",
    yours: (limit: string) => `yours: ${limit}`,
    words: (limit: string, tip: string) => `Your blades' limit of ${limit} means tips at ${tip}.`,
    none: (tip: string) => `Your blades have no printed limit; at the mode's head speed the tips move at ${tip}.`,
    others: (list: string) => `Made-up limits of the demo machines: ${list}.`,
    small:
      "On a rotor of half the diameter the same tips need twice the head speed; on a larger one they are there much sooner.",
  },
  distance: {
    title: "Time until a lost part is there",
    x: "distance",
    y: "time",
    curve: "no air to slow it",
    react: "before you can move",
    you: "you",
    words: (metres: string, time: string) => `A part that leaves the tip is ${metres} away after ${time}.`,
    cannot: (reaction: string) =>
      `You need about ${reaction} to begin to move. Distance alone doesn't let you step aside.`,
    can: (reaction: string) => `You need about ${reaction} to begin to move, if you saw it coming.`,
  },
};
