/**
 * What is on the bench when a page opens: the machine of the link, if the page was opened with one, else the stored one,
 * else the demo machine. A link never destroys the reader's own machine.
 */
import { isSeed, startFrom } from "#blocks/exercise-progress";
import { type Bench, type BenchState, createBench } from "#machine/bench";
import { readLink } from "#machine/link";
import { same } from "#machine/paths";
import type { Store } from "#machine/store";
import type { Problem } from "#machine/validate";
import { en } from "#view/words/en";
import { type Message, say } from "./messages.ts";

const LINK = "link";

const pointsOf = (problems: readonly Problem[]): string[] => problems.map(({ words }) => words);

const sameState = (a: BenchState, b: BenchState): boolean => same(a.now, b.now) && same(a.whatIf, b.whatIf);

/** Opens the bench with what the store has kept; tells what could not be read of it. */
export function openBench(store: Store): Bench {
  const { state, problems } = store.load();
  if (problems.length > 0) {
    const [first, ...rest] = pointsOf(problems);
    say({ kind: "problem", subject: "store", words: first ?? "", points: rest });
  }
  return state ? createBench(state.now, state.whatIf, store.loadHistory(state)) : createBench();
}

/** Puts what a link carries on the bench. Returns whether the address carried a link (or something like one). */
export function takeLink(bench: Bench, hash: string, isPlace: (id: string) => boolean): boolean {
  const reading = readLink(hash);
  if (!reading) {
    const fragment = hash.replace(/^#/, "");
    if (fragment === "" || isPlace(fragment)) return false;
    say({ kind: "problem", subject: LINK, words: en.messages.linkLost });
    return true;
  }
  const points = pointsOf(reading.problems);
  if (!reading.now) {
    say({ kind: "problem", subject: LINK, words: en.messages.linkLost, points });
    return true;
  }
  // The seed of a starting link: everybody in the room gets the same numbers.
  const { seed } = reading.extras;
  if (isSeed(seed)) startFrom(seed);
  const own: BenchState = { now: bench.now, whatIf: bench.whatIf };
  const linked: BenchState = { now: reading.now, whatIf: reading.whatIf };
  const other = !sameState(own, linked);
  bench.replace(linked.now, linked.whatIf);
  const back: Message["action"] = {
    words: en.messages.backToOwn,
    run() {
      bench.replace(own.now, own.whatIf);
      say({ kind: "result", subject: LINK, words: en.messages.back(own.now.name) });
    },
  };
  if (points.length > 0) {
    say({
      kind: "problem",
      subject: LINK,
      words: en.messages.linkProblems,
      points,
      ...(other ? { action: back } : {}),
    });
  } else if (other) {
    say({ kind: "result", subject: LINK, words: en.messages.fromLink(linked.now.name), action: back });
  }
  return true;
}
