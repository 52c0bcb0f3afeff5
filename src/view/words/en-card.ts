/**
 * The words of the set-up card, in English. The steps are common practice of the trade, no source; the makers'
 * instructions come before any of it, and the card says so.
 */
export interface Step {
  readonly does: string;
  /** What can hurt in this step, said where the hand is. */
  readonly caution?: string;
}

export interface StepList {
  readonly title: string;
  readonly steps: readonly Step[];
}

/** What to hold and what to expect in the learning run; no speeds where the motor wouldn't turn. */
export interface Learning {
  readonly throttle: string;
  readonly speeds: { readonly head: string; readonly motor: string } | null;
}

const endPoints: StepList = {
  title: "End points, before anything else",
  steps: [
    {
      does: "Pack unplugged. Slide the motor back until pinion and main gear don't touch. Turn the main gear itself by hand, both ways: the motor must stand still.",
      caution:
        "Turning the rotor proves nothing: its one-way clutch lets it run. With the pinion in mesh a wrong end point spins real blades.",
    },
    { does: "Transmitter on, throttle at the bottom, governor off, throttle curve a straight line from 0 to 100 %." },
    {
      does: "Connect the pack and set the low and high end points as the controller's maker says.",
      caution: "Fingers, sleeves and wires away from the pinion: it turns.",
    },
    {
      does: "Check: motor still at the bottom, full speed only at the very top. Disconnect the pack. Bring the pinion back into mesh.",
    },
  ],
};

const learningRun = ({ throttle, speeds }: Learning): StepList => ({
  title: "The learning run",
  steps: [
    {
      does: `Machine complete: blades, tail, canopy. Pack full and warm. Transmitter on, throttle hold on, throttle curve flat at ${throttle}: the stick then moves only the pitch. Plug in. Governor set to learn, as its maker says.`,
      caution:
        "Blades bolted and straight, nobody in the plane of the rotor, everybody well behind you, throttle hold ready.",
    },
    {
      does: `Throttle hold off. Let the soft start finish; only then count. Stay at ${throttle} for 15 to 20 seconds, pitch flat or light, and steady. The machine stands firmly on its skids: if it gets light, take pitch off.`,
    },
    {
      does: speeds
        ? `Expect about ${speeds.head} at the rotor (${speeds.motor} at the motor). Far off? Stop and count teeth, cells and magnets.`
        : "By this model the motor doesn't turn at that throttle. Find out why before you try.",
    },
    {
      does: "Throttle hold. Wait until everything stands, then unplug. Its maker says how it tells you that the reference is stored.",
    },
  ],
});

const check: StepList = {
  title: "Check what it really does",
  steps: [
    {
      does: "Governor on, as its maker says. In each mode set a flat throttle curve at the value on this card: every point the same.",
    },
    {
      does: "Slowest mode first, on the ground, pitch flat: read each head speed with an instrument that sees the blades. A display alone can't show a wrong pinion.",
      caution:
        "Nobody goes to the disc with an instrument. A second person reads, outside the disc's plane; your thumb stays on throttle hold.",
    },
    { does: "Write it into the last column. More than 3 % off, and the reason is worth finding before you fly." },
    {
      does: "After any change of motor, cells, gears or blades: learn again, print a new card and enter its throttle values.",
      caution: "Learning again doesn't make the old throttle values right: they may ask for far too much.",
    },
  ],
};

export const enCard = {
  print: "Print the card",
  title: "Set-up card",
  parts: "Parts",
  reference: "Reference",
  modes: "Flight modes",
  limits: "Limits",
  measured: "measured",
  blanks: ["Date", "Place", "Checked by"],
  maker:
    "The makers' instructions, your club's rules and the law come before anything on this card. Numbers are computed, not measured.",
  part: {
    pack: "Pack",
    motor: "Motor",
    gears: "Gears",
    mainRotor: "Main rotor",
    tailRotor: "Tail rotor",
    mass: "Mass",
    blades: "Blades",
    controller: "Controller",
    landing: "Land at",
    state: "State",
    full: "100 % asks for",
    band: (low: string, high: string) => `Usable band ${low} to ${high} %`,
  },
  packOf: (cells: number, chemistry: string, capacity: string) => `${cells} cells, ${chemistry}, ${capacity}`,
  motorOf: (kv: string, poles: number) => `${kv}, ${poles} magnet poles`,
  gearsOf: (pinion: number, main: number, module: string) => `${pinion} : ${main}, module ${module}`,
  secondStage: (driver: number, driven: number) => `, then ${driver} : ${driven}`,
  rotorOf: (blades: string, across: string) => `${blades}, ${across} across`,
  tailOf: (across: string, turns: string) => `${across} across, ${turns} turns for one`,
  bothSpeeds: (head: string, motor: string) => `${head} at the rotor, ${motor} at the motor`,
  range: (low: string, high: string) => `${low} to ${high}`,
  noBladeLimit: "none printed: ask their maker",
  electrical: (limit: string, head: string) => `${limit} electrical: ${head} at the rotor`,
  ofCharge: (charge: string) => `${charge} of charge`,
  steps: (learning: Learning): readonly StepList[] => [endPoints, learningRun(learning), check],
} as const;
