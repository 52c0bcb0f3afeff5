/** What one field changes and what it leaves alone: a small table of figures, now and with other values. */
import type { QuantityName } from "#figures/catalogue";
import { catalogue } from "#figures/catalogue";
import { figuresOf } from "#figures/figures";
import { fieldAt } from "#machine/fields";
import type { Machine } from "#machine/machine";
import { valueAt, withValue } from "#machine/paths";
import { el, setText } from "#view/dom";
import { type Shown, show, type View } from "#view/shown";
import { enBlocks as en } from "#view/words/en-blocks";
import { quantityText } from "./quantity.ts";

interface WhatChangesState {
  readonly caption: string;
  readonly columns: readonly string[];
  readonly rows: readonly { readonly title: string; readonly cells: readonly string[]; readonly same: boolean }[];
}

/** A table of some figures of a mode with a field as it is, and at other values. */
export function whatChanges(
  machine: Machine,
  path: string,
  others: readonly number[],
  names: readonly QuantityName[],
  mode = 0,
): Shown<WhatChangesState> {
  const now = valueAt(machine, path);
  const all = [now, ...others.filter((other) => other !== now)];
  const columns = all.map((value, i) => (i === 0 ? en.changes.now(String(value)) : en.changes.other(String(value))));
  const machines = all.map((value) => (value === now ? machine : withValue(machine, path, value)));
  const rows = names.map((name) => {
    const cells = machines.map((each) => quantityText({ figures: figuresOf(each), name, mode }));
    return { title: catalogue[name].title, cells, same: cells.every((cell) => cell === cells[0]) };
  });
  const caption = en.changes.caption(fieldAt(path).name.toLowerCase());
  return show<WhatChangesState>(whatChangesView, { caption, columns, rows });
}

const whatChangesView: View<WhatChangesState> = {
  name: "what-changes",
  words: ({ caption, columns, rows }) =>
    `${caption}. ${rows.map((row) => `${row.title}: ${row.same ? `${row.cells[0]}, ${en.changes.same}` : row.cells.map((cell, i) => `${columns[i]} ${cell}`).join(", ")}.`).join(" ")}`,
  mount(host) {
    const doc = host.ownerDocument;
    const caption = el(doc, "caption");
    const head = el(doc, "tr");
    const body = el(doc, "tbody");
    host.append(el(doc, "table", { class: "what-changes" }, caption, el(doc, "thead", {}, head), body));
    let shown = "";
    return (state) => {
      const key = JSON.stringify(state);
      if (key === shown) return;
      shown = key;
      setText(caption, state.caption);
      const titles = [en.changes.figure, ...state.columns];
      head.replaceChildren(...titles.map((title) => el(doc, "th", { scope: "col" }, title)));
      body.replaceChildren(
        ...state.rows.map((row) =>
          el(
            doc,
            "tr",
            { class: row.same ? "is-same" : undefined },
            el(doc, "th", { scope: "row" }, row.title),
            ...row.cells.map((cell, i) => el(doc, "td", {}, i > 0 && row.same ? en.changes.same : cell)),
          ),
        ),
      );
    };
  },
};
