/** Which flight mode a page looks at: a choice that yields the mode's place in the machine's list. */
import { modeName } from "#figures/mode-name";
import type { Machine } from "#machine/machine";
import { type Answers, answer } from "#view/answers";
import { el, setText } from "#view/dom";
import { type Shown, show, type View } from "#view/shown";
import { enBlocks as en } from "#view/words/en-blocks";

const ID = "mode";

/**
 * The place of the mode looked at. Where nothing was chosen it is the last one of the list, which has the least room, or
 * the one that the page says.
 */
export function modeChosen(machine: Machine, answers: Answers, usual = Number.POSITIVE_INFINITY): number {
  const chosen = answers[ID];
  const last = machine.modes.length - 1;
  return Math.min(typeof chosen === "number" && Number.isInteger(chosen) && chosen >= 0 ? chosen : usual, last);
}

interface ModeChoiceState {
  readonly names: readonly string[];
  readonly chosen: number;
}

/** Lets the reader choose the mode that the page looks at. */
export function modeChoice(machine: Machine, answers: Answers, usual?: number): Shown<ModeChoiceState> {
  return show<ModeChoiceState>(modeChoiceView, {
    names: machine.modes.map((_, mode) => modeName(machine, mode)),
    chosen: modeChosen(machine, answers, usual),
  });
}

const modeChoiceView: View<ModeChoiceState> = {
  name: "mode-choice",
  words: ({ names, chosen }) => `${en.mode.label}: ${names[chosen] ?? ""}.`,
  mount(host) {
    const doc = host.ownerDocument;
    const select = el(doc, "select");
    host.append(el(doc, "label", { class: "mode-choice" }, `${en.mode.label} `, select));
    select.addEventListener("change", () => answer(ID, select.selectedIndex));
    const options: HTMLOptionElement[] = [];
    return ({ names, chosen }) => {
      names.forEach((name, i) => {
        let option = options[i];
        if (!option) {
          option = el(doc, "option", { value: String(i) });
          options.push(option);
          select.append(option);
        }
        setText(option, name);
      });
      while (options.length > names.length) options.pop()?.remove();
      if (select.selectedIndex !== chosen) select.selectedIndex = chosen;
    };
  },
};
