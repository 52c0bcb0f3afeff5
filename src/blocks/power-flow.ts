/**
 * Where the power of a steady load goes, as a stream: out of the cells at the top, as broad as it is strong, and at each
 * part what that part takes leaves to the side, to the same scale. Nothing is left at the bottom.
 */
import type { SteadyLoad } from "#figures/asked";
import type { Figures } from "#figures/figures";
import { type Operating, operatingOf } from "#figures/operating";
import type { Answers } from "#view/answers";
import { el, Pen, setAttribute, setText, svgEl } from "#view/dom";
import { type Shown, show, type View } from "#view/shown";
import { firstAndRest } from "#view/text";
import { enFlow as en } from "#view/words/en-flow";
import {
  type FlowState,
  flowOther,
  flowTable,
  flowWords,
  type GroupName,
  groupNames,
  groupSum,
  groups,
  shareText,
  wattsOf,
  wattsText,
} from "./flow-rows.ts";
import { pick, picked } from "./pick.ts";
import "./power-flow.css";

const ID = "power-flow-load";
/** In the order of the options: the hover first, where everybody begins. */
const order = ["hover", "full-pitch", "climb", "forward", "flat"] as const satisfies readonly SteadyLoad[];

/** The load that the page looks at; the hover until another is chosen. */
export const flowChosen = (answers: Answers): SteadyLoad => picked(answers, ID, order);

/** Lets the reader choose the load. */
export const flowChoice = (answers: Answers) =>
  pick({ id: ID, label: en.load, options: order.map((key) => ({ key, says: en.loads[key] })), answers });

/** The stream of the power in a load of a mode. */
export const powerFlow = (figures: Figures, whatIf: Figures | null, load: SteadyLoad, mode: number): Shown<FlowState> =>
  show<FlowState>(powerFlowView, { figures, whatIf, load, mode });

/** Places in the drawing, px. */
const [LEFT, BROAD, TOP, TURN, END, NAME, WATTS, SHARE, WIDTH] = [4, 92, 50, 7, 120, 128, 312, 358, 360] as const;
const [ROW, HEADING, SLACK] = [28, 30, 2 * TURN] as const;
const parts = groupNames.flatMap((group) => groups[group].map((part) => ({ part, group })));
/** All rows at their lowest, and the most that broad ones can add. */
const HEIGHT = TOP + groupNames.length * HEADING + parts.length * ROW + BROAD - (ROW - SLACK);

const px = (place: number): string => place.toFixed(1);

/** A part's piece of the stream, from `from` downwards and out to the side; a thread where it is next to nothing. */
function branch(right: number, from: number, thick: number): string {
  const left = right - thick;
  const down = from + TURN;
  return `M${px(left)},${px(from)}H${px(right)}a${TURN},${TURN} 0 0 0 ${TURN},${TURN}H${END}v${px(thick)}H${px(right + TURN)}A${px(TURN + thick)},${px(TURN + thick)} 0 0 1 ${px(left)},${px(down - TURN)}Z`;
}

interface Row {
  readonly group: GroupName;
  readonly band: Pen;
  readonly name: Pen;
  readonly watts: Pen;
  readonly share: Pen;
}

const powerFlowView: View<FlowState> = {
  name: "power-flow",
  words: (state) => `${en.title}, ${en.loads[state.load]}. ${flowWords(state)}`,
  mount(host) {
    const doc = host.ownerDocument;
    const text = (kind: string, attributes: Record<string, string | number>, words = "") =>
      new Pen(svgEl(doc, "text", { class: kind, ...attributes }, words));
    const stream = new Pen(svgEl(doc, "path", { class: "flow-stream" }));
    const limit = new Pen(svgEl(doc, "path", { class: "flow-limit" }));
    const impossible = text("flow-cannot", { x: LEFT + BROAD / 2, y: TOP + 130, "text-anchor": "middle" });
    const waist = new Pen(svgEl(doc, "path", { class: "flow-waist" }));
    const shaft = text("flow-beside", { x: LEFT }, en.shaft);
    const source = text("flow-source", { x: LEFT, y: 20 });
    const beside = text("flow-beside", { x: LEFT, y: 38 }, en.source);
    const other = text("flow-what-if", { x: SHARE, y: 20, "text-anchor": "end" });
    const otherBeside = text("flow-beside", { x: SHARE, y: 38, "text-anchor": "end" }, en.table.columns[3]);
    const headings = groupNames.map((group) => ({
      group,
      name: text("flow-heading", { x: NAME }, en.groups[group]),
      sum: text("flow-heading", { x: WATTS, "text-anchor": "end" }),
      share: text("flow-heading", { x: SHARE, "text-anchor": "end" }),
      rule: new Pen(svgEl(doc, "line", { class: "flow-rule", x1: NAME, x2: SHARE })),
    }));
    const rows: Row[] = parts.map(({ part, group }) => ({
      group,
      band: new Pen(svgEl(doc, "path", { class: `flow-band ${group}` })),
      name: text("flow-name", { x: NAME }, en.parts[part]),
      watts: text("flow-figure", { x: WATTS, "text-anchor": "end" }),
      share: text("flow-share", { x: SHARE, "text-anchor": "end" }),
    }));
    const svg = svgEl(
      doc,
      "svg",
      { role: "img", viewBox: `0 0 ${WIDTH} ${HEIGHT}` },
      ...[
        stream,
        ...rows.map((row) => row.band),
        limit,
        impossible,
        waist,
        shaft,
        source,
        beside,
        other,
        otherBeside,
      ].map((pen) => pen.element),
      ...headings.flatMap(({ name, sum, share, rule }) => [rule, name, sum, share].map((pen) => pen.element)),
      ...rows.flatMap(({ name, watts, share }) => [name, watts, share].map((pen) => pen.element)),
    );
    const caption = el(doc, "figcaption");
    const main = el(doc, "b");
    const rest = doc.createTextNode("");
    caption.append(main, rest);
    const table = tableOf(doc);
    host.append(
      el(
        doc,
        "figure",
        { class: "power-flow", "data-picture": "power-flow" },
        el(doc, "p", { class: "plot-title" }, en.title),
        caption,
        svg,
        table.element,
      ),
    );

    const put = (found: Operating | null): void => {
      const all = found?.balance.source ?? 0;
      const scale = all > 0 ? BROAD / all : 0;
      let right = LEFT + BROAD;
      let y = TOP;
      let body = `M${LEFT},${TOP}H${px(right)}`;
      let i = 0;
      for (const { group, name, sum, share, rule } of headings) {
        if (group === "air") {
          waist.set("d", found ? `M${LEFT - 4},${px(y + 6)}H${END}` : "");
          shaft.set("y", px(y));
          shaft.show(found !== null);
        }
        for (const pen of [name, sum, share]) pen.set("y", y + 19);
        rule.set("y1", y + 25);
        rule.set("y2", y + 25);
        const watts = found ? groupSum(found, group) : 0;
        sum.text(wattsText(watts));
        share.text(shareText(watts, all));
        y += HEADING;
        for (const part of groups[group]) {
          const row = rows[i++]!;
          const own = found ? wattsOf(found, part) : 0;
          const thick = own * scale;
          const middle = y + TURN + thick / 2;
          row.band.set("d", own > 0 ? branch(right, y, Math.max(thick, 0.7)) : "");
          body += `V${px(y)}H${px(right - thick)}`;
          right -= thick;
          for (const pen of [row.name, row.watts, row.share]) pen.set("y", px(middle + 5));
          row.watts.text(wattsText(own));
          row.share.text(shareText(own, all));
          y += Math.max(ROW, thick + SLACK);
        }
      }
      stream.set("d", found ? `${body}H${LEFT}Z` : "");
      limit.set("d", found ? "" : hatched());
      impossible.text(found ? "" : en.impossible);
      source.text(found ? wattsText(all) : en.nothing);
    };

    let last: FlowState | null = null;
    let said = "";
    return (state) => {
      if (
        last?.figures === state.figures &&
        last.whatIf === state.whatIf &&
        last.load === state.load &&
        last.mode === state.mode
      )
        return;
      last = state;
      const found = operatingOf(state.figures.rig, state.load, state.mode);
      put(found.ok ? found : null);
      const there = flowOther(state);
      other.text(there ? (there.ok ? wattsText(there.balance.source) : en.impossible) : "");
      otherBeside.show(there !== null);
      table.put(state);
      const next = flowWords(state);
      if (next === said) return;
      said = next;
      setAttribute(svg, "aria-label", powerFlowView.words(state));
      const [first, more] = firstAndRest(next);
      setText(main, first);
      rest.data = more;
    };
  },
};

/** Slanted strokes over the place of the stream, where there is none. */
function hatched(): string {
  const [high, apart] = [260, 8];
  let path = `M${LEFT},${TOP}h${BROAD}v${high}h-${BROAD}Z`;
  for (let from = apart - BROAD; from < high; from += apart) {
    const [start, end] = [Math.max(0, -from), Math.min(BROAD, high - from)];
    path += `M${LEFT + start},${TOP + from + start}L${LEFT + end},${TOP + from + end}`;
  }
  return path;
}

/** The closed table; filled when it is opened. */
function tableOf(doc: Document): { element: HTMLElement; put(state: FlowState): void } {
  const body = el(doc, "tbody");
  const head = el(doc, "tr", {}, ...en.table.columns.map((title) => el(doc, title ? "th" : "td", {}, title)));
  const table = el(doc, "table", {}, el(doc, "thead", {}, head), body);
  const details = el(
    doc,
    "details",
    {},
    el(doc, "summary", {}, en.table.summary),
    el(doc, "div", { class: "plot-table", tabindex: "0", role: "region", "aria-label": en.title }, table),
  );
  let state: FlowState | null = null;
  const fill = (): void => {
    if (!state || !details.open) return;
    const rows = flowTable(state);
    while (body.children.length < rows.length) {
      body.append(el(doc, "tr", {}, el(doc, "th", { scope: "row" }), ...[1, 2, 3].map(() => el(doc, "td"))));
    }
    for (const [i, cells] of rows.entries()) {
      for (const [k, cell] of cells.entries()) setText(body.children[i]!.children[k] as Element, cell);
    }
  };
  details.addEventListener("toggle", fill);
  return {
    element: details,
    put(next) {
      state = next;
      fill();
    },
  };
}
