/**
 * What each fault between a throttle and a reading would make of every mode, for all the sizes that it commonly has. Speeds
 * are rpm of the main rotor; shares and ratios have no unit.
 */
import { rpm } from "#model/constants";
import { ratioOf } from "#model/gears";
import { speedAtDuty } from "#model/steady";
import type { Figures } from "./figures.ts";

/** Standard deviations of what a fault leaves open: common practice, no source. */
export const spreads = {
  /** Kv as printed, and with it a reference that nobody measured. */
  reference: 0.04,
  /** A pack's voltage at a charge. */
  pack: 0.01,
  pitch: 0.02,
  /** The model's ceiling. */
  ceiling: 0.04,
  /** Ends of the throttle's travel, and a trim that sits on all of it, as shares of it. */
  endPoint: 0.05,
  trim: 0.025,
} as const;

/** Lamps on alternating mains flicker at twice its frequency, Hz, for 50 and 60 Hz. From memory: IEEE Std 1789-2015. */
const flickers = [100, 120] as const;
/** How far mains stray from their frequency, as a share: from memory. */
const mainsSpread = 0.002;

/** Charges at which a pack may have been when the controller learned, or be while the rotor is read, per cent. */
const charges = [80, 60, 40, 20, 10] as const;

/** What a fault of one size would make of a reading. */
export interface Made {
  /** Its size: told poles, the true pinion, a charge in per cent ... */
  readonly sizes: Readonly<Record<string, number>>;
  /** What would be read, rpm, mode by mode. */
  readonly reads: readonly number[];
  /** How the reading changes with what the fault leaves open, as a share for each mode, and that share's standard deviation. */
  readonly open: { readonly shares: readonly number[]; readonly spread: number };
}

/** The machine as it is read. */
export interface ReadMachine {
  readonly figures: Figures;
  /** Modes that are read, by their places in the list. */
  readonly modes: readonly number[];
  /** Head speeds asked for, rpm, and their throttles, 0 to 1 (null without a reference). */
  readonly asked: readonly number[];
  readonly throttles: readonly number[] | null;
  /** The most that the rotor turns, rpm, mode by mode; null where it isn't known. */
  readonly ceilings: readonly (number | null)[];
}

const exact = (reads: readonly number[]): Made["open"] => ({ shares: reads.map(() => 0), spread: 0 });
const factor = (reads: readonly number[], spread: number): Made["open"] => ({ shares: reads.map(() => 1), spread });

/** A fault that turns every speed into the same multiple of it. */
export function times({ asked }: ReadMachine, ratio: number, sizes: Made["sizes"] = {}, spread = 0): Made {
  const reads = asked.map((speed) => speed * ratio);
  return { sizes, reads, open: spread > 0 ? factor(reads, spread) : exact(reads) };
}

/** The rotor itself turns that multiple, as far as it can. */
export function turns(bearings: ReadMachine, ratio: number, sizes: Made["sizes"], spread = 0): Made {
  const made = times(bearings, ratio, sizes, spread);
  const reads = made.reads.map((speed, i) => Math.min(speed, bearings.ceilings[i] ?? speed));
  return { ...made, reads };
}

/** A display that was told another number of magnets. Units: none but rpm. Source: f = n p / 120. */
export function polesMade(bearings: ReadMachine): Made[] {
  const { poles } = bearings.figures.machine.motor;
  const told = [-8, -6, -4, -2, 2, 4, 6, 8].map((step) => poles + step).filter((count) => count >= 2);
  // Pairs in place of poles, and poles in place of pairs.
  const counts = new Set([...told, poles / 2, 2 * poles]);
  return [...counts]
    .filter((count) => count >= 1)
    .map((count) => times(bearings, poles / count, { told: count, poles }));
}

/** A pinion or a main gear that is another than the one entered. */
export function teethMade(bearings: ReadMachine, made: typeof times | typeof turns): Made[] {
  const { gears } = bearings.figures.rig.parts;
  const now = ratioOf(gears);
  const others = [
    ...[-2, -1, 1, 2].map((step) => ({ pinionTeeth: gears.pinionTeeth + step, mainTeeth: gears.mainTeeth })),
    ...[-2, -1, 1, 2].map((step) => ({ pinionTeeth: gears.pinionTeeth, mainTeeth: gears.mainTeeth + step })),
  ];
  return others
    .filter(({ pinionTeeth, mainTeeth }) => pinionTeeth > 0 && mainTeeth > 0)
    .map((other) =>
      made(bearings, now / ratioOf({ ...gears, ...other }), { pinion: other.pinionTeeth, main: other.mainTeeth }),
    );
}

/** Whether the reference is only expected: what was measured is what it is, whatever it was learned with. No unit. Source: definition. */
const isExpected = ({ figures }: ReadMachine): boolean => figures.bearings.reference().state === "expected";

/** A reference that nobody measured, and that Kv tells as well as it is printed. */
export const referenceMade = (bearings: ReadMachine): Made[] =>
  isExpected(bearings) ? [times(bearings, 1, {}, spreads.reference)] : [];

/** What the learning run stored on another pack, as a share of what it would have stored on this one, full. */
export function packThenMade(bearings: ReadMachine): Made[] {
  const { rig } = bearings.figures;
  const { cells } = rig.parts.pack;
  const full = rig.voltageAt(1);
  if (!isExpected(bearings) || !(full > 0)) return [];
  const tired = charges.map((charge) => turns(bearings, rig.voltageAt(charge / 100) / full, { charge }, spreads.pack));
  const others = [cells - 2, cells - 1, cells + 1, cells + 2]
    .filter((count) => count > 0)
    .map((count) => turns(bearings, count / cells, { cells: count }, spreads.pack));
  return [...tired, ...others];
}

/**
 * What it stored with pitch on the blades in place of flat pitch: so much that they carried the machine at the speed of
 * the learning run. More would have lifted it off. The same for all modes, since none is flown while it learns.
 */
export function pitchThenMade(bearings: ReadMachine): Made[] {
  const { rig } = bearings.figures;
  const { throttle } = rig.parts.controller.learned;
  const flat = bearings.figures.number("learning-head-speed");
  if (!isExpected(bearings) || flat === null) return [];
  const found = speedAtDuty(rig.trainAt(1), throttle, rig.load("hover", 0));
  return found.ok ? [turns(bearings, found.speed / rpm / flat, {}, spreads.pitch)] : [];
}

/** What the rotor can turn at most with the pack at some charges: the ceiling goes with the pack's voltage. */
export function ceilingMade({ figures, asked, ceilings }: ReadMachine): Made[] {
  const { rig } = figures;
  const now = rig.voltageAt(rig.parts.pack.charge);
  if (!(now > 0)) return [];
  const own = 100 * rig.parts.pack.charge;
  return [own, ...charges.filter((charge) => charge < own)].flatMap((charge) => {
    const share = rig.voltageAt(charge / 100) / now;
    const reads = asked.map((speed, i) => Math.min(speed, (ceilings[i] ?? speed) * share));
    const short = reads.map((speed, i) => (speed < (asked[i] ?? 0) ? 1 : 0));
    if (!short.includes(1) || reads.some((speed) => !(speed > 0))) return [];
    return [{ sizes: { charge }, reads, open: { shares: short, spread: spreads.ceiling } }];
  });
}

/** Ends of the travel that aren't where the controller expects them. `share` is the change of a throttle with the end's. */
export function travelMade(
  { asked, throttles }: ReadMachine,
  share: (throttle: number) => number,
  spread: number = spreads.endPoint,
): Made[] {
  if (!throttles?.every((throttle) => throttle > 0)) return [];
  return [{ sizes: {}, reads: asked, open: { shares: throttles.map(share), spread } }];
}

/** Throttles rounded to whole per cents, rpm; none where there is no reference. Source: definition. */
export function roundingMade({ figures, modes }: ReadMachine): Made[] {
  const reads = modes.map((mode) => figures.number("head-speed-entered", mode));
  return reads.every((speed) => speed !== null && speed > 0)
    ? [{ sizes: {}, reads: reads as number[], open: exact(reads as number[]) }]
    : [];
}

/** Throttle worked out as a share of something else than the learned reference. */
export function wrongWholeMade(bearings: ReadMachine): Made[] {
  const { figures } = bearings;
  const learned = figures.number("learned-head-speed");
  const top = Math.max(...figures.machine.modes.map(({ headRpm }) => headRpm));
  if (learned === null) return [];
  return top > 0 ? [turns(bearings, learned / top, { top })] : [];
}

/** A tachometer that counts a lamp: the same rpm in every mode. Source: as `flickers`. */
export function flickerMade({ asked, figures }: ReadMachine): Made[] {
  const { blades } = figures.machine.mainRotor;
  return flickers.map((flicker) => {
    const reads = asked.map(() => (60 * flicker) / blades);
    return { sizes: { flicker, mains: flicker / 2 }, reads, open: factor(reads, mainsSpread) };
  });
}

/** A tachometer set to another number of blades, rpm. Source: how it counts. */
export function bladesMade(bearings: ReadMachine): Made[] {
  const { blades } = bearings.figures.machine.mainRotor;
  return [1, 2, 3, 4, 5]
    .filter((count) => count !== blades)
    .map((count) => times(bearings, blades / count, { told: count, blades }));
}
