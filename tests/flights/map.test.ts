import { describe, expect, it } from "vitest";
import { readyToFly } from "#flights/machine";
import { demos } from "#machine/demos";
import type { FlightMachine } from "#model/flight/machine";
import { createPlant } from "#model/flight/plant";
import { startState } from "#model/flight/start";
import * as at from "#model/flight/state";

/** Thrust and shaft torque of a flight with its inflow settled, found by halving. */
function settled(plant: NonNullable<ReturnType<typeof createPlant>>, state: readonly [number, number, number]) {
  const [speed, collective, climb] = state;
  const y = startState(plant.machine, { speed, collective, height: 0, climb });
  const dy = new Float64Array(at.SIZE);
  plant.now[at.COLLECTIVE] = collective;
  let [low, high] = [-40, 40];
  for (let i = 0; i < 60; i++) {
    y[at.INFLOW] = (low + high) / 2;
    plant.derivative(y, dy);
    if (dy[at.INFLOW]! > 0) low = y[at.INFLOW]!;
    else high = y[at.INFLOW]!;
  }
  return { thrust: plant.now[at.THRUST]!, load: plant.now[at.LOAD]! };
}

/** Largest difference from the blade elements themselves, as a share of the figures at full pitch and that speed. */
function worst(machine: FlightMachine, speed: number) {
  const plant = createPlant(machine);
  if (!plant) throw new Error("no plant");
  const { map, highestCollective, lowestCollective } = machine.rotor;
  const full = {
    thrust: map.thrust(speed, highestCollective, 0),
    load: map.torque(speed, highestCollective, 0),
  };
  const found = { thrust: 0, load: 0 };
  for (const climb of [0, 0.02, 0.05, 0.1]) {
    const rise = climb * speed * machine.rotor.radius;
    for (let i = 0; i <= 24; i++) {
      const collective = lowestCollective + ((highestCollective - lowestCollective) * i) / 24;
      const thrust = map.thrust(speed, collective, rise);
      // Thrust down in a climb is a rotor in its own wake, for which steady theory has no figure.
      if (climb > 0 && thrust < 0) continue;
      const torque = map.torque(speed, collective, rise);
      const load = torque + machine.tail!(torque, speed);
      const own = settled(plant, [speed, collective, rise]);
      found.thrust = Math.max(found.thrust, Math.abs(own.thrust - thrust) / full.thrust);
      if (Number.isFinite(load)) found.load = Math.max(found.load, Math.abs(own.load - load) / full.load);
    }
  }
  return found;
}

// The map that flights use, against the blade element rotor it was made from: at most 0.5 % of full scale.
describe("a flight's map of the rotor", () => {
  it.each(demos.flatMap((demo) => demo.modes.map((mode, i) => [demo.name, mode.name, demo, i] as const)))(
    "is the rotor's own within half a percent of full pitch in hover and climb: %s, %s",
    (_, __, demo, i) => {
      const ready = readyToFly(demo, i);
      if (!ready.ok) throw new Error(ready.why);
      for (const share of [0.85, 1, 1.08]) {
        const { thrust, load } = worst(ready.mode.machine, share * ready.mode.setSpeed);
        expect(thrust).toBeLessThan(5e-3);
        expect(load).toBeLessThan(5e-3);
      }
    },
  );
});
