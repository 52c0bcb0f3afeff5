/**
 * Opens a page: puts the reader's machine on the bench, mounts the shell around the text, and runs the notebook's cells
 * with what the bench gives. The notebook compiler makes each page's script from `shell`.
 */
import { atRest } from "#blocks/at-rest";
import { chain } from "#blocks/chain";
import { partsPanel } from "#blocks/parts-panel";
import { aheadOf } from "#figures/ahead";
import { figuresOf } from "#figures/figures";
import { type Bench, createBench } from "#machine/bench";
import { keepBench, openStore, type Store } from "#machine/store";
import type { Given } from "#notebook/given";
import { type OpenPage, openPage } from "#notebook/page";
import type { CellRecord } from "#notebook/record";
import type { Shell } from "#notebook/shell";
import { onAnswer, recallAnswers } from "#view/answers";
import { onPin, pinNow, recallPin } from "#view/pin";
import type { Shown } from "#view/shown";
import { onUnits, recallUnits } from "#view/units";
import { linkOf } from "./actions.ts";
import { holdOpen } from "./at-hand.ts";
import { giver } from "./given.ts";
import { header } from "./header.ts";
import { listenToKeys } from "./keys.ts";
import { messages, say, settle } from "./messages.ts";
import { keepForTheField } from "./offline.ts";
import { openBench, takeLink } from "./opening.ts";
import { awaitTeacher } from "./teach.ts";
import { recallTheme } from "./theme.ts";
import "./styles.css";

/** A part of the shell as a cell: it stands on every page and follows the bench by itself. */
const part = (id: string, shown: () => Shown<null>): CellRecord => ({
  id: `shell-${id}`,
  line: 0,
  needs: [],
  gives: [],
  shows: true,
  run: () => [shown()],
});

const parts: readonly CellRecord[] = [
  part("header", header),
  part("messages", messages),
  part("chain", chain),
  part("parts", partsPanel),
];

interface Sitting {
  readonly bench: Bench;
  readonly store: Store;
  kept: boolean;
}

let sitting: Sitting | null = null;

/** The reader's bench on this page: opened once, however often an author's edit opens the page anew. */
function sit(): Sitting {
  if (sitting) return sitting;
  recallTheme(document);
  recallUnits();
  recallAnswers();
  recallPin();
  const store = openStore(
    () => localStorage,
    () => sessionStorage,
  );
  sitting = { bench: openBench(store), store, kept: true };
  keep(sitting);
  awaitTeacher(document);
  return sitting;
}

/** Keeps the bench from now on; tells once when that can't be done, and lets the machine travel in links instead. */
function keep(now: Sitting): void {
  const { bench, store } = now;
  const keeping = keepBench(bench, store, (problem) => {
    now.kept = problem === null;
    if (problem) say({ kind: "problem", subject: "store", words: problem.words });
    else settle("store");
  });
  addEventListener("pagehide", () => keeping.flush());
  document.addEventListener("visibilitychange", () => document.hidden && keeping.flush());
  document.addEventListener("click", (event) => {
    const anchor = (event.target as Element | null)?.closest?.("a");
    if (!anchor || anchor.origin !== location.origin || anchor.pathname === location.pathname) return;
    keeping.flush();
    if (!now.kept) anchor.hash = new URL(linkOf(bench, anchor.href)).hash;
  });
  const follow = () => {
    if (!takeLink(bench, location.hash, (id) => document.getElementById(id) !== null)) return;
    keeping.flush();
    // The store has it now: a reload must find what was changed since, not the link's machine once more.
    if (now.kept) history.replaceState(history.state, "", location.pathname + location.search);
  };
  addEventListener("hashchange", follow);
  follow();
}

/** Lets the cells work for the what-if and the pinned machine too, once there is one; until then it costs nothing. */
function beside(page: OpenPage<Given>, bench: Bench): () => void {
  const [giveWhatIf, givePinned] = [giver(), giver()];
  let join: typeof import("#blocks/together").together | null = null;
  let asked = false;
  const put = () => {
    const pinned = pinNow();
    const { whatIf } = bench;
    if (!join) {
      if ((!pinned && !whatIf) || asked) return;
      asked = true;
      void import("#blocks/together").then(({ together }) => {
        join = together;
        put();
      });
      return;
    }
    const draw = join;
    page.compare(
      {
        ...(whatIf ? { "what-if": giveWhatIf({ now: whatIf, whatIf: null }) } : {}),
        ...(pinned ? { pinned: givePinned({ now: pinned, whatIf: null }) } : {}),
      },
      (shown, others) => draw(shown, others, { now: bench.now, pinned: pinNow() }),
    );
  };
  put();
  return put;
}

function open(records: readonly CellRecord[]): { dispose(): void } {
  const { bench } = sit();
  holdOpen({ records, bench });
  const give = giver();
  const page = openPage({ document, records: [...parts, ...records], given: give(bench), bench });
  const compare = beside(page, bench);
  // Once the hand rests, what its next movement may ask for is solved.
  const later = atRest(document.body);
  const ahead = () => later(aheadOf(figuresOf(bench.now)));
  void page.settled().then(ahead);
  const again = () => {
    page.give(give(bench));
    compare();
    ahead();
  };
  const stops = [
    bench.subscribe(again),
    onAnswer(again),
    onUnits(again),
    onPin(compare),
    listenToKeys(document, bench),
  ];
  keepForTheField(window);
  return {
    dispose() {
      for (const stop of stops) stop();
      page.dispose();
    },
  };
}

/** What the notebook compiler needs of the shell. */
export const shell: Shell = {
  parts,
  atRest() {
    const bench = createBench();
    return { bench, given: giver()(bench) };
  },
  open,
};
