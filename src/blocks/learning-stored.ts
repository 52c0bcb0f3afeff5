/** What a rehearsed run leaves behind: every mode asked for and really turned, and a way to take the reference over. */
import { figuresOf } from "#figures/figures";
import { modeName } from "#figures/mode-name";
import { modesWith, type StoredMode, storedBy } from "#flights/rehearsal";
import { type LearningSetup, properLearning } from "#flights/scenarios";
import { fittedNow, type Machine } from "#machine/machine";
import type { Answers } from "#view/answers";
import { el, setText } from "#view/dom";
import { formatNumber, formatValue } from "#view/format";
import { type Shown, show, type View } from "#view/shown";
import { enLearning } from "#view/words/en-learning";
import { factsPinned } from "./facts-pinned.ts";
import { type FactsState, factsTable } from "./facts-table.ts";
import { hasGuessed, liftWords, storedSentence } from "./learning-run.ts";
import { learningSetup } from "./learning-setup.ts";
import { whenSeen } from "./when-seen.ts";

const en = enLearning.stored;

interface StoredState {
  readonly machine: Machine;
  readonly setup: LearningSetup;
  /** The reader has guessed: the table may be filled. */
  readonly open: boolean;
  /** The same of the pinned machine, where there is one. */
  readonly pinned?: StoredState;
}

/** Two motor speeds this near are one and the same reference, as a share: rounding, and the rotor's tables. Our choice. */
const sameSpeed = 5e-4;

/** The unit stands in the caption. */
const plain = (value: number): string => formatNumber(value);
const room = (value: number | null): string => (value === null ? en.none : formatNumber(value, 0, true));

/** The modes that lose their full pitch, and those that pass the blades' limit, in words. */
function lossWords(machine: Machine, modes: readonly StoredMode[]): string[] {
  const named = (which: (mode: StoredMode) => boolean) =>
    modes.flatMap((mode, i) => (which(mode) ? [modeName(machine, i)] : [])).join(", ");
  const lost = named(({ room: now, wantedRoom: before }) => now !== null && now < 0 && before !== null && before >= 0);
  const blades = named(({ bladeLimit }) => bladeLimit !== null);
  const limit = modes.find(({ bladeLimit }) => bladeLimit !== null)?.bladeLimit ?? null;
  return [
    ...(lost === "" ? [] : [en.lost(lost)]),
    ...(blades === "" ? [] : [en.blades(blades, formatValue(limit, "rpm"))]),
  ];
}

/** What every mode really does after this run, against what it was asked for; open once the reader has guessed. */
export const learningStored = (machine: Machine, answers: Answers): Shown<StoredState> =>
  show<StoredState>(storedView, {
    machine,
    setup: learningSetup(machine, answers),
    open: hasGuessed(machine, answers),
  });

/** The table, the motor speed that can be taken over (rpm; null where nothing was stored), and what the rotor lifts. */
function outcomeOf({ machine, setup, open, pinned }: StoredState): {
  facts: FactsState;
  motorRpm: number | null;
  lift: string;
} {
  const stored = open ? storedBy(machine, setup) : null;
  const known = stored !== null && "off" in stored ? stored : null;
  const modes = modesWith(machine, known?.off ?? 0, figuresOf(machine));
  const wrong = known !== null && known.kind !== "same";
  const cells = (mode: StoredMode): string[] => [
    plain(mode.wanted),
    ...(known
      ? [plain(mode.real), room(mode.real - mode.wanted), room(mode.room)]
      : [open ? en.asBefore : en.waiting, open ? en.nothing : en.waiting, room(mode.wantedRoom)]),
  ];
  const words = stored
    ? [storedSentence(stored), ...lossWords(machine, modes), ...(wrong ? [en.silent] : [])]
    : [en.waits];
  const facts: FactsState = {
    name: "learning-stored",
    caption: en.caption,
    columns: en.columns,
    rows: modes.map((mode, i) => ({ title: modeName(machine, i), cells: cells(mode), marked: wrong })),
    words: words.filter(Boolean).join(" "),
  };
  return {
    // Before the guess the pinned machine's would give it away.
    facts: open && pinned ? factsPinned(facts, outcomeOf({ ...pinned, open }).facts) : facts,
    motorRpm: known && Math.round(known.motorRpm),
    lift: open ? liftWords(machine, setup) : "",
  };
}

/** The table is drawn by the view of all such tables; the button below it changes the machine. */
const storedView: View<StoredState> = {
  name: "learning-stored",
  words(state) {
    const { facts, lift } = outcomeOf(state);
    return `${factsTable(facts).view.words(facts)} ${lift}`.trim();
  },
  mount(host, bench) {
    const doc = host.ownerDocument;
    const table = el(doc, "div");
    const take = el(doc, "button", { type: "button" }, en.take);
    const said = el(doc, "p", { class: "facts-words", role: "status" });
    const box = el(doc, "div", { class: "learning-take screen-only" }, take, said);
    const warned = el(doc, "p", { class: "learning-lift", role: "status" });
    host.append(el(doc, "div", { class: "learning-stored" }, table, warned, box));
    let state: StoredState | null = null;
    let motorRpm: number | null = null;
    const first = factsTable(outcomeOf({ machine: bench.now, setup: properLearning, open: false }).facts);
    const put = first.view.mount(table, bench);
    put(first.state);
    take.addEventListener("click", () => {
      if (motorRpm === null) return;
      const learned = motorRpm;
      const problems = bench.change((machine) => ({
        ...machine,
        controller: {
          ...machine.controller,
          learned: { ...machine.controller.learned, motorRpm: learned, fittedWith: fittedNow(machine) },
        },
      }));
      if (problems.length > 0) setText(said, problems.map(({ words }) => words).join(" "));
    });
    // A run costs some milliseconds: it is flown when the reader comes near.
    const seen = whenSeen(host, () => {
      if (!state) return;
      const outcome = outcomeOf(state);
      put(outcome.facts);
      setText(warned, outcome.lift);
      warned.hidden = outcome.lift === "";
      motorRpm = outcome.motorRpm;
      const held = state.machine.controller.learned.motorRpm;
      const taken = motorRpm !== null && held !== null && Math.abs(held / motorRpm - 1) < sameSpeed;
      box.hidden = motorRpm === null;
      take.disabled = taken;
      setText(said, taken ? en.taken : en.about);
    });
    return (next) => {
      state = next;
      seen.wake();
    };
  },
};
