/** The words of the plot of the turn: where a bigger pinion stops making the rotor faster. */
export const enPinionTurn = {
  title: "Most the rotor can turn at full pitch, against pinion",
  x: "pinion teeth",
  y: "head speed",
  full: "full pack",
  handle: "Pinion",
  teeth: (count: number) => `${count} teeth`,
  left: (charge: string) => `${charge} left`,
  best: (full: number, last: number) => (full === last ? `fastest: ${full}` : `fastest: ${full}, then ${last}`),
  asks: (mode: string) => `${mode} asks`,
  zone: "more current than the pack bears",
  now: (teeth: number, speed: string) =>
    `With ${teeth} teeth and a full pack the rotor can turn ${speed} at full pitch.`,
  cannot: (teeth: number) => `With ${teeth} teeth even a full pack can't turn this rotor at full pitch.`,
  turn: (full: number, last: number | null) =>
    last === null || last === full
      ? `The fastest pinion is one of ${full} teeth; beyond it the rotor gets slower.`
      : `The fastest pinion has ${full} teeth with a full pack and ${last} with a fifth left; beyond it the rotor gets slower.`,
  noTurn: (last: number) => `As far as is drawn, to ${last} teeth, each tooth still adds a little.`,
  tooMuch: (teeth: number) =>
    `From ${teeth} teeth on, that speed takes more current than most packs bear for longer than some seconds.`,
  bears: "The pack bears the current of all of them.",
} as const;
