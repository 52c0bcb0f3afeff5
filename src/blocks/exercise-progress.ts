/** What the reader has done with an exercise, kept as one short text among the answers. */
import type { Exercise } from "#exercises/exercise";
import { hash } from "#exercises/hand";
import { type Answers, answer } from "#view/answers";

export interface Progress {
  /** The numbers that it belongs to. */
  readonly key: string;
  readonly tries: number;
  readonly opened: boolean;
  /** What was checked last. */
  readonly typed: string;
}

/** What is kept of an answer: longer ones are no numbers anyway. */
export const longest = 40;

const progressId = (id: string): string => `exercise ${id}`;

/** The seed that a starting link gave to the whole room, among the answers. */
const roomSeed = "exercise seed";
const mostSeed = 9999;

/** Whether a value can be a seed: a whole number from 1 to 9999, short enough to be read out. */
export const isSeed = (value: unknown): value is number =>
  typeof value === "number" && Number.isInteger(value) && value >= 1 && value <= mostSeed;

/** The seed that all exercises of this visit start from; 1 until a starting link or a teacher says another. */
export function seedNow(answers: Answers): number {
  const seed = answers[roomSeed];
  return isSeed(seed) ? seed : 1;
}

/** Lets all exercises of this visit start from a seed. */
export const startFrom = (seed: number): void => answer(roomSeed, seed);

/** Turns belong to the seed that they went on from: a new starting link begins anew. */
const turnsId = (id: string, seed: number): string => `exercise ${id} numbers${seed === 1 ? "" : ` after ${seed}`}`;

/** Tells one set of numbers from another: what was answered with other numbers is no answer to these. */
export const keyOf = (exercise: Exercise): string => hash(`${exercise.question} ${exercise.target.value}`).toString(36);

/** What was done with an exercise, whatever numbers it had then; null for nothing yet. */
export function progressOf(answers: Answers, id: string): Progress | null {
  const [, key, tries, opened, typed] = /^(\w+) (\d+) ([01]) ?(.*)$/.exec(String(answers[progressId(id)] ?? "")) ?? [];
  return key === undefined ? null : { key, tries: Number(tries), opened: opened === "1", typed: typed ?? "" };
}

export function keepProgress(id: string, { key, tries, opened, typed }: Progress): void {
  answer(progressId(id), `${key} ${Math.min(tries, 999)} ${opened ? 1 : 0} ${typed.slice(0, longest)}`);
}

/** How often the reader has asked for new numbers since the seed. */
export function turnsOf(answers: Answers, id: string, seed: number): number {
  const turns = answers[turnsId(id, seed)];
  return typeof turns === "number" && Number.isInteger(turns) && turns > 0 ? turns : 0;
}

export function turnOn(id: string, turns: number, seed: number): void {
  answer(progressId(id), null);
  answer(turnsId(id, seed), turns);
}
