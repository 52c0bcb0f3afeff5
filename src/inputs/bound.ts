/**
 * Inputs follow the bench: one subscription for all inputs of a page, each of which writes only what has changed.
 */
import type { Bench, Problem, Which } from "#machine/bench";
import type { Machine } from "#machine/machine";
import { onUnits } from "#view/units";

/** Which of the two machines a group of inputs changes. Whoever owns the group may switch it, then `refreshAll`. */
export interface Aim {
  which: Which;
}

/** An input on a page: its element, and how it takes up the machine's values. */
export interface Control {
  readonly element: HTMLElement;
  /** Brings it to a machine's values. `anew` when units or machine changed and everything must be written again. */
  refresh(machine: Machine, anew: boolean): void;
}

/** What an input is given to work with. */
export interface Socket {
  readonly bench: Bench;
  readonly doc: Document;
  readonly aim: Aim;
}

const aims = new WeakMap<Bench, Aim>();

/** The aim of a page's parts panel: which machine the reader is changing there. */
export function benchAim(bench: Bench): Aim {
  const known = aims.get(bench);
  if (known) return known;
  const aim: Aim = { which: "now" };
  aims.set(bench, aim);
  return aim;
}

/** A socket for inputs that change the machine as it is now. */
export const socketFor = (host: HTMLElement, bench: Bench, aim: Aim = { which: "now" }): Socket => ({
  bench,
  doc: host.ownerDocument,
  aim,
});

/** The machine that a socket's inputs show and change. */
export const aimed = ({ bench, aim }: Socket): Machine => (aim.which === "what-if" ? bench.whatIf : null) ?? bench.now;

/** Proposes a change to the machine that the socket aims at. */
export function propose({ bench, aim }: Socket, path: string, value: unknown, gesture?: string): Problem | null {
  const machine = aim.which === "what-if" && bench.whatIf ? "what-if" : "now";
  return bench.set(path, value, gesture === undefined ? { machine } : { machine, gesture });
}

interface Bound {
  readonly control: Control;
  readonly socket: Socket;
  /** Has been on a page: once it leaves again, it is forgotten. */
  seen: boolean;
}

const boundTo = new WeakMap<Bench, Set<Bound>>();

function follow(bench: Bench): Set<Bound> {
  const known = boundTo.get(bench);
  if (known) return known;
  const all = new Set<Bound>();
  boundTo.set(bench, all);
  bench.subscribe(() => refreshBound(all, false));
  onUnits(() => refreshBound(all, true));
  return all;
}

function refreshBound(all: Set<Bound>, anew: boolean): void {
  for (const bound of all) {
    const here = bound.control.element.isConnected;
    if (here) bound.seen = true;
    else if (bound.seen) {
      all.delete(bound);
      continue;
    }
    bound.control.refresh(aimed(bound.socket), anew);
  }
}

/** Lets an input follow the bench from now on, and brings it up to date. */
export function bind<C extends Control>(socket: Socket, control: C): C {
  follow(socket.bench).add({ control, socket, seen: false });
  control.refresh(aimed(socket), true);
  return control;
}

/** Brings all inputs of a bench up to date, after an aim was switched. */
export function refreshAll(bench: Bench): void {
  refreshBound(follow(bench), true);
}

let gestures = 0;
/** A name for one drag or one held key: all its steps are undone together. */
export const newGesture = (): string => `input-${++gestures}`;

let ids = 0;
/** An id for an element that another one must name. */
export const newId = (): string => `in-${++ids}`;
