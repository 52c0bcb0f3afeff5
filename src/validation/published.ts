/**
 * Published hover tests of whole rotors, as their reports print them. Coefficients on rho pi R^2 (omega R)^2 and, for
 * torque, once more R. The model is run on these; nothing in it is fitted to them.
 */
import type { RotorGeometry } from "#model/rotor/bemt";
import { symmetricSection } from "#model/rotor/section";

/** One measured point. Collective in degrees; tip speed in m/s; torque and collective null where the report has none. */
export interface TestRow {
  readonly collectiveDeg: number | null;
  readonly tipSpeed: number;
  readonly tipMach: number | null;
  readonly thrustCoefficient: number;
  readonly torqueCoefficient: number | null;
}

/** One rotor of one report. */
export interface TestSet {
  readonly name: string;
  readonly source: string;
  /** What a reader must know about the figures. */
  readonly note: string;
  readonly geometry: RotorGeometry;
  readonly rows: readonly TestRow[];
}

const knightSource = "Knight and Hefner, NACA TN 626 (1937), tables I to IV";
const knightTipSpeed = ((960 * Math.PI) / 30) * 0.762;

/** TN 626 prints coefficients on half of rho: halved here. Collective (degrees), CT and CQ as printed. */
function knight(blades: number, printed: readonly (readonly [number, number, number])[]): TestSet {
  return {
    name: `TN 626, ${blades} blades`,
    source: knightSource,
    note: "Printed. Zero-lift torque scatters by 20 %: five blades have less than four. Root cut-out 1/6, as others model it.",
    geometry: {
      blades,
      radius: 0.762,
      rootCutout: 0.127,
      chordRoot: 0.0508,
      chordTip: 0.0508,
      section: symmetricSection(0.15),
    },
    rows: printed.map(([collectiveDeg, ct, cq]) => ({
      collectiveDeg,
      tipSpeed: knightTipSpeed,
      tipMach: null,
      thrustCoefficient: ct / 2,
      torqueCoefficient: cq / 2,
    })),
  };
}

const two = knight(2, [
  [0, 0, 0.000108],
  [1, 0.00028, 0.000111],
  [2, 0.000873, 0.000125],
  [4, 0.00248, 0.000191],
  [6, 0.00442, 0.000316],
  [8, 0.0065, 0.000494],
  [10, 0.00847, 0.000691],
  [12, 0.0099, 0.000878],
]);

const three = knight(3, [
  [0, 0, 0.000185],
  [2, 0.00102, 0.000206],
  [4, 0.00298, 0.0003],
  [6, 0.00548, 0.000474],
  [8, 0.00833, 0.000735],
  [10, 0.01125, 0.001048],
  [12, 0.0137, 0.001357],
]);

const four = knight(4, [
  [0, 0, 0.000268],
  [1, 0.000287, 0.000274],
  [2, 0.001042, 0.0003],
  [3, 0.00214, 0.000338],
  [4, 0.00338, 0.00041],
  [5, 0.00473, 0.000499],
  [6, 0.00645, 0.00062],
  [7, 0.00792, 0.000743],
  [8, 0.00981, 0.00092],
  [9, 0.01182, 0.001162],
  [10, 0.01382, 0.001395],
  [11, 0.01596, 0.00171],
  [12, 0.01745, 0.00191],
]);

const five = knight(5, [
  [0, 0, 0.000238],
  [2, 0.001181, 0.00027],
  [4, 0.00362, 0.000396],
  [6, 0.00694, 0.00068],
  [8, 0.01103, 0.001086],
  [10, 0.01548, 0.001635],
  [12, 0.02, 0.00228],
]);

/** Collective (degrees), rpm, tip Mach number (null: not printed), CT. */
const caradonnaRows: readonly (readonly [number, number, number | null, number])[] = [
  // biome-ignore lint/suspicious/noApproximativeNumericConstant: a measured tip Mach number
  [5, 1250, 0.434, 0.00213],
  [5, 1750, 0.607, 0.00218],
  [5, 2268, 0.794, 0.002],
  [8, 1250, 0.439, 0.00459],
  [8, 1750, 0.612, 0.00455],
  [8, 2250, 0.794, 0.00462],
  [8, 2500, 0.877, 0.00473],
  [12, 1250, 0.433, 0.00796],
  [12, 1750, 0.61, 0.00807],
  [12, 2279, 0.794, 0.00792],
  [8, 1250, null, 0.0046],
  [8, 2050, null, 0.00461],
  [8, 2500, null, 0.00464],
];

const caradonna: TestSet = {
  name: "TM-81232",
  source: "Caradonna and Tung, NASA TM-81232 (1981), figures 3 to 6",
  note: "Printed in the figures; one is printed as 0.0200, a slip of the point. Chord a sixth of the radius, tip Mach to 0.88.",
  geometry: {
    blades: 2,
    radius: 1.143,
    rootCutout: 0.1905,
    chordRoot: 0.1905,
    chordTip: 0.1905,
    section: symmetricSection(0.12),
  },
  rows: caradonnaRows.map(([collectiveDeg, rpm, tipMach, thrustCoefficient]) => ({
    collectiveDeg,
    tipSpeed: ((rpm * Math.PI) / 30) * 1.143,
    tipMach,
    thrustCoefficient,
    torqueCoefficient: null,
  })),
};

/** Tip speed (ft/s), CT in millionths and CQ in ten-millionths. */
type Read = readonly (readonly [number, number, number])[];

const harringtonRows = (points: Read): TestRow[] =>
  points.map(([feet, ct, cq]) => ({
    collectiveDeg: null,
    tipSpeed: feet * 0.3048,
    tipMach: null,
    thrustCoefficient: ct * 1e-6,
    torqueCoefficient: cq * 1e-7,
  }));

const harringtonNote =
  "Read off the figures, about 2 % of their axis. Built-up full-scale blades: taken as rough, their flow turbulent from the nose.";

/**
 * Geometry from memory of the report and public models of the rotor: 25 ft across; chord 0.287 m at 0.508 m from the axis to
 * 0.112 m at the tip, thickness 28 to 12 %: about 16 % where torque is made; the weighted solidity comes to the printed 0.027.
 */
const harringtonOne: TestSet = {
  name: "TN 2318, rotor 1",
  source: "Harrington, NACA TN 2318 (1951), figure 4",
  note: harringtonNote,
  geometry: {
    blades: 2,
    radius: 3.81,
    rootCutout: 0.508,
    chordRoot: 0.287,
    chordTip: 0.1118,
    section: symmetricSection(0.15, "rough"),
  },
  rows: harringtonRows([
    [500, 187, 359],
    [500, 349, 430],
    [500, 754, 567],
    [500, 1063, 673],
    [500, 1422, 800],
    [500, 1554, 901],
    [500, 1883, 1073],
    [500, 2080, 1174],
    [500, 2343, 1382],
    [500, 2647, 1594],
    [500, 2829, 1746],
    [500, 2955, 1908],
    [500, 3102, 1938],
    [500, 3472, 2353],
    [500, 425, 425],
    [500, 744, 501],
    [500, 977, 602],
    [500, 1255, 703],
    [500, 1802, 1048],
    [500, 2201, 1290],
  ]),
};

/** Chord 0.457 m, straight and untwisted, from memory: 2 c / (pi R) is the printed solidity 0.076. */
const harringtonTwo: TestSet = {
  name: "TN 2318, rotor 2",
  source: "Harrington, NACA TN 2318 (1951), figure 8",
  note: harringtonNote,
  geometry: {
    blades: 2,
    radius: 3.81,
    rootCutout: 0.762,
    chordRoot: 0.4572,
    chordTip: 0.4572,
    section: symmetricSection(0.15, "rough"),
  },
  rows: harringtonRows([
    [262, 880, 1278],
    [262, 1011, 1366],
    [262, 1219, 1427],
    [262, 1798, 1792],
    [262, 1894, 1796],
    [262, 2377, 2080],
    [262, 3002, 2525],
    [262, 3233, 2870],
    [262, 4201, 3592],
    [262, 4518, 3872],
    [262, 4977, 4363],
    [262, 5790, 5310],
    [392, 2145, 1946],
    [392, 2708, 2379],
  ]),
};

/** Every published rotor that the model is run on. */
export const testSets: readonly TestSet[] = [two, three, four, five, caradonna, harringtonOne, harringtonTwo];
