/** The words of the blocks about gears. */
export const enGears = {
  picture: {
    moves: (other: number, millimetres: string, way: string) =>
      `For ${other} teeth (dashed) the motor moves ${millimetres} ${way} the main gear.`,
    stays: "The other pinion is the one that is fitted.",
    away: "away from",
    towards: "towards",
    met: (met: number, main: number) =>
      met === main
        ? `Filled in: a tooth of the pinion, and the teeth that it meets. It meets all ${main}.`
        : `Filled in: a tooth of the pinion, and the ${met} teeth of ${main} that it ever meets.`,
  },
  mesh: {
    title: "Pairs of teeth that share the load",
    x: "pinion teeth",
    y: "pairs in contact, on average",
    rough: "runs rough and wears",
    undercut: "← undercut",
    unit: "on average",
    curve: "contact",
    handle: "Pinion",
    teeth: (count: number) => `${count} teeth`,
    now: (teeth: number, ratio: string) =>
      `With ${teeth} teeth on the pinion, ${ratio} pairs of teeth share the load on average.`,
    weak: (limit: number) =>
      `Below ${limit} teeth the cutter eats into the roots, unless the maker has shifted the profile: the teeth are weaker and touch for a shorter way.`,
    sound: (limit: number) => `From ${limit} teeth on the roots stay whole.`,
    none: "These two counts give no mesh.",
  },
  ceiling: {
    title: "Most the rotor can turn, against pinion",
    x: "pinion teeth",
    y: "head speed",
    free: "nothing to drive",
    full: "full pitch",
    set: (name: string) => `${name} asks`,
    now: (teeth: number, full: string) => `With ${teeth} teeth the rotor can turn ${full} at full pitch.`,
    noNow: (teeth: number) => `With ${teeth} teeth the motor can't turn this rotor at full pitch.`,
    turns: (teeth: number) =>
      `Up to ${teeth} teeth a bigger pinion helps at full pitch; beyond, the current eats what the gears give.`,
    rises: (teeth: number) =>
      `As far as is drawn, to ${teeth} teeth, each tooth more still helps at full pitch, but less each time.`,
    free2: "Without load every tooth adds the same.",
  },
  fit: {
    same: "That is the pinion that is fitted.",
    fits: (millimetres: string, way: string, travel: string) =>
      `The motor moves ${millimetres} ${way} the main gear. A slot commonly gives ${travel} each way, so it should fit. Measure yours.`,
    not: (millimetres: string, way: string, travel: string) =>
      `The motor moves ${millimetres} ${way} the main gear. A slot commonly gives ${travel} each way, so it may not fit. Measure yours.`,
  },
};
