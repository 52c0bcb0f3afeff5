/**
 * The same flight by another integrator: the extrapolation method of Hairer and Wanner (ODEX), which chooses its own
 * steps and order, over the same equations of motion, controller and pilot. The clutch is handled here once more, by halving.
 */
import { createRequire } from "node:module";
import * as controlAt from "#model/flight/control";
import { createControl } from "#model/flight/control";
import * as pilotAt from "#model/flight/pilot";
import { createPilot } from "#model/flight/pilot";
import { createPlant, type Plant } from "#model/flight/plant";
import type { Flight, FlightOrder } from "#model/flight/run";
import { startDuty, startState } from "#model/flight/start";
import * as at from "#model/flight/state";
import { columns } from "#model/flight/trace";

interface Solver {
  relativeTolerance: number;
  absoluteTolerance: number;
  initialStepSize: number;
  maxSteps: number;
  solve(
    f: (x: number, y: number[]) => number[],
    from: number,
    y: number[],
    to: number,
  ): { y: number[]; outcome: number };
}
// Its own type file doesn't pass the strict settings here: only what is used is typed.
const { Solver } = createRequire(import.meta.url)("odex") as { Solver: new (size: number) => Solver };

/** State after each tick. */
export function oracle(order: FlightOrder, flown: Flight): Float64Array[] {
  const { machine } = order;
  const plant = createPlant(machine);
  if (!plant) throw new Error("no plant");
  const { now, mode } = plant;
  mode[1] = order.held ? 1 : 0;
  const y = startState(machine, order.start);
  const interval = 1 / machine.controller.loopRate;
  const perSample = Math.round(interval / flown.tick);
  const control = createControl(machine, order.throttle, interval, y[at.MOTOR]!, startDuty(machine, order.start));
  const held = order.throttle.find((one) => one.kind === "speed");
  const pilot = createPilot(
    machine,
    order.collective,
    order.start.collective,
    held ? held.speed / machine.gearRatio : Math.max(order.start.speed, 1),
  );
  pilot.port[pilotAt.TICK] = flown.tick;
  const states = [Float64Array.from(y)];
  for (let k = 0; k < flown.ticks; k++) {
    if (k % perSample === 0) {
      control.port[controlAt.NOW] = k * flown.tick;
      control.port[controlAt.TURNED] = y[at.ANGLE]!;
      control.port[controlAt.MOTOR] = y[at.MOTOR]!;
      control.sample();
      now[at.DUTY] = control.port[controlAt.DUTY]!;
    }
    pilot.port[pilotAt.NOW] = k * flown.tick;
    pilot.port[pilotAt.HEIGHT] = y[at.HEIGHT]!;
    pilot.port[pilotAt.CLIMB] = y[at.CLIMB]!;
    pilot.move();
    now[at.COLLECTIVE] = pilot.port[pilotAt.COLLECTIVE]!;
    now[at.COLLECTIVE_RATE] = pilot.port[pilotAt.RATE]!;
    tick(plant, y, flown.tick);
    states.push(Float64Array.from(y));
  }
  return states;
}

const rates = new Float64Array(at.SIZE);

function sign(plant: Plant, y: Float64Array, since: number): number {
  if (plant.mode[0] === 0) return plant.machine.gearRatio * y[at.ROTOR]! - y[at.MOTOR]!;
  plant.now[at.SINCE] = since;
  plant.derivative(y, rates);
  return plant.now[at.CLUTCH]!;
}

function advance(plant: Plant, y: Float64Array, from: number, to: number): Float64Array {
  const solver = new Solver(at.SIZE);
  solver.relativeTolerance = 1e-10;
  solver.absoluteTolerance = 1e-11;
  solver.initialStepSize = (to - from) / 4;
  const result = solver.solve(
    (x, state) => {
      plant.now[at.SINCE] = x;
      plant.derivative(Float64Array.from(state), rates);
      return [...rates];
    },
    from,
    [...y],
    to,
  );
  if (result.outcome !== 0) throw new Error("the oracle gave up");
  return Float64Array.from(result.y);
}

function tick(plant: Plant, y: Float64Array, length: number): void {
  let from = 0;
  for (let n = 0; n < 20 && from < length; n++) {
    if (plant.mode[0] === 1 && sign(plant, y, from) < 0) plant.mode[0] = 0;
    const end = advance(plant, y, from, length);
    if (sign(plant, end, length) >= 0) {
      y.set(end);
      return;
    }
    let [low, high] = [from, length];
    while (high - low > 1e-12) {
      const middle = (low + high) / 2;
      if (sign(plant, advance(plant, y, from, middle), middle) < 0) high = middle;
      else low = middle;
    }
    if (high > from) y.set(advance(plant, y, from, high));
    plant.mode[0] = 1 - plant.mode[0]!;
    y[at.MOTOR] = plant.machine.gearRatio * y[at.ROTOR]!;
    from = high;
  }
}

/** Largest difference between the two, over all states and samples: relative, with a floor of this share of each state's own range. */
export function worstDifference(
  flight: Flight,
  states: readonly Float64Array[],
  floor: number,
): { name: string; value: number; at: number } {
  let worst = { name: "", value: 0, at: 0 };
  for (const [name, column] of Object.entries(columns)) {
    if (column.from !== "state") continue;
    const own = flight.trace[name as keyof typeof columns];
    if (own.length !== states.length) throw new Error(`${own.length} samples, the oracle has ${states.length}`);
    const largest = Math.max(...states.map((s) => Math.abs(s[column.place]!)));
    if (largest === 0) continue;
    for (let i = 0; i < own.length; i++) {
      const theirs = states[i]![column.place]!;
      const value = Math.abs(own[i]! - theirs) / Math.max(Math.abs(theirs), floor * largest);
      if (!(value <= worst.value)) worst = { name, value, at: i * flight.tick };
    }
  }
  return worst;
}
