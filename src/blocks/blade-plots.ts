/** Blades as turning masses: energy and pull that go with the square of the head speed, with the maker's limit and everyday things beside them. */
import { bladeCurves } from "#figures/curves-blades";
import type { Figures } from "#figures/figures";
import { fieldAt } from "#machine/fields";
import { everydayEnergies, nearestEnergy } from "#model/energies";
import { everydayWeights, massOfWeight, weightOfMass } from "#model/weights";
import { plot } from "#plots/plot";
import type { Handle, Level, PlotState, Zone } from "#plots/state";
import { formatNumber, formatValue } from "#view/format";
import type { Shown } from "#view/shown";
import { enBlades } from "#view/words/en-blades";

/** Everyday levels stand at least this far apart, as a share of the plot's height. */
const APART = 0.1;

/** Everyday things as levels: the largest that is in view first, then down as long as there is room. */
function levels(things: readonly { readonly what: string; readonly at: number }[], top: number): Level[] {
  const chosen: Level[] = [];
  for (const { what, at } of [...things].reverse()) {
    const above = chosen.at(-1)?.at ?? Number.POSITIVE_INFINITY;
    if (at > 0.97 * top || at < 0.04 * top || above - at < APART * top) continue;
    chosen.push({ key: what, axis: "y", at, label: what, ink: "plain" });
  }
  return chosen;
}

const limitZone = (limit: number | null): Zone[] =>
  limit === null ? [] : [{ key: "limit", words: enBlades.energy.limit, x: [limit, null] }];

function speedHandle(figures: Figures, mode: number, y: number, top: number): Handle {
  const asked = figures.number("set-head-speed", mode) ?? 0;
  const field = fieldAt(`modes.${mode}.headRpm`);
  return {
    key: "speed",
    x: asked,
    y,
    moves: "x",
    path: `modes.${mode}.headRpm`,
    value: asked,
    min: field.min,
    max: Math.min(field.max, Math.max(top, asked)),
    step: 10,
    name: enBlades.energy.handle(figures.machine.modes[mode]?.name ?? ""),
    valueText: formatValue(asked, "rpm"),
    shows: formatValue(asked, "rpm"),
  };
}

/** The everyday energy nearest to what the blades hold, in words; empty where there is none. */
export function energyLike(figures: Figures, mode = 0): string {
  const energy = figures.number("rotor-energy", mode);
  const near = energy === null ? null : nearestEnergy(energy);
  return near ? enBlades.energy.like(formatNumber(near.times, near.times < 10 ? 1 : 0), near.energy.what) : "";
}

/** Energy of all blades against head speed; the mode's head speed can be dragged. */
export function energyPlot(figures: Figures, mode = 0): Shown<PlotState> {
  const en = enBlades.energy;
  const { speeds, energies, limit } = bladeCurves(figures, mode);
  const energy = figures.number("rotor-energy", mode);
  const top = energies.at(-1) ?? 0;
  const words =
    energy === null
      ? en.none
      : `${en.now(formatValue(figures.number("set-head-speed", mode), "rpm"), formatValue(energy, "J"))} ${energyLike(figures, mode)} ${en.half(formatValue(energy / 4, "J"))}`;
  return plot({
    name: "rotor-energy",
    title: en.title,
    unit: "J",
    x: { label: en.x, unit: "rpm", low: 0, high: speeds.at(-1) ?? 1 },
    y: { label: en.y, unit: "J", low: 0 },
    curves: energies[0] === null ? [] : [{ key: "energy", label: en.curve, ink: "now", xs: speeds, ys: energies }],
    levels: levels(
      everydayEnergies.map(({ what, joules }) => ({ what, at: joules })),
      top,
    ),
    zones: limitZone(limit),
    handles: energy === null ? [] : [speedHandle(figures, mode, energy, speeds.at(-1) ?? 0)],
    words,
  });
}

/** The pull of one blade as the mass whose weight it is, kg. */
export function pullMass(figures: Figures, mode = 0): number | null {
  const pull = figures.number("blade-pull", mode);
  return pull === null ? null : massOfWeight(pull);
}

const kilograms = (force: number): string =>
  formatValue(massOfWeight(force), "kg", { decimals: massOfWeight(force) < 10 ? 1 : 0 });
const OVER = 10;

/** Pull at one blade's bolt against head speed; the mode's head speed can be dragged. */
export function pullPlot(figures: Figures, mode = 0): Shown<PlotState> {
  const en = enBlades.pull;
  const { speeds, pulls, limit } = bladeCurves(figures, mode);
  const pull = figures.number("blade-pull", mode) ?? 0;
  const asked = figures.number("set-head-speed", mode) ?? 0;
  const now = en.now(formatValue(asked, "rpm"), formatValue(pull, "N"), kilograms(pull));
  // The pull goes with the square of the head speed, so one point of it gives all others.
  const atLimit = limit === null || asked === 0 ? null : pull * (limit / asked) ** 2;
  const more = formatValue(100 * ((1 + OVER / 100) ** 2 - 1), "percent", { decimals: 0 });
  const beyond =
    limit === null || atLimit === null
      ? en.noLimit
      : `${en.limit(formatValue(limit, "rpm"), formatValue(atLimit, "N"))} ${en.over(formatValue(OVER, "percent", { decimals: 0 }), more)}`;
  return plot({
    name: "blade-pull",
    title: en.title,
    unit: "N",
    x: { label: enBlades.energy.x, unit: "rpm", low: 0, high: speeds.at(-1) ?? 1 },
    y: { label: en.y, unit: "N", low: 0 },
    curves: [{ key: "pull", label: enBlades.energy.curve, ink: "now", xs: speeds, ys: pulls }],
    levels: levels(
      everydayWeights.map(({ what, mass }) => ({ what, at: weightOfMass(mass) })),
      pulls.at(-1) ?? 0,
    ),
    zones: limitZone(limit),
    handles: [speedHandle(figures, mode, pull, speeds.at(-1) ?? 0)],
    words: `${now} ${beyond}`,
    size: "short",
  });
}
