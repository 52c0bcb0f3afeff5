/** The words of the blocks that set two machines side by side. */
export const enTwoMachines = {
  bench: {
    title: "Two machines on the bench",
    part: "part",
    now: "now",
    whatIf: "what if",
    matched: (cells: number, more: boolean) => `${cells} cells (two ${more ? "more" : "fewer"}), Kv to match`,
    copy: "a copy, to change",
    swap: "swap the two",
    drop: "drop the what-if",
    none: "There is one machine on the bench. Start a second one with a tap.",
    differs: (parts: string) => `They differ in: ${parts}. Drag any number, in either column.`,
    twins: "They are twins so far. Drag a number in the second column.",
    words: (both: boolean) =>
      both
        ? "Two machines are on the bench, now and what if."
        : "One machine is on the bench; a second one can be started here.",
  },
  compare: {
    title: "Side by side",
    now: "now",
    whatIf: "what if",
    bars: "each with its doubt",
    comes: "so",
    range: (low: string, high: string) => `${low} to ${high}`,
    working: "…",
    same: "the same",
    close: (difference: string) => `${difference}: too close to call`,
    even: "no difference that counts",
    clear: (difference: string, way: "lower" | "higher") => `clearly ${way}, by ${difference}`,
    noDoubt: "no figure",
    alone: "19 in 20 such machines lie within the bar.",
    summary: (clear: string, close: number, same: number) =>
      [
        clear === "" ? "Nothing differs by more than its doubt." : `They clearly differ in: ${clear}.`,
        close === 0 ? "" : `${close} ${close === 1 ? "figure is" : "figures are"} too close to call.`,
        same === 0 ? "" : `${same} ${same === 1 ? "is" : "are"} the same.`,
      ]
        .filter(Boolean)
        .join(" "),
    line: (title: string, now: string, whatIf: string | null) =>
      whatIf === null ? `${title}: ${now}.` : `${title}: now ${now}, what if ${whatIf}.`,
  },
  doubts: {
    of: {
      now: "now",
      "what-if": "what if",
      difference: "the difference between the two",
    },
    subject: (title: string, whose: string) => `${title}, ${whose}`,
    ask: "If you could measure one thing exactly, which would help this figure most?",
    working: "Working out what each input does to it…",
    none: "This figure doesn't exist for this machine, so nothing can be in doubt about it.",
    sure: "Nothing is in doubt here.",
    value: (value: string, low: string, high: string) => `${value}, and 19 in 20 lie between ${low} and ${high}.`,
    known: (low: string, high: string) => `With what you ticked known exactly: ${low} to ${high}.`,
    first: (name: string, percent: string) =>
      `${name} matters most: known exactly, it would make the band ${percent} narrower.`,
    right: "You said so.",
    wrong: (name: string, percent: string) => `You said ${name}: that would narrow it by ${percent}.`,
    head: { input: "input", band: "what it alone does", buys: "if it were known exactly", tick: "known" },
    narrower: (percent: string) => `band ${percent} narrower`,
    rest: (count: number) => `${count} more together`,
    side: { now: " (now)", "what-if": " (what if)", both: "" },
    model: "can't be measured at the bench",
    read: "Where to get it:",
    better: "To know it better:",
    /** How to measure an input better than its label says: common practice, no source. */
    how: {
      "motor.kvRpmPerVolt":
        "motor screwed down, pinion off, governor off, nothing near the shaft: a few seconds at full throttle, then divide its speed by the volts at the controller.",
      "motor.noLoadCurrentA":
        "motor screwed down, pinion off, nothing near the shaft: read its current once it has warmed up.",
      "motor.resistanceMilliohm":
        "unplug the motor from the controller. Send a few amperes from a bench supply with a current limit, never from a pack, through two of its wires. The volts at the motor over the amperes are its ohms.",
      "pack.cellResistanceMilliohm":
        "note volts and current in hover and in a gentle climb, from a log. Volts lost over amperes gained are the ohms of the whole pack: take off those of the leads, and divide by the cells.",
      "pack.capacityMah":
        "after a flight let the pack rest, and read what charge is left. What the charger puts back, divided by the share used, is the capacity.",
      "pack.chargePercent": "let the pack rest for half an hour, and read each cell.",
      "airframe.massG": "put the machine on a kitchen scale, ready to fly.",
      "mainRotor.diameterMm": "measure from tip to tip with a tape, blades straight out.",
      "mainRotor.chordMm": "measure the blade's chord with a caliper, halfway out.",
    } as Readonly<Record<string, string>>,
    collective:
      "with the motor unplugged or the pinion out of mesh, set full pitch and read a pitch gauge on both blades.",
    tick: (name: string) => `as if ${name} were known exactly`,
    words: (title: string, whose: string) => `Which doubt matters for ${title}, ${whose}: ranked when the hand rests.`,
  },
};
