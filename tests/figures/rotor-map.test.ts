/** The map of a rotor against the rotor that it stands for. */
import { expect, it } from "vitest";
import { figuresOf } from "#figures/figures";
import { rotorMap, withTail } from "#figures/rotor-map";
import { demos } from "#machine/demos";
import { rpm } from "#model/constants";

it.each(demos.map((machine) => [machine.name, machine] as const))("of the %s is within 1 % of it", (_, machine) => {
  const { main, weight } = figuresOf(machine).rig;
  const map = rotorMap(main);
  for (const { headRpm } of machine.modes) {
    for (const share of [0.75, 1, 1.2]) {
      for (const load of [0, 0.6, 1, 1.3]) {
        const [speed, thrust] = [headRpm * share * rpm, weight * load];
        const exact = main.torqueForThrust({ speed, thrust });
        if (exact === null) continue;
        expect(map.torque(speed, thrust)! / exact, `${headRpm * share} rpm, ${load}`).toBeCloseTo(1, 2);
      }
    }
  }
});

it("stalls where the rotor does", () => {
  const { main } = figuresOf(demos[0]!).rig;
  const map = rotorMap(main);
  const speed = 1500 * rpm;
  const most = map.most(speed);
  expect(main.torqueForThrust({ speed, thrust: 0.97 * most })).not.toBeNull();
  expect(main.torqueForThrust({ speed, thrust: 1.03 * most })).toBeNull();
  expect(map.torque(speed, 1.001 * most)).toBeNull();
  expect([map.torque(0, 1), map.most(0)]).toEqual([null, 0]);
});

it("gives the torque of both rotors as the figures have it", () => {
  for (const machine of demos) {
    const { rig } = figuresOf(machine);
    machine.modes.forEach((_, mode) => {
      const { headSpeed: speed, collectiveMax: collective } = rig.parts.modes[mode]!;
      const both = withTail(rig.tail, speed, rig.main.torqueAt({ speed, collective }));
      expect(both / rig.load("full-pitch", mode)(speed)!).toBeCloseTo(1, 2);
    });
  }
});
