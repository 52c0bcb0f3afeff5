/** A choice that belongs to a page and not to the machine: a row of options, kept among the reader's answers. */
import { type Answers, answer } from "#view/answers";
import { el, setText } from "#view/dom";
import { type Shown, show, type View } from "#view/shown";
import "./pick.css";

interface PickState {
  readonly id: string;
  readonly label: string;
  readonly options: readonly { readonly key: string; readonly says: string }[];
  readonly chosen: string;
}

/** The key that was picked, or the first one where nothing was. */
export function picked<K extends string>(answers: Answers, id: string, keys: readonly [K, ...K[]]): K {
  return keys.find((key) => key === answers[id]) ?? keys[0];
}

/** Shows the options of `picked`, under the same id. */
export function pick(question: Omit<PickState, "chosen"> & { answers: Answers }): Shown<PickState> {
  const { answers, ...rest } = question;
  const keys = rest.options.map((option) => option.key);
  const chosen = keys.find((key) => key === answers[rest.id]) ?? keys[0] ?? "";
  return show(pickView, { ...rest, chosen });
}

const pickView: View<PickState> = {
  name: "pick",
  words: ({ label, options, chosen }) => `${label}: ${options.find(({ key }) => key === chosen)?.says ?? ""}.`,
  mount(host) {
    const doc = host.ownerDocument;
    const legend = el(doc, "legend");
    const row = el(doc, "div", { class: "pick-row" });
    const set = el(doc, "fieldset", { class: "pick" }, legend, row);
    host.append(set);
    const radios = new Map<string, HTMLInputElement>();
    let built = "";
    return ({ id, label, options, chosen }) => {
      const key = `${id} ${options.map((option) => option.key).join()}`;
      setText(legend, label);
      if (key !== built) {
        built = key;
        radios.clear();
        row.replaceChildren(
          ...options.map((option) => {
            const radio = el(doc, "input", { type: "radio", name: `pick-${id}`, value: option.key });
            radio.addEventListener("change", () => answer(id, option.key));
            radios.set(option.key, radio);
            return el(doc, "label", { class: "radio" }, radio, el(doc, "span", {}, option.says));
          }),
        );
      }
      for (const [each, radio] of radios) radio.checked = each === chosen;
    };
  },
};
