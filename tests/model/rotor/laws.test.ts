import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { hover, Rotor, type RotorGeometry, type RotorState } from "#model/rotor/bemt";
import { sections } from "#model/rotor/section";
import { collectiveForThrust } from "#model/rotor/solve";

/** Laws that hold for any rotor within the hard limits of a machine file. */
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const rotors = fc
  .record({
    blades: fc.integer({ min: 1, max: 8 }),
    radius: number(0.1, 1.25),
    cutout: number(0.05, 0.4),
    chord: number(0.03, 0.25),
    taper: number(0.4, 1.2),
    twist: number(-0.2, 0.05),
    thick: fc.constantFrom("symmetric-12" as const, "symmetric-15" as const),
  })
  .map(
    ({ blades, radius, cutout, chord, taper, twist, thick }): RotorGeometry => ({
      blades,
      radius,
      rootCutout: cutout * radius,
      chordRoot: chord * radius,
      chordTip: chord * radius * taper,
      twist,
      section: sections[thick],
    }),
  );
/** From -500 to 5,000 m, -40 to 60 degrees Celsius. */
const airs = fc.record({
  density: number(0.55, 1.65),
  viscosity: number(1.5e-5, 2.05e-5),
  soundSpeed: number(305, 367),
});
/** 100 to 5,000 rpm: with the largest rotor twice the speed of sound. */
const speeds = number(10.5, 524);

const climbOver = (state: RotorState, radius: number): number => (state.climb ?? 0) / (state.speed * radius);

describe("laws of any rotor", () => {
  it("every figure is finite, at any collective, climb and descent", () => {
    fc.assert(
      fc.property(
        rotors,
        airs,
        speeds,
        number(-0.35, 0.35),
        number(-40, 40),
        (geometry, air, speed, collective, climb) => {
          const rotor = new Rotor(geometry, air).fly(speed, climb);
          rotor.pitch(collective);
          for (const value of Object.values(rotor.result()))
            if (value !== null) expect(Number.isFinite(value)).toBe(true);
          for (const annulus of rotor.annuli()) expect(Object.values(annulus).every(Number.isFinite)).toBe(true);
          expect(rotor.stalledShare).toBeGreaterThanOrEqual(0);
          expect(rotor.stalledShare).toBeLessThanOrEqual(1);
        },
      ),
      { numRuns: 400 },
    );
  });

  it("power is climb, induced and profile power, to 1e-9", () => {
    fc.assert(
      fc.property(
        rotors,
        airs,
        speeds,
        number(-0.35, 0.35),
        number(-20, 20),
        (geometry, air, speed, collective, climb) => {
          const r = hover(geometry, air, { speed, collective, climb });
          const size = Math.abs(r.climbPower) + Math.abs(r.inducedPower) + r.profilePower;
          expect(Math.abs(r.climbPower + r.inducedPower + r.profilePower - r.power)).toBeLessThanOrEqual(1e-9 * size);
          expect(r.profilePower).toBeGreaterThan(0);
          // In hover all work on the wake is work: induced power can't be a gain.
          if (climb === 0) expect(r.inducedPower).toBeGreaterThanOrEqual(0);
        },
      ),
    );
  });

  it("hover takes more than momentum theory's least power", () => {
    fc.assert(
      fc.property(rotors, airs, speeds, number(0.02, 0.2), (geometry, air, speed, collective) => {
        const r = hover({ ...geometry, twist: 0 }, air, { speed, collective });
        expect(r.figureOfMerit!).toBeLessThan(1);
        expect(r.figureOfMerit!).toBeGreaterThan(0);
      }),
    );
  });

  it("thrust rises with collective below stall, through zero, in hover and climb", () => {
    fc.assert(
      fc.property(
        rotors,
        airs,
        speeds,
        number(-0.12, 0.11),
        number(0, 0.05),
        (geometry, air, speed, collective, ratio) => {
          const rotor = new Rotor({ ...geometry, twist: 0 }, air).fly(speed, ratio * speed * geometry.radius);
          const [less, more] = [rotor.pitch(collective), rotor.pitch(collective + 0.02)];
          // About zero the flow follows the pitch, and the drag of many slow wide blades is more than the lift left.
          // Wave drag past Mach 0.9 does the same to blades that lift little.
          const { tipReynolds, tipMach, solidity, stalledShare } = rotor.result();
          // Thrust down while it rises is a rotor in its own wake: there thrust hangs on a plateau.
          if (stalledShare > 0.02 || tipReynolds < 1e4 || tipMach > 0.9 || solidity > 0.3 || (ratio > 0 && less < 0))
            return;
          expect(more).toBeGreaterThan(less);
        },
      ),
    );
  });

  it("power rises with thrust at a speed", () => {
    fc.assert(
      fc.property(rotors, airs, speeds, number(0.005, 0.06), (geometry, air, speed, loading) => {
        const rotor = new Rotor({ ...geometry, twist: 0 }, air).fly(speed, 0);
        const unit = rotor.blade.solidity * air.density * Math.PI * geometry.radius ** 4 * speed ** 2;
        const torques = [loading, loading * 1.05].map((ct) => {
          const found = collectiveForThrust(rotor, ct * unit);
          return found.ok && rotor.stalledShare < 0.02 && rotor.result().tipReynolds > 5000 ? rotor.torque : null;
        });
        if (torques[0] !== null && torques[1] !== null) expect(torques[1]!).toBeGreaterThan(torques[0]!);
      }),
    );
  });

  it("an untwisted rotor is the same upside down", () => {
    fc.assert(
      fc.property(
        rotors,
        airs,
        speeds,
        number(-0.3, 0.3),
        number(-10, 10),
        (geometry, air, speed, collective, climb) => {
          const up = hover({ ...geometry, twist: 0 }, air, { speed, collective, climb });
          const down = hover({ ...geometry, twist: 0 }, air, { speed, collective: -collective, climb: -climb });
          expect(down.thrust).toBeCloseTo(-up.thrust, 6);
          expect(down.torque).toBeCloseTo(up.torque, 6);
        },
      ),
    );
  });

  it("nothing jumps: figures change little where any input changes by a millionth", () => {
    const nudge = 1e-6;
    fc.assert(
      fc.property(
        rotors,
        airs,
        speeds,
        number(-0.2, 0.2),
        number(-0.02, 0.1),
        (geometry, air, speed, collective, ratio) => {
          const state = { speed, collective, climb: ratio * speed * geometry.radius };
          const unit = air.density * geometry.radius ** 4 * speed ** 2;
          const base = hover(geometry, air, state);
          // Deep in stall a blade has two flows to choose from, as a real one has; and sinking with lift down is descent too.
          if (base.stalledShare > 0.02 || (base.thrust < 0 && climbOver(state, geometry.radius) > 0.02)) return;
          const others = [
            hover(geometry, air, { ...state, collective: collective + nudge }),
            hover(geometry, air, { ...state, speed: speed * (1 + nudge) }),
            hover(geometry, air, { ...state, climb: state.climb + nudge * speed * geometry.radius }),
            hover(geometry, { ...air, density: air.density * (1 + nudge) }, state),
            hover(geometry, { ...air, viscosity: air.viscosity * (1 + nudge) }, state),
            hover(geometry, { ...air, soundSpeed: air.soundSpeed * (1 + nudge) }, state),
            hover({ ...geometry, chordRoot: geometry.chordRoot * (1 + nudge) }, air, state),
            hover({ ...geometry, twist: geometry.twist! + nudge }, air, state),
            hover({ ...geometry, rootCutout: geometry.rootCutout * (1 + nudge) }, air, state),
            hover({ ...geometry, radius: geometry.radius * (1 + nudge) }, air, state),
          ];
          for (const other of others) {
            expect(Math.abs(other.thrust - base.thrust) / unit).toBeLessThan(2e-5);
            expect(Math.abs(other.torque - base.torque) / (unit * geometry.radius)).toBeLessThan(2e-5);
          }
        },
      ),
      { numRuns: 300 },
    );
  });
});
