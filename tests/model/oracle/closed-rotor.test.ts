import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { rpm } from "#model/constants";
import { integral } from "#model/gauss";
import { figureOfMerit, idealHoverPower, inducedVelocity } from "#model/momentum";
import { closedForm, closedRotor } from "./closed-rotor.ts";

const degree = Math.PI / 180;

/** A rotor of a given solidity in air of density 1, disc of area pi, so that coefficients are easy to read. */
function unit(solidity: number, options: { drag?: number; inducedFactor?: number } = {}) {
  return closedRotor({ blades: 2, radius: 1, chord: (solidity * Math.PI) / 2, rootCutout: 0, density: 1, ...options });
}

/** Thrust coefficient to thrust at a tip speed of 1 m/s. */
const force = (ct: number) => ct * Math.PI;

const model = closedRotor({ blades: 2, radius: 0.7, chord: 0.06, rootCutout: 0.1, density: 1.2 });
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe("closed forms", () => {
  it("collective of an untwisted blade", () => {
    // Leishman ch. 3, theta0 = 6 CT / (sigma a) + (3/2) sqrt(CT / 2): sigma 0.1, a 5.73, CT 0.008: 10.2352 degrees.
    const rotor = unit(0.1);
    const collective = rotor.collectiveForThrust({ speed: 1, thrust: force(0.008) })!;
    expect(Math.abs(collective / degree - 10.2352)).toBeLessThan(1e-4);
    expect(rotor.thrustAt({ speed: 1, collective })).toBeCloseTo(force(0.008), 12);
  });

  it("figure of merit", () => {
    // Leishman ch. 2: CT 0.008, sigma 0.1, cd 0.01, kappa 1.15: 0.71579.
    const thrust = force(0.008);
    const power = unit(0.1, { drag: 0.01, inducedFactor: 1.15 }).torqueForThrust({ speed: 1, thrust })!;
    const idealPower = idealHoverPower({ thrust, density: 1, area: Math.PI });
    expect(Math.abs(figureOfMerit({ idealPower, power }) - 0.71579)).toBeLessThan(1e-5);
  });
});

describe("blade elements between root and tip", () => {
  const [speed, collective, root] = [180, 0.12, 0.25];
  const cut = closedRotor({ blades: 3, radius: 0.6, chord: 0.05, rootCutout: root * 0.6, density: 1.2, drag: 0.012 });

  it("add up to the profile power", () => {
    // By definition, N c cd rho/2 times the integral of (w r)³ dr.
    const sum = integral((r) => (speed * r) ** 3, root * 0.6, 0.6, 4);
    expect(cut.profilePower(speed)).toBeCloseTo(0.5 * 1.2 * 3 * 0.05 * 0.012 * sum, 8);
  });

  it("add up to the thrust in the flow that this thrust makes", () => {
    const thrust = cut.thrustAt({ speed, collective, climb: 2 });
    const flow = 2 + inducedVelocity(thrust, 2, 1.2, cut.area);
    const element = (r: number) =>
      0.5 * 1.2 * (speed * r) ** 2 * 3 * 0.05 * closedForm.liftSlope * (collective - flow / (speed * r));
    expect(integral(element, root * 0.6, 0.6, 4) / thrust).toBeCloseTo(1, 10);
  });

  it("have the induced factor of Leishman, ch. 2, and a drag between those measured, unless told otherwise", () => {
    const same = closedRotor({
      blades: 2,
      radius: 0.7,
      chord: 0.06,
      rootCutout: 0.1,
      density: 1.2,
      inducedFactor: 1.15,
    });
    const task = { speed: 200, thrust: 50 };
    expect(model.torqueForThrust(task)).toBe(same.torqueForThrust(task));
    // NACA TN 626 (0.0102 unlifted at Re 242,000) and SAND80-2114 (0.0157 at 8 degrees, Re 360,000).
    expect(closedForm.drag).toBeGreaterThan(0.0102);
    expect(closedForm.drag).toBeLessThan(0.0157);
  });
});

describe("a full-scale helicopter", () => {
  // Eli-TAARG (University of Naples Federico II) and Tognaccini, Lezioni di aerodinamica dell'ala rotante.
  const density = 1.225;
  const rotor = (radius: number, solidity: number) =>
    closedRotor({
      blades: 4,
      radius,
      chord: (solidity * Math.PI * radius) / 4,
      rootCutout: 0,
      density,
      drag: 0.01,
      inducedFactor: 1.15,
    });
  const main = rotor(8.18, 0.082);
  const speed = 220.98 / 8.18;
  const thrust = 9979.03 * 9.81;

  it("hovers with 1552 kW induced and 285 kW profile power", () => {
    const power = main.torqueForThrust({ speed, thrust })! * speed;
    expect(Math.abs(main.profilePower(speed) / 284800 - 1)).toBeLessThan(1e-3);
    expect(Math.abs(power / 1837000 - 1)).toBeLessThan(1e-3);
    expect(Math.abs((power - main.profilePower(speed)) / 1552200 - 1)).toBeLessThan(2e-4);
  });

  it("has a tail rotor that takes 8 % of that", () => {
    const torque = main.torqueForThrust({ speed, thrust })!;
    const tailThrust = torque / 10.73;
    expect(Math.abs(tailThrust / 6337.5 - 1)).toBeLessThan(1e-3);
    const tailSpeed = 208.79 / 1.7;
    const power = rotor(1.7, 0.188).torqueForThrust({ speed: tailSpeed, thrust: tailThrust })! * tailSpeed;
    expect(Math.abs(power / 146800 - 1)).toBeLessThan(2e-3);
  });
});

describe("a published model rotor", () => {
  // Knight and Hefner, NACA TN 626 (1937): two blades, R 0.762 m, c 0.0508 m, 960 rpm: CT and CQ. No tip loss here: 16 %.
  it.each([
    [6, 0.00221, 0.000158],
    [8, 0.00325, 0.000247],
    [10, 0.004235, 0.0003455],
  ])("at %i degrees", (pitch, ct, cq) => {
    const rotor = closedRotor({ blades: 2, radius: 0.762, chord: 0.0508, rootCutout: 0.127, density: 1.225 });
    const speed = 960 * rpm;
    const scale = 1.225 * rotor.area * (speed * 0.762) ** 2;
    const thrust = rotor.thrustAt({ speed, collective: pitch * degree });
    expect(Math.abs(thrust / scale / ct - 1)).toBeLessThan(0.16);
    const torque = rotor.torqueForThrust({ speed, thrust: ct * scale })!;
    expect(Math.abs(torque / (scale * 0.762) / cq - 1)).toBeLessThan(0.16);
  });
});

describe("thrust and collective", () => {
  it("undo each other, climbing, hovering and sinking, right way up and upside down", () => {
    fc.assert(
      fc.property(number(80, 300), number(-0.25, 0.25), number(-15, 15), (speed, collective, climb) => {
        const thrust = model.thrustAt({ speed, collective, climb });
        const back = model.collectiveForThrust({ speed, thrust, climb });
        if (Math.abs(model.meanLift(speed, thrust)) > 1) expect(back).toBeNull();
        else expect(back).toBeCloseTo(collective, 8);
      }),
    );
  });

  it("thrust rises with collective through zero, without a jump, and is odd in it", () => {
    for (const climb of [-6, 0, 6]) {
      let before = model.thrustAt({ speed: 200, collective: -0.201, climb });
      for (let collective = -0.2; collective <= 0.2; collective += 0.001) {
        const now = model.thrustAt({ speed: 200, collective, climb });
        expect(now).toBeGreaterThan(before);
        expect(now - before).toBeLessThan(2.5);
        expect(model.thrustAt({ speed: 200, collective: -collective, climb: -climb })).toBeCloseTo(-now, 8);
        before = now;
      }
    }
    expect(model.thrustAt({ speed: 200, collective: 0 })).toBe(0);
  });

  it("torque at a collective is the torque at its thrust", () => {
    fc.assert(
      fc.property(number(80, 300), number(-0.15, 0.15), (speed, collective) => {
        const thrust = model.thrustAt({ speed, collective });
        expect(model.torqueAt({ speed, collective })).toBeCloseTo(model.torqueForThrust({ speed, thrust })!, 10);
      }),
    );
  });

  it("torque at zero pitch is that of the blades' drag alone", () => {
    // Leishman ch. 2: P0 = rho A (Omega R)³ sigma cd / 8.
    const rotor = unit(0.1, { drag: 0.01 });
    expect(rotor.torqueAt({ speed: 1, collective: 0 })).toBeCloseTo((Math.PI * 0.1 * 0.01) / 8, 14);
  });

  it("have no answer beyond stall or at rest, and none of it is a guess", () => {
    expect(model.collectiveForThrust({ speed: 60, thrust: 100 })).toBeNull();
    expect(model.torqueForThrust({ speed: 60, thrust: 100 })).toBeNull();
    expect(model.torqueForThrust({ speed: 0, thrust: 1 })).toBeNull();
    expect([model.thrustAt({ speed: 0, collective: 0.1 }), model.torqueAt({ speed: 0, collective: 0.1 })]).toEqual([
      0, 0,
    ]);
    expect(model.torqueForThrust({ speed: 0, thrust: 0 })).toBe(0);
  });
});
