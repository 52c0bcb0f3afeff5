/** The rotors of a machine as loads on its shaft. The one place that says which rotor model stands behind the figures. */
import type { Machine } from "#machine/machine";
import type { Parts } from "#machine/parts";
import type { Air } from "#model/air";
import { Rotor, type RotorGeometry } from "#model/rotor/bemt";
import { rotorLoad } from "#model/rotor/load";
import { sections } from "#model/rotor/section";
import { type LoadTorque, pitchLoad, type RotorLoad, type Tail, thrustLoad } from "#model/rotor-load";
import { keeper } from "./kept.ts";
import { tabulated } from "./loads.ts";

/** Where a tail blade begins, as a share of its radius: common practice, no source; a tenth more or less moves its power by 1 %. */
const TAIL_ROOT = 0.2;

/** The blades' pitch is measured at the root on the bench; untwisted blades have the same pitch everywhere. */
const UNTWISTED = 0;

// Bands move fifty inputs up and down; a third of these moves make another rotor.
const MANY = 48;
const rotors = keeper<RotorLoad>(MANY);
const loads = keeper<LoadTorque>(4 * MANY);

/** Main and tail rotor as they are built; the tail has the 12 % section: its own is seldom known. */
function geometriesOf({ mainRotor, tailRotor }: Parts): { main: RotorGeometry; tail: RotorGeometry } {
  const straight = (chord: number) => ({ chordRoot: chord, chordTip: chord, twist: UNTWISTED });
  return {
    main: { ...mainRotor, ...straight(mainRotor.chord), section: sections[mainRotor.bladeSection] },
    tail: {
      ...tailRotor,
      ...straight(tailRotor.chord),
      rootCutout: TAIL_ROOT * tailRotor.radius,
      section: sections["symmetric-12"],
    },
  };
}

/** What makes a main rotor another one to the air: its blades' weight and their maker's limit don't. */
const mainKeys = ({ mainRotor, place }: Machine): unknown[] => {
  const { blades, diameterMm, chordMm, rootCutoutMm, bladeSection } = mainRotor;
  return ["main", blades, diameterMm, chordMm, rootCutoutMm, bladeSection, place];
};

/** The same of a tail rotor: how far away it sits makes no difference to it. */
const tailKeys = ({ tailRotor: { blades, diameterMm, chordMm }, place }: Machine): unknown[] => [
  "tail",
  blades,
  diameterMm,
  chordMm,
  place,
];

/**
 * Main and tail rotor of a machine in the air of its place, by blade elements. The same rotor in the same place is made
 * once. Units: SI. Errors: none. Source: that of the rotor model.
 */
export function rotorsOf(machine: Machine, parts: Parts, air: Air): { main: RotorLoad; tail: Tail } {
  const { tailRotor, gears } = parts;
  const main = rotors(mainKeys(machine), () => rotorLoad(geometriesOf(parts).main, air));
  const tail = rotors(tailKeys(machine), () => rotorLoad(geometriesOf(parts).tail, air));
  return { main, tail: { rotor: tail, arm: tailRotor.arm, ratio: gears.tailRatio } };
}

const blades = keeper<Rotor>(8);

/**
 * The same two rotors annulus by annulus: for what a load on the shaft doesn't tell, such as where their power goes. Each
 * keeps its last state, so whoever asks sets speed and pitch first. Units: SI. Errors: none. Source: the rotor model.
 */
export function bladesOf(machine: Machine, parts: Parts, air: Air): { main: Rotor; tail: Rotor } {
  return {
    main: blades(mainKeys(machine), () => new Rotor(geometriesOf(parts).main, air)),
    tail: blades(tailKeys(machine), () => new Rotor(geometriesOf(parts).tail, air)),
  };
}

/** Pitch at which a tail blade that can't give more thrust is taken to stand, rad: 14 degrees, just past its stall. From memory. */
export const STALLED_PITCH = (14 * Math.PI) / 180;

/**
 * A tail that gives what it can: asked for more thrust than it has, it stands stalled, and the machine turns away. Its torque
 * still counts, so the head speed has an answer; the warning is another matter.
 */
const straining = ({ rotor, ...tail }: Tail): Tail => ({
  ...tail,
  rotor: {
    ...rotor,
    torqueForThrust: (task) =>
      rotor.torqueForThrust(task) ?? rotor.torqueAt({ speed: task.speed, collective: STALLED_PITCH }),
  },
});

/** Shaft torque (N m) against speed (rad/s) with the thrust held at so many N, as a table. Source: `thrustLoad`. */
export const heldThrust = (main: RotorLoad, tail: Tail, thrust: number): LoadTorque =>
  loads([main, tail.rotor, tail.arm, tail.ratio, "thrust", thrust], () => tabulated(thrustAlone(main, tail, thrust)));

/** The same without a table: for a few speeds. */
export const thrustAlone = (main: RotorLoad, tail: Tail, thrust: number): LoadTorque =>
  thrustLoad(main, straining(tail), thrust);

/** Shaft torque (N m) against speed (rad/s) with the collective held at so many rad, as a table. Source: `pitchLoad`. */
export const heldPitch = (main: RotorLoad, tail: Tail, collective: number): LoadTorque =>
  loads([main, tail.rotor, tail.arm, tail.ratio, "pitch", collective], () =>
    tabulated(pitchAlone(main, tail, collective)),
  );

/** The same without a table: for a few speeds. */
export const pitchAlone = (main: RotorLoad, tail: Tail, collective: number): LoadTorque =>
  pitchLoad(main, straining(tail), collective);
