import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Rotor } from "#model/rotor/bemt";
import { rotorMap } from "#model/rotor/map";
import { sections } from "#model/rotor/section";

const air = { density: 1.2, viscosity: 1.8e-5, soundSpeed: 340 };
const geometry = {
  blades: 2,
  radius: 0.35,
  rootCutout: 0.06,
  chordRoot: 0.032,
  chordTip: 0.032,
  section: sections["symmetric-12"],
};

describe("a rotor's map", () => {
  const map = rotorMap(geometry, air, { speed: [80, 320], collective: [-0.22, 0.22] });
  const rotor = new Rotor(geometry, air);
  const full = { thrust: 0, torque: 0 };
  for (const collective of [-0.22, 0.22]) {
    rotor.fly(320, 0).pitch(collective);
    full.thrust = Math.max(full.thrust, Math.abs(rotor.thrust) / 320 ** 2);
    full.torque = Math.max(full.torque, rotor.torque / 320 ** 2);
  }

  it("is within 0.5 % of full scale of the rotor itself", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 80, max: 320, noNaN: true }),
        fc.double({ min: -0.2, max: 0.2, noNaN: true }),
        fc.double({ min: -0.03, max: 0.03, noNaN: true }),
        (speed, collective, ratio) => {
          const climb = ratio * speed * 0.35;
          const [t, q] = [map.thrust(speed, collective, climb), map.torque(speed, collective, climb)];
          rotor.fly(speed, climb).pitch(collective);
          expect(Math.abs(t - rotor.thrust) / speed ** 2 / full.thrust).toBeLessThan(0.005);
          expect(Math.abs(q - rotor.torque) / speed ** 2 / full.torque).toBeLessThan(0.005);
        },
      ),
      { numRuns: 500 },
    );
  });

  it("asks the rotor itself outside its ranges, and is whole at the edge", () => {
    rotor.fly(20, 0).pitch(0.1);
    expect(map.thrust(20, 0.1, 0)).toBe(rotor.thrust);
    expect(map.torque(20, 0.1, 0)).toBe(rotor.torque);
    rotor.fly(200, 0).pitch(0.3);
    expect(map.thrust(200, 0.3, 0)).toBe(rotor.thrust);
    expect(map.torque(0, 0.1, 0)).toBe(0);
    rotor.fly(320, 0).pitch(0.22);
    expect(map.thrust(320, 0.22, 0) / rotor.thrust).toBeCloseTo(1, 9);
  });
});
