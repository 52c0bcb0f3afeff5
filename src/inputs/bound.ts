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
  /** The part of the machine that alone decides what it shows; it is left alone while that part stays the same. */
  readonly part?: keyof Machine;
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
  /** The part of the machine that it showed last; parts are never changed in place. */
  last: unknown;
  /** Has been on a page: once it leaves again, it is forgotten. */
  seen: boolean;
}

interface Followers {
  all: Bound[];
  /** Whose turn it is to be looked after: asking all of them in every frame would cost more than it saves. */
  turn: number;
}

const boundTo = new WeakMap<Bench, Followers>();

function follow(bench: Bench): Followers {
  const known = boundTo.get(bench);
  if (known) return known;
  const followers: Followers = { all: [], turn: 0 };
  boundTo.set(bench, followers);
  bench.subscribe(() => refreshBound(followers, false));
  onUnits(() => refreshBound(followers, true));
  return followers;
}

function refreshBound(followers: Followers, anew: boolean): void {
  forgetOne(followers);
  for (const bound of [...followers.all]) {
    const { control, socket } = bound;
    const machine = aimed(socket);
    const part = control.part === undefined ? undefined : machine[control.part];
    if (part !== undefined && part === bound.last && !anew) continue;
    bound.last = part;
    control.refresh(machine, anew);
  }
}

/** Forgets the next input in turn if it has left the page. */
function forgetOne(followers: Followers): void {
  followers.turn = (followers.turn + 1) % Math.max(1, followers.all.length);
  const bound = followers.all[followers.turn];
  if (!bound) return;
  if (bound.control.element.isConnected) bound.seen = true;
  else if (bound.seen) followers.all.splice(followers.turn, 1);
}

/** Lets an input follow the bench from now on, and brings it up to date. */
export function bind<C extends Control>(socket: Socket, control: C): C {
  const machine = aimed(socket);
  const last = control.part && machine[control.part];
  follow(socket.bench).all.push({ control, socket, last, seen: false });
  control.refresh(machine, true);
  return control;
}

/** Brings all inputs of a bench up to date, after an aim was switched. */
export function refreshAll(bench: Bench): void {
  refreshBound(follow(bench), true);
}

/** The part of the machine that a field's path leads into. */
export const partOf = (path: string): keyof Machine => path.split(".")[0] as keyof Machine;

let gestures = 0;
/** A name for one drag or one held key: all its steps are undone together. */
export const newGesture = (): string => `input-${++gestures}`;

let ids = 0;
/** An id for an element that another one must name. */
export const newId = (): string => `in-${++ids}`;
