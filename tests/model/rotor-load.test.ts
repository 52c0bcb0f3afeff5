import { describe, expect, it } from "vitest";
import { gravity, rpm } from "#model/constants";
import { pitchLoad, type RotorLoad, shaftTorque, tailThrust, thrustLoad } from "#model/rotor-load";
import { closedRotor } from "./oracle/closed-rotor.ts";

const main = closedRotor({ blades: 2, radius: 0.7, chord: 0.06, rootCutout: 0.1, density: 1.2 });
const tail = {
  rotor: closedRotor({ blades: 2, radius: 0.13, chord: 0.027, rootCutout: 0.03, density: 1.2 }),
  arm: 0.85,
  ratio: 4.6,
};
const speed = 2000 * rpm;

describe("torque balance", () => {
  it("gives the tail its thrust", () => {
    // T = Q / arm: 1000 W at 1500 rpm and 0.8 m are 6.3662 Nm and 7.95775 N.
    const torque = 1000 / (1500 * rpm);
    expect(Math.abs(torque - 6.3662)).toBeLessThan(1e-5);
    expect(Math.abs(tailThrust(torque, 0.8) - 7.95775)).toBeLessThan(1e-5);
  });

  it("adds the tail's power to the main shaft", () => {
    const own = main.torqueForThrust({ speed, thrust: 5 * gravity })!;
    const total = shaftTorque(speed, own, tail)!;
    const tailPower = tail.rotor.torqueForThrust({ speed: speed * 4.6, thrust: own / 0.85 })! * speed * 4.6;
    expect((total - own) * speed).toBeCloseTo(tailPower, 9);
    // Leishman (from memory) and a web article on full-scale hover: 5 to 10 % of the main rotor's, allow 4 to 16 %.
    expect(tailPower / (own * speed)).toBeGreaterThan(0.04);
    expect(tailPower / (own * speed)).toBeLessThan(0.16);
    expect(shaftTorque(speed, own, null)).toBe(own);
  });
});

describe("loads", () => {
  it("hold a collective or a thrust", () => {
    const collective = main.collectiveForThrust({ speed, thrust: 5 * gravity })!;
    const hover = thrustLoad(main, tail, 5 * gravity)(speed)!;
    expect(pitchLoad(main, tail, collective)(speed)).toBeCloseTo(hover, 9);
    expect(pitchLoad(main, tail, 0)(speed)!).toBeLessThan(hover);
    // A climb asks for the weight times the climb on top of what the flow asks for.
    const climbing = thrustLoad(main, null, 5 * gravity, 5)(speed)!;
    const hovering = thrustLoad(main, null, 5 * gravity)(speed)!;
    const extra = (climbing - hovering) * speed;
    expect(extra).toBeGreaterThan(0.4 * 5 * gravity * 5);
    expect(extra).toBeLessThan(5 * gravity * 5);
  });

  it("say null when a rotor can't do it", () => {
    expect(thrustLoad(main, tail, 5 * gravity)(30)).toBeNull();
    const weak: RotorLoad = { ...tail.rotor, torqueForThrust: () => null };
    expect(thrustLoad(main, { ...tail, rotor: weak }, 5 * gravity)(speed)).toBeNull();
    expect(pitchLoad(main, { ...tail, rotor: weak }, 0.1)(speed)).toBeNull();
  });
});
