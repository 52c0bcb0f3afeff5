/** The words of the blocks about magnet poles. */
export const enMagnets = {
  picture: {
    title: "The motor's magnets, seen from its end",
    words: (poles: number, pairs: number) =>
      `${poles} magnets are ${pairs} ${pairs === 1 ? "pair" : "pairs"}: for one turn of the motor the controller counts ${pairs}.`,
    how: "North and south take turns around the bell; the coils inside stand still.",
    turn: "turn the bell by hand",
    counted: "counted by the controller",
    turned: (turns: string, counted: string) => `${turns} of a turn, ${counted} counted`,
    motor: "turns of the motor",
  },
  display: {
    title: "What the display shows",
    x: "magnets the display was told",
    y: "motor speed shown",
    shown: "on the display",
    true: (speed: string) => `true: ${speed}`,
    told: (poles: number) => `told ${poles}`,
    right: (poles: number, speed: string) => `Told ${poles} magnets, the display shows the true ${speed}.`,
    wrong: (told: number, poles: number, shown: string, truth: string) =>
      `Told ${told} magnets where there are ${poles}, the display shows ${shown}; the motor turns ${truth}.`,
    gap: (percent: string, way: string) => `That is ${percent} too ${way}. The rotor takes no notice.`,
    count: "Only the count that is true gives the speed that is true.",
  },
  electrical: {
    title: "Electrical speed against magnets",
    x: "magnet poles",
    y: "electrical speed",
    limit: "over the controller's limit",
    curve: "electrical speed",
    handle: "Magnet poles",
    magnets: (poles: number) => `${poles} magnets`,
    now: (poles: number, electrical: string, head: string) =>
      `With ${poles} magnets the controller must follow ${electrical} electrical; the rotor turns ${head} with any number.`,
    over: (limit: string) => `That is over its limit of ${limit}: it may lose step and stop.`,
    room: (limit: string, most: number) =>
      `Its limit is ${limit}: up to ${most} magnets stay below that at this head speed.`,
    none: (limit: string) => `Its limit is ${limit}: even two magnets pass that at this head speed.`,
  },
};
