/**
 * Which blocks can show several machines at once, and how: the machine's own state with that of the what-if and of the
 * pinned machine put into it. It is fetched when there is a second machine to show.
 */
import type { Machine } from "#machine/machine";
import type { PlotState } from "#plots/state";
import { type OtherPlots, plotTogether } from "#plots/together";
import type { Shown } from "#view/shown";
import { factsPinned } from "./facts-pinned.ts";
import type { FactsState } from "./facts-table.ts";
import { flightPinned, packsPinned } from "./flight-pinned.ts";
import type { FlightState } from "./flight-state.ts";
import { pinnedAs } from "./pin-words.ts";
import type { WholePackState } from "./whole-pack-state.ts";

/** The machines beside the one on the page. */
export interface Others {
  readonly now: Machine;
  readonly pinned: Machine | null;
}

type Joining = (
  state: unknown,
  others: { readonly whatIf: unknown; readonly pinned: unknown; readonly as: string },
) => unknown;

/** By the names of their views. */
const joins: Readonly<Record<string, Joining>> = {
  plot: (state, { whatIf, pinned, as }) =>
    plotTogether(state as PlotState, { whatIf, pinned, pinnedAs: as } as OtherPlots),
  flight: (state, { pinned, as }) => flightPinned(state as FlightState, pinned as FlightState | undefined, as),
  "whole-pack-modes": (state, { pinned, as }) =>
    packsPinned(state as WholePackState, pinned as WholePackState | undefined, as),
  "learning-stored": (state, { pinned }) => (pinned === undefined ? state : { ...(state as object), pinned }),
  "facts-table": (state, { pinned }) => factsPinned(state as FactsState, pinned as FactsState | undefined),
  quantity: (state, { pinned }) => withPinned(state as object, pinned),
  "modes-table": (state, { pinned }) => withPinned(state as object, pinned),
};

/** Figures can be compared one by one: the block gets those of the pinned machine. */
function withPinned(state: object, pinned: unknown): object {
  return pinned === undefined ? state : { ...state, pinned: (pinned as { figures: unknown }).figures };
}

let last: { now: Machine; pinned: Machine; as: string } | null = null;

/** What the pinned machine has other; worked out once for each change. */
function asOf({ now, pinned }: Others): string {
  if (!pinned) return "";
  if (last?.now !== now || last.pinned !== pinned) last = { now, pinned, as: pinnedAs(now, pinned) };
  return last.as;
}

/** The state of what a cell shows, with what it shows for the others drawn into it where its view knows how. */
export function together(shown: Shown, beside: Readonly<Record<string, Shown | undefined>>, others: Others): unknown {
  const join = joins[shown.view.name];
  const state = (name: string) => (beside[name]?.view === shown.view ? beside[name].state : undefined);
  const [whatIf, pinned] = [state("what-if"), state("pinned")];
  if (!join || (whatIf === undefined && pinned === undefined)) return shown.state;
  return join(shown.state, { whatIf, pinned, as: asOf(others) });
}
