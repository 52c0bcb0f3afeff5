/** Takes a demo machine to begin with: whose own machine is far from the one on the bench needn't change every part. */
import type { Socket } from "#inputs/bound";
import { newId } from "#inputs/bound";
import { demos } from "#machine/demos";
import { el } from "#view/dom";
import { en } from "#view/words/en";

/** A row with a choice of machines; choosing one puts it on the bench, and undo takes it off again. */
export function makeStartFrom({ doc, bench }: Socket): HTMLElement {
  const id = newId();
  const choice = el(
    doc,
    "select",
    { id },
    el(doc, "option", { value: "" }, en.panel.nearest),
    ...demos.map(({ name }, i) => el(doc, "option", { value: i }, name)),
  );
  choice.addEventListener("change", () => {
    const demo = demos[Number(choice.value || Number.NaN)];
    choice.value = "";
    if (demo) bench.replace(demo, null);
  });
  return el(doc, "p", { class: "start-from" }, el(doc, "label", { for: id }, en.panel.startFrom), " ", choice);
}
