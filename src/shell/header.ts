/** The head of every page: which machine is on the bench, and what can be done with it as a whole. */
import { benchAim, bind, refreshAll, type Socket, socketFor } from "#inputs/bound";
import type { Bench } from "#machine/bench";
import type { Machine } from "#machine/machine";
import { el, setAttribute, setText } from "#view/dom";
import { machineTitle } from "#view/machine-name";
import { rested } from "#view/rested";
import { type Shown, show, type View } from "#view/shown";
import { en } from "#view/words/en";
import { redo, share, undo } from "./actions.ts";
import { gistOf } from "./gist.ts";
import { makeMenu } from "./menu.ts";

function makeHeader(socket: Socket): HTMLElement {
  const { doc, bench } = socket;
  const name = el(doc, "b", { class: "machine-name" });
  const gist = el(doc, "span", { class: "machine-gist" });
  const button = (words: string, act: () => void, kind = "") => {
    const made = el(doc, "button", { type: "button", class: `head-button ${kind}`.trim() }, words);
    made.addEventListener("click", () => {
      if (made.getAttribute("aria-disabled") !== "true") act();
    });
    return made;
  };
  const whatIf = button(en.header.whatIf, () => switchWhatIf(bench), "what-if");
  const back = button(en.header.undo, () => undo(bench));
  const forth = button(en.header.redo, () => redo(bench));
  const send = button(en.header.share, () => void share(bench, doc), "share");
  const does = el(doc, "div", { class: "head-does" }, whatIf, back, forth, send);
  const which = el(doc, "div", { class: "head-machine" }, name, " ", gist);
  const element = el(doc, "div", { class: "head" }, which, does, makeMenu(socket));
  let shown: Machine | null = null;
  const sum = rested(() => {
    if (!shown) return;
    setText(name, machineTitle(shown));
    setText(gist, gistOf(shown));
  });
  bind(socket, {
    element,
    refresh(machine) {
      shown = machine;
      sum();
      setAttribute(whatIf, "aria-pressed", String(bench.whatIf !== null));
      // Not `disabled`: a button that is pressed until nothing is left must keep the keyboard's place.
      setAttribute(back, "aria-disabled", String(!bench.canUndo));
      setAttribute(forth, "aria-disabled", String(!bench.canRedo));
    },
  });
  return element;
}

/** Puts a what-if machine on the bench and lets the panel change it; or ends it. */
function switchWhatIf(bench: Bench): void {
  const aim = benchAim(bench);
  if (bench.whatIf) {
    aim.which = "now";
    bench.dropWhatIf();
  } else {
    bench.startWhatIf();
    aim.which = "what-if";
    refreshAll(bench);
  }
}

const headerView: View<null> = {
  name: "header",
  words: () => "",
  mount(host, bench) {
    host.replaceChildren(makeHeader(socketFor(host, bench)));
    return () => {};
  },
};

/** The head as something that a cell shows. */
export const header = (): Shown<null> => show(headerView, null);
