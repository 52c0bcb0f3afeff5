/** The words around the learning run, rehearsed, in English. */
export const enLearning = {
  setup: {
    title: "How the run is made",
    hint: "Untick a line, or move its slider, and see what comes of it.",
    rows: {
      pack: "Pack straight from the charger",
      pitch: "Pitch flat: blades take no bite",
      hand: "Hand still on the stick",
      complete: "Blades and all else on the machine",
      time: "Half throttle held for 15 to 20 seconds",
    },
    sliders: {
      pack: "charge of the pack",
      pitch: "pitch left in",
      hand: "pitch that moves up and back",
      time: "held for",
    },
    line: {
      start: (seconds: string) => `soft start, ${seconds}`,
      early: (seconds: string) => `too early, ${seconds}`,
      good: "enough",
      end: (seconds: string) => `you stop after ${seconds}`,
    },
    right: "Everything is as it should be.",
    wrong: (list: string) => `Not as it should be: ${list}.`,
    kinds: {
      pack: "the pack isn't full",
      pitch: "some pitch is left in",
      hand: "the hand keeps moving",
      complete: "the blades are off",
      time: "you stop too early",
    },
    off: {
      pack: (charge: string) => `the pack stands at ${charge}`,
      pitch: (angle: string) => `${angle} of pitch are left in`,
      hand: (angle: string) => `the hand moves the pitch by ${angle}`,
      complete: "the blades are off",
      time: (seconds: string) => `you stop after ${seconds}`,
    },
  },
  guess: {
    ask: (slips: string) => `This time ${slips}. What does the controller store as 100 %?`,
    options: [
      { key: "low", says: "too little: every mode will turn slower than you ask" },
      { key: "same", says: "the right speed, within half a per cent" },
      { key: "high", says: "too much: every mode will turn faster than you ask" },
      { key: "nothing", says: "nothing new: what it had stays" },
    ],
    yes: "Yes.",
    close: "Not quite.",
    far: "Look at the head speed at the end of the run.",
    none: "This machine can't be rehearsed.",
  },
  run: {
    title: "Head speed while it learns: nobody regulates",
    right: "as it should be",
    yours: "this run",
    whatIf: "what if",
    wait: "The run is flown as soon as you have guessed what it stores.",
    lift: (share: string) =>
      `At the pitch of this run the rotor lifts ${share} of the weight: light on its skids, the machine can slide.`,
    flies: (share: string) => `At the pitch of this run the rotor lifts ${share} of the weight: the machine takes off.`,
  },
  stored: {
    caption: "What every mode then really does, in rpm",
    columns: ["mode", "you ask for", "it turns", "off by", "room at full pitch"],
    asBefore: "as before",
    waiting: "…",
    nothing: "–",
    none: "none",
    waits: "This table fills when you have guessed.",
    low: (stored: string, share: string) => `Stored: ${stored} at the motor. That is ${share} too low.`,
    high: (stored: string, share: string) => `Stored: ${stored} at the motor. That is ${share} too high.`,
    same: (stored: string) => `Stored: ${stored} at the motor. That is right, as near as it matters.`,
    mode: (name: string, wanted: string, real: string) =>
      `In ${name} you ask for ${wanted}, and the head turns ${real}.`,
    lost: (names: string) => `At full pitch ${names} can't be held any more.`,
    blades: (names: string, limit: string) => `${names}: over the blades' limit of ${limit}.`,
    silent: "No display tells you: the throttle still reads what it always read.",
    take: "put this reference into my machine",
    taken: "It stands in your machine now, and every throttle follows it. Undo, at the top, takes it back.",
    about:
      "For a controller that has really learned it that way. The workbook then works out the throttles that still give your speeds.",
  },
  facts: {
    formality: (speed: string, share: string) =>
      `A speed is a speed, but it was taken from a half-empty pack: ${share} fewer volts, and so ${speed} less in this mode. Every other mode shrinks with it.`,
    noFormality: "On this machine nothing turns in the learning run, so nothing can be stored.",
    weights: (pack: string, pitch: string, blades: string) =>
      `Half a pack: ${pack}. Five degrees: ${pitch}. No blades: ${blades}.`,
    off: { low: (share: string) => `${share} too low`, high: (share: string) => `${share} too high` },
    none: "no figure",
    replies: {
      pack: "Volts make the speed, nearly one to one.",
      pitch: "The blades brake the motor, and pitch makes them brake harder.",
      complete: "Without blades the motor runs freer than it ever will in flight.",
    },
  },
  check: {
    title: "The run, step by step",
    parts: [
      {
        title: "At the bench: teach the ends of the stick",
        steps: [
          "Pack unplugged. Move the motor back until its pinion is out of mesh. Turn the main gear itself both ways: the motor stays still. The rotor alone proves nothing, because of its one-way clutch.",
          "Transmitter on, throttle down, governor off, throttle curve a straight line.",
          "Teach lowest and highest throttle as the maker's instructions say. The motor may run up; no blade can.",
          "Unplug. Bring the pinion back into mesh, tighten the motor, and feel for a little play all round.",
        ],
      },
      {
        title: "At the field: get ready",
        steps: [
          "Blades, canopy and all else are on. This is the machine that will fly.",
          "The pack comes straight from the charger. Check: full.",
          "It stands on firm, level ground. Throttle hold on, and the throttle curve flat at the learning value. The maker says which one: mostly half.",
          "Plug in. Governor set to learn, as the maker says. Walk back 10 m; nobody level with the rotor.",
          "Pitch flat, thumb at the hold, timer in sight.",
        ],
      },
      {
        title: "The run",
        steps: [
          "Throttle hold off, and let the soft start finish. Only then count.",
          "Hold still for 15 to 20 seconds: throttle, pitch, tail.",
          "Throttle hold on. Wait until everything stands, then unplug. The maker says how it tells you that it has stored a speed.",
          "Governor on, and in each mode a flat throttle curve at the card's value.",
          "Before you fly, read the slowest mode's head speed on the ground, from a distance, and compare it with the card. Then the next one up.",
        ],
      },
    ],
    done: (done: string, all: string) => `${done} of ${all} ticked.`,
    all: "All ticked: your rehearsal is over.",
    again: "start over",
  },
} as const;
