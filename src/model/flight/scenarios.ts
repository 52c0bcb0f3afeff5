/** Flights worth flying: each gives the order for `fly`. Speeds of the main rotor in rad/s, collective in rad, times in s. */
import type { FlightMachine } from "./machine.ts";
import type { Collective } from "./orders.ts";
import { hoverCollective } from "./pilot.ts";
import type { FlightOrder } from "./run.ts";

/** What most flights share: the machine and the head speed of the mode. */
export interface Mode {
  readonly machine: FlightMachine;
  /** Rotor speed asked for, rad/s. */
  readonly setSpeed: number;
}

/** Where a flight begins, m above the ground: our choice, high enough for all of them. */
const height = 15;

/** Collective of a hover; where none carries the machine, the highest: the flight then shows it sink. */
const hovering = ({ machine, setSpeed }: Mode): number =>
  hoverCollective(machine, setSpeed) ?? machine.rotor.highestCollective;

const governed = ({ machine, setSpeed }: Mode, from = 0, ramp: "start" | "bail-out" | "none" = "none") =>
  ({ from, kind: "speed", speed: setSpeed * machine.gearRatio, ramp }) as const;

/** From a steady hover on, with these orders for the collective. */
const fromHover = (mode: Mode, collective: readonly Collective[], duration: number): FlightOrder => ({
  machine: mode.machine,
  start: { speed: mode.setSpeed, collective: hovering(mode), height, climb: 0 },
  throttle: [governed(mode)],
  collective: [{ from: 0, kind: "height", height }, ...collective],
  duration,
  held: false,
});

/**
 * From rest to the set speed with the soft start, at a light pitch (rad), on the ground, for `after` s more than the
 * ramp. Source: common practice.
 */
export function spoolUp(mode: Mode, collective = 0, after = 4): FlightOrder {
  const { machine, setSpeed } = mode;
  const ramp = (machine.controller.startRamp * setSpeed * machine.gearRatio) / machine.controller.reference;
  return {
    machine,
    start: { speed: 0, collective, height: 0, climb: 0 },
    throttle: [governed(mode, 0, "start")],
    collective: [{ from: 0, kind: "hold", collective, over: 0 }],
    duration: ramp + after,
    held: true,
  };
}

/** A hover of so many seconds; the pilot holds the height (m). Source: definition. */
export const hover = (mode: Mode, duration = 10): FlightOrder => fromHover(mode, [], duration);

/** One collective punch out of a hover: reached within `rise` s, held for `hold` s, and back. */
export interface Punch {
  readonly collective: number;
  readonly at?: number;
  readonly rise?: number;
  readonly hold?: number;
}

/** A punch of the collective (rad) out of a hover, and back to its pitch; times in s. Source: common practice for how fast a hand is. */
export function punch(mode: Mode, { collective, at = 1, rise = 0.12, hold = 1.2 }: Punch): FlightOrder {
  const back = at + rise + hold;
  return fromHover(
    mode,
    [
      { from: at, kind: "hold", collective, over: rise },
      { from: back, kind: "hold", collective: hovering(mode), over: rise },
    ],
    back + rise + 2.5,
  );
}

/** Repeated pumps of the collective: `count` times up and down, each `period` s. */
export interface Pumps {
  readonly highest: number;
  readonly lowest: number;
  readonly count?: number;
  readonly period?: number;
}

/** Pumps of the collective between two angles (rad), after a second of hover; times in s. Source: common practice. */
export function pumps(mode: Mode, { highest, lowest, count = 6, period = 0.8 }: Pumps): FlightOrder {
  const moves = Array.from({ length: 2 * count }, (_, i): Collective => {
    const collective = i % 2 === 0 ? highest : lowest;
    return { from: 1 + (i * period) / 2, kind: "hold", collective, over: 0.3 * period };
  });
  const end = 1 + count * period;
  return fromHover(mode, [...moves, { from: end, kind: "hold", collective: hovering(mode), over: 0.15 }], end + 2.5);
}

/**
 * A climb at full pitch (rad), unloaded at once: the collective goes to nothing within 0.06 s, and what the governor
 * gave goes into the head. Times in s. Source: common practice.
 */
export function suddenUnload(mode: Mode, collective: number, climbing = 1.5): FlightOrder {
  const at = 1 + climbing;
  return fromHover(
    mode,
    [
      { from: 1, kind: "hold", collective, over: 0.12 },
      { from: at, kind: "hold", collective: 0, over: 0.06 },
    ],
    at + 2,
  );
}

/** An autorotation: the motor is off at `cut`; the motor comes back at `bailOut`, or never. */
export interface Autorotation {
  /** m */
  readonly height?: number;
  readonly cut?: number;
  /** Collective of the descent, and how long the hand takes to get there. */
  readonly collective?: number;
  readonly over?: number;
  /** When the motor is called back; null: never, and the flight ends on the ground. */
  readonly bailOut?: number | null;
  /** When the collective is raised to its highest before the ground; null: not at all. */
  readonly flare?: number | null;
}

/**
 * Motor off in a hover (height in m), collective (rad) down, and either a bail-out or the ground; times in s. After a bail-out
 * the hand waits for the ramp before it holds half the height. Source: common practice.
 */
export function autorotation(mode: Mode, options: Autorotation = {}): FlightOrder {
  const { height: from = 30, cut = 1, collective = -0.04, over = 0.3, bailOut = null, flare = null } = options;
  const { machine } = mode;
  const hand: Collective[] = [
    { from: 0, kind: "height", height: from },
    { from: cut, kind: "hold", collective, over },
  ];
  if (flare !== null) hand.push({ from: flare, kind: "hold", collective: machine.rotor.highestCollective, over: 0.6 });
  const order = fromHover(mode, [], bailOut === null ? 30 : bailOut + machine.controller.bailOutRamp + 4);
  if (bailOut !== null) {
    hand.push({ from: bailOut + machine.controller.bailOutRamp, kind: "height", height: from / 2 });
  }
  return {
    ...order,
    start: { ...order.start, height: from },
    throttle: [
      governed(mode),
      { from: cut, kind: "off" },
      ...(bailOut === null ? [] : [governed(mode, bailOut, "bail-out")]),
    ],
    collective: hand,
  };
}

/** One load of a mix: collective (rad) for so many seconds. */
export interface Load {
  readonly collective: number;
  readonly seconds: number;
}

/** Loop rate above which a whole pack isn't computed, Hz: the gains are per second, so a slower loop does the same at this scale. */
const packLoop = 250;

/**
 * A pack flown to its end with a mix of loads (rad, s) over and over, each change taking 0.2 s. The climb is held at
 * nothing (figures, not a climb to the clouds). Ends when the pack is empty, after `longest` s at the latest.
 * Source: definition.
 */
export function wholePack(mode: Mode, mix: readonly Load[], longest = 1200): FlightOrder {
  const { machine, setSpeed } = mode;
  const cycle = mix.reduce((sum, load) => sum + load.seconds, 0);
  const rounds = cycle > 0 ? Math.min(Math.ceil(longest / cycle), 10_000) : 0;
  const times: number[] = [];
  const collectives: number[] = [];
  let time = 0;
  for (let i = 0; i < rounds; i++) {
    for (const load of mix) {
      times.push(time + 0.2, time + Math.max(0.2, load.seconds));
      collectives.push(load.collective, load.collective);
      time += Math.max(0.2, load.seconds);
    }
  }
  return {
    machine: {
      ...machine,
      controller: { ...machine.controller, loopRate: Math.min(machine.controller.loopRate, packLoop) },
    },
    start: { speed: setSpeed, collective: mix[0]?.collective ?? 0, height: 0, climb: 0 },
    throttle: [governed(mode)],
    collective: [{ from: 0, kind: "curve", times, collectives }],
    duration: longest,
    held: true,
    longestTick: 0.005,
    stepShare: 0.6,
  };
}

/**
 * A flight by a drawn collective: times (s) and collective (rad), out of a hover at 15 m, or with the height held (`held`).
 * Source: definition.
 */
export function drawn(
  mode: Mode,
  times: ArrayLike<number>,
  collectives: ArrayLike<number>,
  duration: number,
  held = false,
): FlightOrder {
  const order = fromHover(mode, [], duration);
  return { ...order, held, collective: [{ from: 0, kind: "curve", times, collectives }] };
}
