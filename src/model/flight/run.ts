/** One flight from its start to its end: the sampled controller and the pilot around the equations of motion. */
import { BROKEN, CHATTERS, createTicker } from "./clutch.ts";
import * as controlAt from "./control.ts";
import { createControl } from "./control.ts";
import { type FlightMachine, type Impossible, impossible } from "./machine.ts";
import type { Collective, Throttle } from "./orders.ts";
import * as pilotAt from "./pilot.ts";
import { createPilot } from "./pilot.ts";
import { createPlant } from "./plant.ts";
import { type Start, startDuty, startState } from "./start.ts";
import * as at from "./state.ts";
import { createRecorder, type Trace } from "./trace.ts";
import { createWatch, type Span } from "./watch.ts";

export interface FlightOrder {
  readonly machine: FlightMachine;
  readonly start: Start;
  readonly throttle: readonly Throttle[];
  readonly collective: readonly Collective[];
  /** s */
  readonly duration: number;
  /** True: the height (or the climb at the start) is held whatever the thrust; the run has no ground. */
  readonly held: boolean;
  /** Longest tick between two looks at controller and pilot, s; 0.002 when left out. Whole packs take 0.005. */
  readonly longestTick?: number;
  /** Most samples kept; 4,000 when left out. */
  readonly samples?: number;
  /** Step length as a share of the fastest time constant. */
  readonly stepShare?: number;
}

/** How a run ended, and when (s). All but 'flown' left what is possible; what was before is kept. */
export type End =
  | { readonly why: "flown"; readonly time: number }
  | { readonly why: "pack-empty"; readonly time: number }
  /** `value`: vertical speed at the ground, m/s. */
  | { readonly why: "ground"; readonly time: number; readonly value: number }
  | { readonly why: "clutch-chatters"; readonly time: number }
  /** Rotor speed (rad/s) past all that the blades' tables cover. */
  | { readonly why: "ran-away"; readonly time: number; readonly value: number }
  | { readonly why: "not-a-number"; readonly time: number }
  /** `value`: the fastest time constant, s. */
  | { readonly why: "too-quick"; readonly time: number; readonly value: number }
  | { readonly why: "too-long"; readonly time: number }
  | { readonly why: "no-curve"; readonly time: number }
  | ({ readonly why: "impossible-machine"; readonly time: number } & Impossible);

export interface Flight {
  readonly trace: Trace;
  readonly spans: readonly Span[];
  readonly end: End;
  /** Time between two ticks (s), ticks flown, and changes of the clutch. */
  readonly tick: number;
  readonly ticks: number;
  readonly clutchChanges: number;
}

/** More ticks or steps than this is a run that nobody waits for: some seconds of computing. */
const mostTicks = 4_000_000;
const mostSteps = 3_000_000;
/** More changes of the clutch in half a second than this: it chatters. */
const mostChanges = 160;

/**
 * Flies a machine (SI units) by its orders and gives traces, what was out of order, and how it ended. A tick is the
 * longest whole share of the loop's period within `longestTick`; duty and the rate of the collective stand still in it.
 * Never throws for a figure of the machine, never goes on without end; a run that can't begin has no samples.
 * Source: the parts' own files.
 */
export function fly(order: FlightOrder): Flight {
  const { machine } = order;
  const nothing = (end: End): Flight => ({
    trace: createRecorder(0).trace(),
    spans: [],
    end,
    tick: 0,
    ticks: 0,
    clutchChanges: 0,
  });
  const bad = impossible(machine) ?? badOrder(order);
  if (bad) return nothing({ why: "impossible-machine", time: 0, ...bad });
  const interval = 1 / machine.controller.loopRate;
  const perSample = Math.max(1, Math.ceil(interval / (order.longestTick ?? 0.002) - 1e-9));
  const length = interval / perSample;
  const ticks = Math.max(1, Math.round(order.duration / length));
  if (!(ticks <= mostTicks)) return nothing({ why: "too-long", time: 0 });
  const plant = createPlant(machine);
  if (!plant) return nothing({ why: "no-curve", time: 0 });
  const ticker = createTicker(plant, length, order.stepShare);
  if (!ticker) return nothing({ why: "too-quick", time: 0, value: 1 / Math.max(...plant.fastest) });

  const y = startState(machine, order.start);
  const last = new Float64Array(y);
  plant.mode[1] = order.held ? 1 : 0;
  const { now } = plant;
  const duty = startDuty(machine, order.start);
  const control = createControl(machine, order.throttle, interval, y[at.MOTOR]!, duty);
  const held = order.throttle.find((one) => one.kind === "speed");
  const holdSpeed = held ? held.speed / machine.gearRatio : Math.max(order.start.speed, 1);
  const pilot = createPilot(machine, order.collective, order.start.collective, holdSpeed);
  pilot.port[pilotAt.TICK] = length;
  const every = Math.max(1, Math.ceil((ticks + 1) / Math.max(2, order.samples ?? 4000)));
  const recorder = createRecorder(Math.ceil(ticks / every) + 2);
  const watch = createWatch(plant, machine);
  const spare = new Float64Array(at.SIZE);
  const keep = (k: number): void => {
    now[at.SINCE] = 0;
    plant.derivative(y, spare);
    recorder.port[0] = k * length;
    recorder.port[1] = control.port[controlAt.ASKED]! / machine.gearRatio;
    recorder.keep(y, now, plant.mode);
  };
  const tooFast = (4 * machine.controller.reference) / machine.gearRatio;

  let k = 0;
  let end: End | null = null;
  let sinceChanges = 0;
  for (; k < ticks; k++) {
    if (k % perSample === 0) {
      control.port[controlAt.NOW] = k * length;
      control.port[controlAt.TURNED] = y[at.ANGLE]!;
      control.port[controlAt.MOTOR] = y[at.MOTOR]!;
      control.sample();
      if (!Number.isFinite(control.port[controlAt.DUTY]!)) {
        end = { why: "not-a-number", time: k * length };
        break;
      }
      now[at.DUTY] = control.port[controlAt.DUTY]!;
    }
    pilot.port[pilotAt.NOW] = k * length;
    pilot.port[pilotAt.HEIGHT] = y[at.HEIGHT]!;
    pilot.port[pilotAt.CLIMB] = y[at.CLIMB]!;
    pilot.move();
    now[at.COLLECTIVE] = pilot.port[pilotAt.COLLECTIVE]!;
    now[at.COLLECTIVE_RATE] = pilot.port[pilotAt.RATE]!;
    if (k % every === 0) keep(k);
    last.set(y);
    const state = ticker.tick(y);
    watch.port[0] = (k + 1) * length;
    watch.port[1] = control.port[controlAt.HOLDS]!;
    watch.port[2] = control.port[controlAt.ASKED]! / machine.gearRatio;
    if (state !== 0 || y[at.CHARGE]! <= 0 || y[at.HEIGHT]! < 0 || y[at.ROTOR]! > tooFast) {
      const time = (k + 1) * length;
      if (state === BROKEN) end = { why: "not-a-number", time };
      else if (state === CHATTERS) end = { why: "clutch-chatters", time };
      else if (y[at.CHARGE]! <= 0) end = { why: "pack-empty", time };
      else if (y[at.ROTOR]! > tooFast) end = { why: "ran-away", time, value: y[at.ROTOR]! };
      else if (!order.held) end = { why: "ground", time, value: y[at.CLIMB]! };
    }
    if (end) break;
    watch.look(y);
    if (ticker.changes[2]! > mostSteps) {
      end = { why: "too-long", time: (k + 1) * length };
      break;
    }
    if (k * length >= sinceChanges) {
      if (ticker.changes[0]! - ticker.changes[1]! > mostChanges) {
        end = { why: "clutch-chatters", time: (k + 1) * length };
        break;
      }
      ticker.changes[1] = ticker.changes[0]!;
      sinceChanges += 0.5;
    }
  }
  // A tick that broke is taken back; any other end is kept as the last sample.
  const broken = end?.why === "not-a-number" || end?.why === "clutch-chatters";
  if (broken) y.set(last);
  const endTick = end && !broken ? k + 1 : k;
  now[at.COLLECTIVE] = now[at.COLLECTIVE]! + (broken ? 0 : now[at.COLLECTIVE_RATE]! * length);
  now[at.COLLECTIVE_RATE] = 0;
  keep(endTick);
  return {
    trace: recorder.trace(),
    spans: watch.spans(endTick * length),
    end: end ?? { why: "flown", time: k * length },
    tick: length,
    ticks: endTick,
    clutchChanges: ticker.changes[0]!,
  };
}

/** The first figure of an order that no flight can follow, or null. */
function badOrder(order: FlightOrder): Impossible | null {
  const { start } = order;
  const finite: [string, number][] = [
    ["length of the flight", order.duration],
    ["rotor speed at the start", start.speed],
    ["collective at the start", start.collective],
    ["height at the start", start.height],
    ["vertical speed at the start", start.climb],
  ];
  for (const one of order.throttle) {
    finite.push(["time of a throttle order", one.from]);
    if (one.kind === "duty") finite.push(["duty", one.duty], ["ramp of the duty", one.ramp]);
    if (one.kind === "speed") finite.push(["speed asked for", one.speed]);
  }
  for (const one of order.collective) {
    finite.push(["time of a collective order", one.from]);
    if (one.kind === "hold") finite.push(["collective", one.collective], ["time of a collective's move", one.over]);
    if (one.kind === "height") finite.push(["height to hold", one.height]);
    if (one.kind === "curve") {
      if (one.times.length === 0 || one.times.length !== one.collectives.length) {
        return { what: "number of points of the drawn curve", value: one.times.length };
      }
      for (let i = 0; i < one.times.length; i++) {
        finite.push(["time in the drawn curve", one.times[i]!], ["collective in the drawn curve", one.collectives[i]!]);
        if (i > 0 && !(one.times[i]! >= one.times[i - 1]!))
          return { what: "time in the drawn curve", value: one.times[i]! };
      }
    }
  }
  const bad = finite.find(([, value]) => !Number.isFinite(value));
  if (bad) return { what: bad[0], value: bad[1] };
  if (!(order.duration > 0)) return { what: "length of the flight", value: order.duration };
  if (start.speed < 0) return { what: "rotor speed at the start", value: start.speed };
  return null;
}
