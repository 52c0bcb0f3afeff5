/** The words of the plots and tables about what the rotor asks. */
export const enRotor = {
  head: "head speed",
  power: {
    title: "Power of the main rotor in hover",
    all: "all of it",
    turning: "to turn the blades",
    carrying: "to carry the weight",
    cannot: "the blades stall",
  },
  time: {
    title: "Hover time against head speed",
    minutes: "hover time",
    now: "hover time",
    whatIf: "what if",
    longest: (minutes: string) => `longest: ${minutes}`,
    pitch: "more pitch than this mode has",
  },
  pitch: {
    title: (mode: string) => `Power against pitch, at the head speed of ${mode}`,
    axis: "pitch",
    asked: "both rotors ask",
    most: "the most there is",
    end: (mode: string) => `full pitch of ${mode}`,
    short: "asks for more than there is",
  },
  ends: "the blades stall before they carry the machine",
  noHover: "At no head speed that this motor reaches do the blades carry the machine.",
  slower: {
    caption: (mode: string) => `Slower from ${mode}, step by step`,
    columns: { here: "as it is", fifth: "a fifth slower", longest: "at the longest hover", below: "slower still" },
    rows: {
      speed: "head speed",
      minutes: "hover time",
      power: "power of the main rotor",
      pitch: "pitch it takes",
      motor: "motor current",
    },
    cannot: "can't hover",
  },
  twice: {
    caption: (mode: string) => `Half the head speed of ${mode}, and the whole`,
    columns: { half: "half", whole: "whole", times: "times as much" },
    rows: { flat: "flat pitch, on the ground", hover: "hover", full: "full pitch" },
    cannot: "not possible",
    sometimes: (times: string) => `${times} times`,
    many: "many times",
  },
} as const;
