/** Which of the two machines on the bench the parts panel changes; starting, swapping and ending the what-if. */
import { bind, newId, refreshAll, type Socket } from "#inputs/bound";
import type { Which } from "#machine/bench";
import { el, setHidden, setText } from "#view/dom";
import { en } from "#view/words/en";

/** Builds the switch; it follows the bench from then on. */
export function makeWhich(socket: Socket): HTMLElement {
  const { doc, bench, aim } = socket;
  const name = newId();
  const radio = (which: Which, words: string) => {
    const input = el(doc, "input", { type: "radio", name, value: which });
    input.addEventListener("change", () => {
      aim.which = which;
      refreshAll(bench);
    });
    return {
      input,
      label: el(doc, "label", { class: "radio", "data-machine": which }, input, el(doc, "span", {}, words)),
    };
  };
  const now = radio("now", en.panel.now);
  const other = radio("what-if", en.panel.whatIf);
  const start = el(doc, "button", { type: "button", class: "quiet" }, en.panel.tryWhatIf);
  const swap = el(doc, "button", { type: "button", class: "quiet" }, en.panel.swap);
  const drop = el(doc, "button", { type: "button", class: "quiet" }, en.panel.drop);
  const words = el(doc, "p", { class: "changing", role: "status" });
  const choose = el(doc, "fieldset", {}, el(doc, "legend", { class: "heard" }, en.panel.which), now.label, other.label);
  const two = el(doc, "div", { class: "two" }, choose, swap, drop);
  const element = el(doc, "div", { class: "which" }, start, two, words);
  start.addEventListener("click", () => {
    aim.which = "what-if";
    bench.startWhatIf();
    other.input.focus();
  });
  swap.addEventListener("click", () => bench.swap());
  drop.addEventListener("click", () => {
    aim.which = "now";
    bench.dropWhatIf();
    start.focus();
  });
  bind(socket, {
    element,
    refresh() {
      const both = bench.whatIf !== null;
      setHidden(start, both);
      setHidden(two, !both);
      setHidden(words, !both);
      const which: Which = both ? aim.which : "now";
      now.input.checked = which === "now";
      other.input.checked = which === "what-if";
      setText(words, both ? en.panel.changing[which] : "");
    },
  });
  return element;
}
