/** The pin in the strip of the parts: keeps the machine as it is now, so that the next change is seen against it. */
import { bind, type Socket } from "#inputs/bound";
import { same } from "#machine/paths";
import { el, setText } from "#view/dom";
import { onPin, pin, pinNow } from "#view/pin";
import { enPins as en } from "#view/words/en-pins";

/** The words of a difference are fetched with the first pin. */
let pinnedAs: typeof import("./pin-words.ts").pinnedAs | null = null;

/** Builds the strip; it follows the bench and the pin from then on. `data-pin` says whether the machine now differs. */
export function makePin(socket: Socket): HTMLElement {
  const { doc, bench } = socket;
  const button = (act: string, words: string, run: () => void) => {
    const made = el(doc, "button", { type: "button", class: "quiet", "data-pin-act": act }, words);
    made.addEventListener("click", run);
    return made;
  };
  const set = button("set", en.pin, () => pin(bench.now));
  const back = button("back", en.back, () => {
    const machine = pinNow();
    if (machine) bench.replace(machine, bench.whatIf);
  });
  const drop = button("drop", en.drop, () => {
    pin(null);
    set.focus();
  });
  const words = el(doc, "p", { class: "pin-words", role: "status" });
  const element = el(doc, "div", { class: "pin", role: "group", "aria-label": en.title }, words, set, back, drop);
  const refresh = () => {
    const then = pinNow();
    if (then === null && element.dataset.pin === "none") return;
    if (then && !pinnedAs) {
      void import("./pin-words.ts").then((words) => {
        pinnedAs = words.pinnedAs;
        refresh();
      });
    }
    const as = then && pinnedAs ? pinnedAs(bench.now, then) : "";
    element.dataset.pin =
      then === null ? "none" : same({ ...then, name: "" }, { ...bench.now, name: "" }) ? "same" : "differs";
    set.hidden = element.dataset.pin === "same";
    setText(set, then ? en.anew : en.pin);
    back.hidden = element.dataset.pin !== "differs";
    drop.hidden = words.hidden = then === null;
    setText(words, element.dataset.pin === "same" ? en.same : as === "" ? "" : en.differs(as));
  };
  bind(socket, { element, refresh });
  const stop = onPin(() => {
    if (element.isConnected) refresh();
    else stop();
  });
  return element;
}
