/**
 * The machine as equations of motion: what each quantity of the state changes by in a second. The one place where they
 * stand; the sampled governor and the pilot act from outside through `now`. Numbers pass through typed arrays only, so
 * that a run makes no garbage; for that the relations of motor and pack are written out here, and a test holds them to
 * the ones that pages show.
 */
import { gravity } from "../constants.ts";
import { copperCoefficient, copperResistance } from "../motor.ts";
import type { FlightMachine } from "./machine.ts";
import { climbCount } from "./rotor-rows.ts";
import * as at from "./state.ts";
import {
  angleFrom,
  cellCount,
  cellsPerRadian,
  climbsPerRatio,
  mixing,
  type Surface,
  rotorSurface as tablesOf,
  tailCellCount,
} from "./surface.ts";

/** Motor speed below which friction fades, so that a motor at rest doesn't turn backwards: rad/s. Our choice. */
const frictionFades = 10;
/** Cells of the table of the pack's open voltage. */
const chargeCells = 256;
/** Air that follows the disc: Carpenter and Fridovich, NACA TN 3044 (1953): 63.7 % of the sphere around it. */
const followingAir = 0.637 * (4 / 3) * Math.PI;

export interface Plant {
  readonly machine: FlightMachine;
  /** Inputs and outputs of the equations, at the places that `state.ts` names. */
  readonly now: Float64Array;
  /** [0]: 1 while the clutch is engaged. [1]: 1 while the height is held (tied down, or a climb at a set speed). */
  readonly mode: Int32Array;
  /** Writes the rate of change of the state `y` into `dy`; `now` gives duty and collective and takes the currents. */
  readonly derivative: (y: Float64Array, dy: Float64Array) => void;
  /** Fastest rates of the equations, 1/s: engaged, overrunning. */
  readonly fastest: readonly [number, number];
}

/** Voltage of the pack over charge as cubics of equal cells; null when the curve gives no number somewhere. */
function voltageTable(openVoltage: (charge: number) => number): Float64Array | null {
  const table = new Float64Array(chargeCells * 4);
  const value = (i: number) => openVoltage(Math.min(1, Math.max(0, i / chargeCells)));
  const slope = (i: number) => {
    const [low, high] = [Math.max(0, i - 1), Math.min(chargeCells, i + 1)];
    return (value(high) - value(low)) / (high - low);
  };
  for (let i = 0; i < chargeCells; i++) {
    const [a, b, p, q] = [value(i), value(i + 1), slope(i), slope(i + 1)];
    table.set([a, p, 3 * (b - a) - 2 * p - q, 2 * (a - b) + p + q], i * 4);
  }
  return table.every(Number.isFinite) ? table : null;
}

const voltages = new WeakMap<(charge: number) => number, Float64Array | null>();

/**
 * The equations of motion of a machine, SI units: motor behind an ideal chopper (duty only drives, never brakes), rigid
 * one-way clutch, gears, rotor with an inflow that follows late, vertical motion, pack with its slow sag, two temperatures
 * and where all energy goes. Null when the rotor's map or the pack's curve gives no number.
 *
 * Sources: M. Drela, First-Order DC Electric Motor Model (2007); P. J. Carpenter and B. Fridovich, NACA TN 3044 (1953);
 * G. L. Plett, Battery Management Systems 1 (2015), section 2.
 */
export function createPlant(machine: FlightMachine): Plant | null {
  const { pack, motor, controller, rotor, gearRatio, meshEfficiency, mass } = machine;
  const rotorReference = controller.reference / gearRatio;
  const surface = tablesOf(rotor.map, machine.tail, rotor.radius, machine.airDensity, rotorReference);
  let voltage = voltages.get(pack.openVoltage);
  if (voltage === undefined) {
    voltage = voltageTable(pack.openVoltage);
    voltages.set(pack.openVoltage, voltage);
  }
  if (!surface || !voltage) return null;
  const ocv = voltage;
  const now = new Float64Array(at.NOW);
  const mode = new Int32Array([1, 0]);
  const { speeds, cells, tail, tailFrom, tailCells, shift, inducedFactor } = surface;
  const lastSpeed = speeds.length - 2;
  const lastClimb = climbCount - 1;

  const { constant, noLoadCurrent } = motor;
  // R(T) = R0 + slope (T - T0): copper.
  const copperSlope =
    motor.resistance * (copperCoefficient / (1 + copperCoefficient * (motor.resistanceTemperature - 293.15)));
  const copperZero = copperResistance(motor.resistance, 0, motor.resistanceTemperature);
  const rotorInertia = rotor.inertia;
  const motorInertia = motor.inertia;
  const drivenInertia = rotorInertia + meshEfficiency * gearRatio * gearRatio * motorInertia;
  const { radius } = rotor;
  const area = Math.PI * radius * radius;
  const force = machine.airDensity * area * radius * radius;
  const flow = 2 * machine.airDensity * area;
  const air = followingAir * machine.airDensity * radius ** 3;
  const drag = 0.5 * machine.airDensity * machine.dragArea;
  const slowRate = 1 / pack.slowTime;
  const { slowResistance, resistance: packResistance, capacity } = pack;
  const controllerResistance = controller.resistance;
  const airTemperature = machine.airTemperature;
  const windingRate = 1 / motor.heatCapacity;
  const windingCooling = motor.cooling;
  const controllerRate = 1 / controller.heatCapacity;
  const controllerCooling = controller.cooling;

  const derivative = (y: Float64Array, dy: Float64Array): void => {
    const motorSpeed = y[at.MOTOR]!;
    const speed = y[at.ROTOR]!;
    const climb = y[at.CLIMB]!;
    const inflow = y[at.INFLOW]!;
    const duty = now[at.DUTY]!;

    // Pack and motor.
    const place = y[at.CHARGE]! * chargeCells;
    const cell = place <= 0 ? 0 : place >= chargeCells ? chargeCells - 1 : Math.floor(place);
    // Past empty (a last tick may go there) the voltage of the empty pack holds.
    const u = place <= 0 ? 0 : place >= chargeCells ? 1 : place - cell;
    const c = cell * 4;
    const open = ocv[c]! + u * (ocv[c + 1]! + u * (ocv[c + 2]! + u * ocv[c + 3]!));
    const sag = y[at.SAG]!;
    const copper = copperZero + copperSlope * y[at.WINDING]!;
    const push = duty * (open - sag) - constant * motorSpeed;
    const current = push > 0 ? push / (copper + controllerResistance + duty * duty * packResistance) : 0;
    const packCurrent = duty * current;
    const friction =
      constant * noLoadCurrent * (motorSpeed / Math.sqrt(motorSpeed * motorSpeed + frictionFades * frictionFades));
    const torque = constant * current - friction;

    // Rotor: blade angle, then thrust and torque from the tables.
    const square = speed * speed;
    const through = climb + inflow;
    const tip = radius * Math.sqrt(square + 1);
    const ratio = through / tip;
    const angle = now[at.COLLECTIVE]! + now[at.COLLECTIVE_RATE]! * now[at.SINCE]! - shift * ratio;
    let j = 0;
    while (j < lastSpeed && speed > speeds[j + 1]!) j++;
    const s0 = speeds[j]!;
    // Reynolds number enters by a small negative power: half-way between straight in speed and straight in its inverse.
    const s1 = speeds[j + 1]!;
    const share = ((speed - s0) / (s1 - s0)) * (0.5 + (0.5 * s1) / Math.max(speed, s0));
    const blend = share < 0 ? 0 : Math.min(share, 1);
    const x = (angle - angleFrom) * cellsPerRadian;
    const i = x <= 0 ? 0 : x >= cellCount ? cellCount - 1 : Math.floor(x);
    const f = x <= 0 ? 0 : x >= cellCount ? 1 : x - i;
    // Tables of the two speeds and the two climbs next to this state; in a descent those of hover.
    const rising = climb > 0 ? (climb / tip) * climbsPerRatio : 0;
    const k = rising >= lastClimb ? lastClimb - 1 : Math.floor(rising);
    const rise = rising >= lastClimb ? 1 : rising - k;
    const p = ((j * climbCount + k) * cellCount + i) * 8;
    const q = p + climbCount * cellCount * 8;
    const w00 = (1 - blend) * (1 - rise);
    const w01 = (1 - blend) * rise;
    const w10 = blend * (1 - rise);
    const w11 = blend * rise;
    const r = p + cellCount * 8;
    const s = q + cellCount * 8;
    const l0 = w00 * cells[p]! + w01 * cells[r]! + w10 * cells[q]! + w11 * cells[s]!;
    const l1 = w00 * cells[p + 1]! + w01 * cells[r + 1]! + w10 * cells[q + 1]! + w11 * cells[s + 1]!;
    const l2 = w00 * cells[p + 2]! + w01 * cells[r + 2]! + w10 * cells[q + 2]! + w11 * cells[s + 2]!;
    const l3 = w00 * cells[p + 3]! + w01 * cells[r + 3]! + w10 * cells[q + 3]! + w11 * cells[s + 3]!;
    const d0 = w00 * cells[p + 4]! + w01 * cells[r + 4]! + w10 * cells[q + 4]! + w11 * cells[s + 4]!;
    const d1 = w00 * cells[p + 5]! + w01 * cells[r + 5]! + w10 * cells[q + 5]! + w11 * cells[s + 5]!;
    const d2 = w00 * cells[p + 6]! + w01 * cells[r + 6]! + w10 * cells[q + 6]! + w11 * cells[s + 6]!;
    const d3 = w00 * cells[p + 7]! + w01 * cells[r + 7]! + w10 * cells[q + 7]! + w11 * cells[s + 7]!;
    const lift = l0 + f * (l1 + f * (l2 + f * l3));
    const main = ((climb + inducedFactor * inflow) / tip) * lift + d0 + f * (d1 + f * (d2 + f * d3));
    const xt = (main - tailFrom) * tailCells;
    const it = xt <= 0 ? 0 : xt >= tailCellCount ? tailCellCount - 1 : Math.floor(xt);
    const ft = xt <= 0 ? 0 : xt >= tailCellCount ? 1 : xt - it;
    const pt = (j * tailCellCount + it) * 4;
    const qt = pt + tailCellCount * 4;
    const tail0 = tail[pt]! + ft * (tail[pt + 1]! + ft * (tail[pt + 2]! + ft * tail[pt + 3]!));
    const tail1 = tail[qt]! + ft * (tail[qt + 1]! + ft * (tail[qt + 2]! + ft * tail[qt + 3]!));
    const thrust = force * square * lift;
    const load = force * radius * square * (main + tail0 + blend * (tail1 - tail0));

    // Motor and rotor through the clutch.
    let passed = 0;
    if (mode[0] === 1) {
      const rate = (meshEfficiency * gearRatio * torque - load) / drivenInertia;
      dy[at.ROTOR] = rate;
      dy[at.MOTOR] = gearRatio * rate;
      passed = torque - motorInertia * gearRatio * rate;
    } else {
      dy[at.ROTOR] = -load / rotorInertia;
      dy[at.MOTOR] = torque / motorInertia;
    }

    // Inflow and vertical motion.
    const sinking = climb * inflow < 0 ? mixing * climb : 0;
    dy[at.INFLOW] = (thrust - flow * inflow * Math.sqrt(through * through + sinking * sinking)) / air;
    const braking = drag * climb * Math.abs(climb);
    dy[at.HEIGHT] = climb;
    dy[at.CLIMB] = mode[1] === 1 ? 0 : (thrust - braking) / mass - gravity;

    // Charge, sag, temperatures, energies.
    const copperHeat = current * current * copper;
    const controllerHeat = current * current * controllerResistance;
    const frictionHeat = friction * motorSpeed;
    dy[at.CHARGE] = -packCurrent / capacity;
    dy[at.SAG] = (packCurrent * slowResistance - sag) * slowRate;
    dy[at.WINDING] = (copperHeat + frictionHeat - windingCooling * (y[at.WINDING]! - airTemperature)) * windingRate;
    dy[at.CONTROLLER] = (controllerHeat - controllerCooling * (y[at.CONTROLLER]! - airTemperature)) * controllerRate;
    dy[at.ANGLE] = motorSpeed;
    dy[at.CHEMICAL] = open * packCurrent;
    const slowHeat = slowResistance > 0 ? (sag * sag) / slowResistance : 0;
    dy[at.PACK_HEAT] = packCurrent * packCurrent * packResistance + slowHeat;
    dy[at.CONTROLLER_HEAT] = controllerHeat;
    dy[at.COPPER_HEAT] = copperHeat;
    dy[at.FRICTION_HEAT] = frictionHeat;
    dy[at.MESH_HEAT] = (1 - meshEfficiency) * passed * motorSpeed;
    dy[at.AIR_WORK] = load * speed;
    dy[at.LIFT_WORK] = thrust * climb;
    dy[at.DRAG_WORK] = braking * climb;

    now[at.MOTOR_CURRENT] = current;
    now[at.PACK_CURRENT] = packCurrent;
    now[at.PACK_VOLTAGE] = open - sag - packCurrent * packResistance;
    now[at.THRUST] = thrust;
    now[at.LOAD] = load;
    now[at.CLUTCH] = passed;
  };

  return { machine, now, mode, derivative, fastest: rates(machine, surface, rotorReference) };
}

/** Fastest rates with the clutch engaged and overrunning, 1/s: an upper estimate, from which the steps are chosen. */
function rates(m: FlightMachine, surface: Surface, speed: number): [number, number] {
  const { pack, motor, controller, rotor } = m;
  const winding = copperResistance(motor.resistance, motor.temperature, motor.resistanceTemperature);
  const grip =
    motor.constant ** 2 / (winding + controller.resistance) + (motor.constant * motor.noLoadCurrent) / frictionFades;
  const tip = speed * rotor.radius;
  const disc = m.airDensity * Math.PI * rotor.radius ** 2;
  // Torque of the air rises with the square of the speed; the tail's part is taken as a third of the main rotor's.
  const heaviest = surface.tailFrom + tailCellCount / surface.tailCells;
  const damping = (2 * 1.3 * heaviest * disc * tip * tip * rotor.radius) / speed;
  const motorAlone = grip / motor.inertia;
  const rotorAlone = damping / rotor.inertia;
  const geared = m.meshEfficiency * m.gearRatio ** 2;
  const joined = (grip * geared + damping) / (motor.inertia * geared + rotor.inertia);
  // Lift falls with the inflow, momentum flow rises: both close the gap. A fifth of the tip speed is a hard climb's flow.
  const inflow = (Math.PI * tip * (surface.shift * surface.steepest + 0.4)) / (followingAir * rotor.radius);
  const heave = (disc * tip * surface.shift * surface.steepest) / m.mass;
  const warming = Math.max(motor.cooling / motor.heatCapacity, controller.cooling / controller.heatCapacity);
  const rest = Math.max(inflow, heave, 1 / pack.slowTime, warming);
  return [Math.max(joined, rest), Math.max(motorAlone, rotorAlone, rest)];
}
