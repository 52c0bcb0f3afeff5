import { expect, it } from "vitest";
import * as at from "#model/flight/state";

it("every quantity has a place of its own, those that act come first", () => {
  const state = [
    at.MOTOR,
    at.ROTOR,
    at.HEIGHT,
    at.CLIMB,
    at.INFLOW,
    at.CHARGE,
    at.SAG,
    at.WINDING,
    at.CONTROLLER,
    at.ANGLE,
    at.CHEMICAL,
    at.PACK_HEAT,
    at.CONTROLLER_HEAT,
    at.COPPER_HEAT,
    at.FRICTION_HEAT,
    at.MESH_HEAT,
    at.AIR_WORK,
    at.LIFT_WORK,
    at.DRAG_WORK,
  ];
  expect(new Set(state).size).toBe(at.SIZE);
  expect(Math.max(...state)).toBe(at.SIZE - 1);
  expect(state.slice(0, at.ACTING).every((place) => place < at.ACTING)).toBe(true);
  const now = [
    at.DUTY,
    at.COLLECTIVE,
    at.COLLECTIVE_RATE,
    at.SINCE,
    at.MOTOR_CURRENT,
    at.PACK_CURRENT,
    at.PACK_VOLTAGE,
    at.THRUST,
    at.LOAD,
    at.CLUTCH,
  ];
  expect(new Set(now).size).toBe(at.NOW);
});
