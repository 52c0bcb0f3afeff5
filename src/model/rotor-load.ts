/**
 * What a rotor asks of its shaft, whatever model stands behind it, and the loads that main and tail rotor make together.
 * Speeds in rad/s, collective in rad, climb in m/s (up is positive), thrust in N, torque in N m.
 */

/** A rotor turning at a speed with its blades set to a collective. */
export interface RotorState {
  readonly speed: number;
  readonly collective: number;
  /** Default: hovering. */
  readonly climb?: number;
}

/** A rotor turning at a speed that has to give a thrust. */
export interface RotorTask {
  readonly speed: number;
  readonly thrust: number;
  /** Default: hovering. */
  readonly climb?: number;
}

/** A rotor as its shaft and its thrust see it; closed-form and blade-element models both give one. */
export interface RotorLoad {
  readonly thrustAt: (state: RotorState) => number;
  readonly torqueAt: (state: RotorState) => number;
  /** Null when no collective gives the thrust at that speed. */
  readonly collectiveForThrust: (task: RotorTask) => number | null;
  /** Torque of the shaft at that thrust; null as above. */
  readonly torqueForThrust: (task: RotorTask) => number | null;
}

/** Torque on the main shaft at a speed of it; null when the rotors can't do there what the load asks of them. */
export type LoadTorque = (speed: number) => number | null;

/** The tail rotor, driven by the main shaft. */
export interface Tail {
  readonly rotor: RotorLoad;
  /** Distance of its axis from the main shaft, m. */
  readonly arm: number;
  /** Tail turns for one of the main rotor. */
  readonly ratio: number;
}

/** Thrust of the tail rotor that holds the machine against the main rotor's torque: Q / arm, N. Source: definition. */
export const tailThrust = (mainTorque: number, arm: number): number => mainTorque / arm;

/**
 * Torque of main and tail rotor together on the main shaft, N m: Q + G_t Q_t; null when the tail can't hold.
 * The tail's own gears are taken as free of loss. Source: definition (torque balance).
 *
 * @param speed main rotor, rad/s
 * @param mainTorque N m
 * @param tail null: no tail rotor on the shaft
 */
export function shaftTorque(speed: number, mainTorque: number, tail: Tail | null): number | null {
  if (tail === null) return mainTorque;
  const thrust = tailThrust(mainTorque, tail.arm);
  const own = tail.rotor.torqueForThrust({ speed: speed * tail.ratio, thrust });
  return own === null ? null : mainTorque + tail.ratio * own;
}

/**
 * The load of a rotor whose collective is held: flat pitch on the ground, or full pitch before the climb begins. N m.
 * Source: definition.
 *
 * @param collective rad
 * @param climb m/s
 */
export const pitchLoad =
  (main: RotorLoad, tail: Tail | null, collective: number, climb = 0): LoadTorque =>
  (speed) =>
    shaftTorque(speed, main.torqueAt({ speed, collective, climb }), tail);

/**
 * The load of a rotor whose thrust is held: hover (thrust = weight) or a steady climb. N m.
 * Source: definition.
 *
 * @param thrust N
 * @param climb m/s
 */
export const thrustLoad =
  (main: RotorLoad, tail: Tail | null, thrust: number, climb = 0): LoadTorque =>
  (speed) => {
    const own = main.torqueForThrust({ speed, thrust, climb });
    return own === null ? null : shaftTorque(speed, own, tail);
  };
