/** The words of the page on the bottom of the band. */
export const enBand = {
  throttle: "throttle",
  amperes: "current",
  pinion: "pinion teeth",
  low: "below the band",
  high: "above the band",
  slowest: "slowest hover",
  motor: "motor and controller",
  pack: "pack",
  buffer: "ripple",
  loads: { hover: "in hover", "full-pitch": "at full pitch" },
  pick: "Currents",
  carried: {
    title: (load: string) => `Currents ${load}, against throttle`,
    unit: "A",
    handle: (mode: string) => `head speed of ${mode}`,
    now: (mode: string, pack: string, motor: string, ripple: string) =>
      `In ${mode} the pack gives ${pack}, and ${motor} flow through motor and controller. ${ripple} of ripple run through the capacitor at the controller's input.`,
    notNow: (mode: string) => `${mode} can't be held with this load.`,
    turns: (throttle: string) =>
      `The motor's current is least at about ${throttle} throttle. Slower than that it grows again, while the pack gives less and less.`,
    falls: "Slower, every current falls: here the low end is a rest.",
    none: "No head speed within this motor's reach carries the machine, or there is no reference yet.",
  },
  place: {
    title: (mode: string) => `Currents at the head speed of ${mode}, in hover`,
    unit: "A",
    handle: "Pinion",
    teeth: (count: number) => `${count} teeth`,
    now: (teeth: number, throttle: string, motor: string) =>
      `With ${teeth} teeth this head speed lies at ${throttle} throttle after learning again, and ${motor} flow through motor and controller.`,
    notNow: (teeth: number) => `With ${teeth} teeth this head speed can't be held in hover.`,
    says: "A bigger pinion moves it down the band. The pack hardly notices; motor and controller carry more.",
    caption: (mode: string) => `One head speed, that of ${mode}, at other places of the band`,
    column: (teeth: number) => `${teeth} teeth`,
    rows: {
      throttle: "throttle, after learning again",
      duty: "duty in hover",
      pack: "pack current",
      motor: "motor current",
      buffer: "ripple in the capacitor",
      controller: { hover: "current's heat in the controller, hover", "full-pitch": "the same at full pitch" },
      heat: { hover: "motor's heat, hover", "full-pitch": "the same at full pitch" },
    },
    cannot: "can't be",
    sum: (throttle: string, controller: string, then: string, motor: string, motorThen: string) =>
      `Lower in the band, at ${throttle}, the current's heat in the controller goes from ${controller} to ${then} in hover, and the motor's from ${motor} to ${motorThen}.`,
    full: (controller: string, then: string) => `At full pitch the controller's goes from ${controller} to ${then}.`,
    fullNot: "At full pitch one of the two can't hold this head speed.",
  },
  grip: {
    caption: "What the governor has to work with",
    bottom: "bottom of the band",
    top: "top of the band",
    rows: {
      speed: "head speed",
      throttle: "throttle",
      step: "one step of duty turns the rotor by",
      share: "as a share of its speed",
      reading: "one reading of the speed takes",
      energy: "the blades store",
      carries: "as much as the hover takes in",
    },
    fine: (share: string) =>
      `A step of ${share} is finer than most ears can tell. On this controller steps are no reason to stay in the band.`,
    coarse: (share: string) => `A step of ${share} is one that ears can tell: the governor hunts between two of them.`,
    none: "The motor doesn't turn, so there is nothing to work with.",
  },
  heldNot: "This mode can't be held in hover, so no such current flows. Make it faster, or the machine lighter.",
  reply: (times: string) =>
    `The controller switches the pack on for a part of the time only. Between two pulses the motor's current runs on, round through the controller. Here that makes it ${times} times what the pack gives.`,
} as const;
