/** Where each quantity stands in the state of a flight: all in SI, all in one typed array. */

/** Motor speed, rad/s. */
export const MOTOR = 0;
/** Rotor speed, rad/s. */
export const ROTOR = 1;
/** Height, m. */
export const HEIGHT = 2;
/** Vertical speed, up, m/s. */
export const CLIMB = 3;
/** Induced velocity through the disc, down, m/s. */
export const INFLOW = 4;
/** Charge of the pack, 0 to 1. */
export const CHARGE = 5;
/** Slow part of the pack's sag, V. */
export const SAG = 6;
/** Temperature of the winding, K. */
export const WINDING = 7;
/** Temperature of the controller, K. */
export const CONTROLLER = 8;

/** How many of the quantities act on the others; those after them only add up. */
export const ACTING = 9;

/** Angle that the motor has turned through, rad. */
export const ANGLE = 9;
/** Energy that the cells' chemistry gave, J. */
export const CHEMICAL = 10;
/** Heat in pack and leads, J. */
export const PACK_HEAT = 11;
/** Heat in the controller, J. */
export const CONTROLLER_HEAT = 12;
/** Heat in the winding, J. */
export const COPPER_HEAT = 13;
/** Heat in the motor's iron and bearings, J. */
export const FRICTION_HEAT = 14;
/** Heat in the gears, J. */
export const MESH_HEAT = 15;
/** Work that the rotor shaft did on the air through main and tail rotor, J. */
export const AIR_WORK = 16;
/** Work of the thrust on the airframe, J: part of what the air work buys. */
export const LIFT_WORK = 17;
/** Work lost to the airframe's drag, J. */
export const DRAG_WORK = 18;

/** Length of the state. */
export const SIZE = 19;

/** What a run is told and what it gives besides its state: places in `Plant.now`. */
export const DUTY = 0;
/** Collective at the start of the tick, rad. */
export const COLLECTIVE = 1;
/** Rate of the collective, rad/s. */
export const COLLECTIVE_RATE = 2;
/** Time since the start of the tick, s. */
export const SINCE = 3;
/** Current of the motor, A. */
export const MOTOR_CURRENT = 4;
/** Current of the pack, A. */
export const PACK_CURRENT = 5;
/** Voltage at the pack's plug, V. */
export const PACK_VOLTAGE = 6;
/** Thrust of the main rotor, N. */
export const THRUST = 7;
/** Torque of main and tail rotor on the rotor's shaft, N m. */
export const LOAD = 8;
/** Torque through the one-way clutch, at the motor's side, N m. */
export const CLUTCH = 9;
/** Length of `Plant.now`. */
export const NOW = 10;
