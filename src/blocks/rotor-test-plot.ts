/** One published rotor, close: what was measured, and the model's curve through it. */
import { Rotor } from "#model/rotor/bemt";
import { collectiveForThrust } from "#model/rotor/solve";
import { plot } from "#plots/plot";
import type { Curve, PlotState, Point } from "#plots/state";
import { type CheckedSet, testAir } from "#validation/check";
import { everyRotor } from "#validation/summary";
import type { Answers } from "#view/answers";
import { formatNumber, formatValue } from "#view/format";
import type { Shown } from "#view/shown";
import { unitsNow } from "#view/units";
import { enTrust } from "#view/words/en-trust";
import { pick, picked } from "./pick.ts";

const en = enTrust.one;
const across = (metres: number): string => formatValue(metres, "m", { decimals: 1, uncertainty: 0.1 });
const ID = "published-rotor";
const names = (): [string, ...string[]] => everyRotor().map(({ set }) => set.name) as [string, ...string[]];

/** Lets the reader choose a published rotor. */
export const rotorTestChoice = (answers: Answers) =>
  pick({ id: ID, label: en.label, options: names().map((key) => ({ key, says: key })), answers });

const POINTS = 24;
const degree = Math.PI / 180;
/** Thrust in thousandths and torque in hundred-thousandths: whole numbers on the axes. */
const [THRUST, TORQUE] = [1e3, 1e5] as const;
/** Graphs that were read off a print: 2 % of the axis. Source: our reading of them. */
const READ = 0.02;

interface Spin {
  readonly speed: number;
  readonly soundSpeed: number;
  readonly mach: number;
}

/** The slowest and the fastest tips of a set; one where they are alike. */
function spins({ set }: CheckedSet): Spin[] {
  const all = set.rows.map(({ tipSpeed, tipMach }): Spin => {
    const mach = tipMach ?? tipSpeed / testAir.soundSpeed;
    return { speed: tipSpeed / set.geometry.radius, soundSpeed: tipSpeed / mach, mach };
  });
  const sorted = all.sort((a, b) => a.mach - b.mach);
  const [first, last] = [sorted[0] as Spin, sorted.at(-1) as Spin];
  return last.mach - first.mach > 0.1 ? [first, last] : [last];
}

/** Model curves of a set: thrust over pitch, or torque over thrust, coefficients. */
function curvesOf(checked: CheckedSet, byPitch: boolean, most: number): Curve[] {
  const { geometry } = checked.set;
  const each = spins(checked);
  return each.map(({ speed, soundSpeed, mach }, k) => {
    const rotor = new Rotor(geometry, { ...testAir, soundSpeed }).fly(speed, 0);
    const unit = testAir.density * Math.PI * geometry.radius ** 2 * (speed * geometry.radius) ** 2;
    const xs = Array.from({ length: POINTS }, (_, i) => (most * i) / (POINTS - 1));
    const ys = xs.map((x) => {
      if (byPitch) return (THRUST * rotor.pitch(x * degree)) / unit;
      const found = collectiveForThrust(rotor, (x / THRUST) * unit);
      return found.ok ? (TORQUE * rotor.torque) / (unit * geometry.radius) : null;
    });
    const label = each.length > 1 ? en.modelAt(formatNumber(mach, 2)) : en.model;
    return { key: `model-${k}`, label, ink: k === 0 ? "now" : "plain", xs, ys };
  });
}

const made = new Map<string, PlotState>();

/** The chosen published rotor: dots measured, ink the model. Made once for each and for each reader's units. */
export function rotorTestPlot(answers: Answers): Shown<PlotState> {
  const name = picked(answers, ID, names());
  const key = `${name} ${unitsNow()}`;
  let state = made.get(key);
  if (!state) {
    state = stateOf(everyRotor().find(({ set }) => set.name === name) as CheckedSet);
    made.set(key, state);
  }
  return plot(state);
}

function stateOf(checked: CheckedSet): PlotState {
  const { set, spreads } = checked;
  const byPitch = set.rows.every((row) => row.collectiveDeg !== null);
  const readOff = !byPitch;
  const largest = Math.max(...set.rows.map((row) => row.torqueCoefficient ?? 0));
  const points = set.rows.flatMap((row, i): Point[] => {
    const thrust = THRUST * row.thrustCoefficient;
    if (byPitch) return [{ key: `row-${i}`, kind: "measured", x: row.collectiveDeg ?? 0, y: thrust }];
    if (row.torqueCoefficient === null) return [];
    const [y, bar] = [TORQUE * row.torqueCoefficient, TORQUE * READ * largest];
    return [{ key: `row-${i}`, kind: "measured", x: thrust, y, low: y - bar, high: y + bar }];
  });
  const most = Math.max(...points.map((point) => point.x));
  const spread = spreads.find(({ what }) => what.startsWith(byPitch ? "thrust" : "torque")) ?? spreads[0];
  const percent = (share: number) => formatValue(100 * share, "percent", { decimals: 1 });
  return {
    name: "published-rotor",
    title: byPitch ? en.thrustTitle(set.name) : en.torqueTitle(set.name),
    unit: byPitch ? en.thrust : en.torque,
    x: byPitch ? { label: en.pitch, unit: "deg", low: 0 } : { label: en.thrust, unit: "", low: 0 },
    y: { label: byPitch ? en.thrust : en.torque, unit: "", low: 0 },
    curves: curvesOf(checked, byPitch, most),
    points,
    words: [
      spread ? en.within(enTrust.what[spread.what], percent(spread.median), percent(spread.worst)) : "",
      en.measured(set.name, enTrust.rotors[set.name]?.(across) ?? set.name),
      readOff ? en.readOff : en.noBars,
      en.coefficient,
      en.source(set.source),
    ].join(" "),
    table: {
      columns: [byPitch ? `${en.pitch}, °` : en.thrust, byPitch ? en.thrust : en.torque],
      rows: points.map(({ x, y }) => [x, y]),
    },
  };
}
