/** Two machines on the bench: starts the what-if with a tap, changes either one where it stands, swaps and drops. */
import { cellsProposed, matchedMachine } from "#figures/second-machine";
import { type Aim, bind, socketFor } from "#inputs/bound";
import { makeDial } from "#inputs/dial";
import { noticeAt } from "#inputs/notice";
import type { Bench } from "#machine/bench";
import { fieldAt } from "#machine/fields";
import type { Machine } from "#machine/machine";
import { changedBetween } from "#machine/paths";
import { readMachine } from "#machine/validate";
import { inSentence } from "#machine/words";
import { el, setText } from "#view/dom";
import { type Shown, show, type View } from "#view/shown";
import { enTwoMachines } from "#view/words/en-two-machines";
import "./two-machines.css";

const en = enTwoMachines.bench;

/** What people change when they buy. */
const fields = [
  "pack.cells",
  "pack.capacityMah",
  "motor.kvRpmPerVolt",
  "motor.resistanceMilliohm",
  "gears.pinionTeeth",
  "gears.mainTeeth",
  "airframe.massG",
] as const;

interface SecondState {
  readonly both: boolean;
  /** The first proposal's cells, and whether they are more. */
  readonly cells: number;
  readonly more: boolean;
  /** Names of the fields in which the two differ. */
  readonly differ: readonly string[];
}

const nameOf = (path: string): string | null => {
  try {
    return inSentence(fieldAt(path).name);
  } catch {
    // A whole group, such as a second stage, or a list of another length.
    return null;
  }
};

/** The two machines of the bench with what people change before they buy. */
export function secondMachine(now: Machine, whatIf: Machine | null): Shown<SecondState> {
  const paths = whatIf ? changedBetween(now, whatIf).filter((path) => !path.startsWith("controller.learned")) : [];
  const names = paths.flatMap((path) => nameOf(path) ?? []);
  const cells = cellsProposed(now);
  return show<SecondState>(secondView, {
    both: whatIf !== null,
    cells,
    more: cells > now.pack.cells,
    differ: [...new Set(names)],
  });
}

const secondView: View<SecondState> = {
  name: "second-machine",
  words: ({ both }) => en.words(both),
  mount(host, bench) {
    const doc = host.ownerDocument;
    const button = (words: string, work: () => void) => {
      const made = el(doc, "button", { type: "button" }, words);
      made.addEventListener("click", work);
      return made;
    };
    const row = el(doc, "div", { class: "second-buttons" });
    const matched = button("", () => notice.say(propose(bench)));
    const notice = noticeAt(row, matched);
    const copy = button(en.copy, () => bench.startWhatIf());
    const swap = button(en.swap, () => bench.swap());
    const drop = button(en.drop, () => {
      bench.dropWhatIf();
      matched.focus();
    });
    row.append(matched, copy, swap, drop);
    const table = tableOf(host, bench);
    const status = el(doc, "p", { class: "second-words", role: "status" });
    host.append(el(doc, "div", { class: "second" }, row, table, status));
    return ({ both, cells, more, differ }) => {
      setText(matched, en.matched(cells, more));
      copy.hidden = both;
      swap.hidden = drop.hidden = !both;
      table.classList.toggle("is-alone", !both);
      setText(status, !both ? en.none : differ.length === 0 ? en.twins : en.differs(differ.join(", ")));
    };
  },
};

/** Puts the proposal on the bench as what-if, or says why it can't be. */
function propose(bench: Bench): string | null {
  const { machine, problems } = readMachine(matchedMachine(bench.now, cellsProposed(bench.now)), bench.now);
  const problem = problems.find(({ note }) => !note);
  if (problem) return problem.words;
  bench.replace(bench.now, machine);
  return null;
}

function tableOf(host: HTMLElement, bench: Bench): HTMLElement {
  const doc = host.ownerDocument;
  const dial = (path: string, aim: Aim) => {
    const socket = socketFor(host, bench, aim);
    return bind(socket, makeDial(socket, path)).element;
  };
  const body = fields.map((path) => {
    const field = fieldAt(path);
    return el(
      doc,
      "tr",
      {},
      el(doc, "th", { scope: "row" }, field.name),
      el(doc, "td", { "data-machine": "now" }, dial(path, { which: "now" })),
      el(doc, "td", { "data-machine": "what-if", class: "of-what-if" }, dial(path, { which: "what-if" })),
    );
  });
  const head = el(
    doc,
    "tr",
    {},
    el(doc, "th", { scope: "col" }, en.part),
    el(doc, "th", { scope: "col", class: "of-now" }, en.now),
    el(doc, "th", { scope: "col", class: "of-what-if" }, en.whatIf),
  );
  return el(
    doc,
    "table",
    { class: "second-table" },
    el(doc, "caption", {}, en.title),
    el(doc, "thead", {}, head),
    el(doc, "tbody", {}, ...body),
  );
}
