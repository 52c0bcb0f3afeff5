/** Every published rotor at a glance: each measured figure as a dot at model over measurement, the bounds hatched. */
import { bounds, type Spread } from "#validation/check";
import { everyRotor, overall } from "#validation/summary";
import { el, setAttribute, setText, svgEl } from "#view/dom";
import { formatNumber, formatValue } from "#view/format";
import { type Shown, show, type View } from "#view/shown";
import { enTrust } from "#view/words/en-trust";
import "./rotor-tests.css";

const en = enTrust.tests;

interface TestsRow extends Omit<Spread, "what"> {
  readonly name: string;
  readonly what: string;
  /** Model over measurement less one, of each judged figure. */
  readonly errors: readonly number[];
}

interface TestsState {
  readonly rows: readonly TestsRow[];
  readonly count: number;
  readonly median: number;
  readonly ninetieth: number;
}

let state: TestsState | null = null;

/** The model on every published rotor. Worked out once: no machine changes it. */
export function rotorTests(): Shown<TestsState> {
  state ??= {
    rows: everyRotor().flatMap(({ set, rows, spreads }) =>
      spreads.map(({ what, ...spread }) => ({
        ...spread,
        name: set.name,
        what: enTrust.what[what],
        errors: rows.flatMap((row) => (row.judged && row.what === what ? [row.error] : [])),
      })),
    ),
    ...overall(everyRotor()),
  };
  return show<TestsState>(testsView, state);
}

const percent = (share: number, decimals = 0): string => formatValue(100 * share, "percent", { decimals });
const signed = (share: number): string => formatValue(100 * share, "percent", { decimals: 0, signed: true });

function sentence({ rows, count, median, ninetieth }: TestsState): string {
  const beyond = rows.filter((row) => !row.within);
  const names = beyond.map((row) => `${row.name} (${row.what}, half within ${percent(row.median)})`).join("; ");
  const [worst] = [...rows].sort((a, b) => Math.abs(b.bias) - Math.abs(a.bias));
  return [
    en.words(formatNumber(count), percent(median, 1), percent(ninetieth, 1)),
    worst ? en.worst(worst.name, worst.what, percent(Math.abs(worst.bias)), worst.bias > 0 ? en.high1 : en.low1) : "",
    beyond.length > 0 ? en.beyond(names, percent(bounds.median)) : en.none,
  ]
    .filter(Boolean)
    .join(" ");
}

const [WIDTH, LEFT, RIGHT, TOP, ROW] = [380, 14, 362, 54, 42] as const;
/** How high the strip of a row is. */
const STRIP = 15;

const testsView: View<TestsState> = {
  name: "rotor-tests",
  words: (tests) => `${en.title}. ${sentence(tests)}`,
  mount(host) {
    const doc = host.ownerDocument;
    const svg = svgEl(doc, "svg", { role: "img" });
    const caption = el(doc, "figcaption");
    const main = el(doc, "b");
    const rest = doc.createTextNode("");
    caption.append(main, rest);
    const body = el(doc, "div", { class: "plot-table", tabindex: "0", role: "region", "aria-label": en.title });
    const details = el(doc, "details", {}, el(doc, "summary", {}, en.summary), body);
    host.append(
      el(
        doc,
        "figure",
        { class: "rotor-tests", "data-plot": "rotor-tests" },
        el(doc, "p", { class: "plot-title" }, en.title),
        caption,
        svg,
        details,
      ),
    );
    let drawn: TestsState | null = null;
    details.addEventListener("toggle", () => {
      if (details.open && drawn && !body.firstChild) body.append(tableOf(doc, drawn));
    });
    return (tests) => {
      if (tests === drawn) return;
      drawn = tests;
      svg.replaceChildren(...drawing(doc, tests));
      setAttribute(svg, "viewBox", `0 0 ${WIDTH} ${TOP + tests.rows.length * ROW + 42}`);
      setAttribute(svg, "aria-label", testsView.words(tests));
      const words = sentence(tests);
      const end = words.search(/\.(?=\s)/) + 1;
      setText(main, words.slice(0, end));
      rest.data = words.slice(end);
    };
  },
};

/** All of the drawing: it never changes once it is there. */
function drawing(doc: Document, { rows }: TestsState): Element[] {
  const errors = rows.flatMap((row) => row.errors);
  const tenth = (value: number) => Math.round(10 * value) / 10;
  const low = Math.min(-0.2, tenth(Math.min(...errors) - 0.03));
  const high = Math.max(0.2, tenth(Math.max(...errors) + 0.03));
  const bottom = TOP + rows.length * ROW;
  const x = (error: number): number => Math.round(LEFT + ((error - low) / (high - low)) * (RIGHT - LEFT));
  const text = (kind: string, at: number, y: number, anchor: string, words: string) =>
    svgEl(doc, "text", { class: kind, x: at, y, "text-anchor": anchor }, words);
  const [from, to] = [x(-bounds.ninetieth), x(bounds.ninetieth)];
  const bound = percent(bounds.ninetieth);
  /** Slanted strokes on the strip of a row, from one place to another. */
  const hatch = (y: number, a: number, b: number): string => {
    let path = "";
    for (let at = a - STRIP; at < b; at += 8) {
      const [start, end] = [Math.max(a, at), Math.min(b, at + STRIP)];
      if (end > start) path += `M${start},${y + STRIP - (start - at)}L${end},${y + STRIP - (end - at)}`;
    }
    return path;
  };
  const ticks = Array.from({ length: Math.round((high - low) / 0.1) + 1 }, (_, i) => tenth(low + i * 0.1));
  return [
    svgEl(doc, "path", { class: "tests-rule", d: `M${x(0)},${TOP - 6}V${bottom}` }),
    text("tests-name", x(0), TOP - 12, "middle", en.perfect),
    text("tests-limit", LEFT, TOP - 30, "start", en.low(bound)),
    text("tests-limit", RIGHT, TOP - 30, "end", en.high(bound)),
    ...rows.flatMap((row, i) => {
      const y = TOP + i * ROW;
      const strip = y + 21;
      const upright = (at: number) => `M${at},${strip}v${STRIP}`;
      return [
        svgEl(doc, "path", { class: "tests-hatch", d: hatch(strip, LEFT, from) + hatch(strip, to, RIGHT) }),
        svgEl(doc, "path", { class: "tests-edge", d: upright(from) + upright(to) }),
        svgEl(doc, "path", { class: "tests-perfect", d: upright(x(0)) }),
        text("tests-name", LEFT, y + 15, "start", `${row.name}: ${row.what}`),
        text("tests-half", RIGHT, y + 15, "end", en.median(percent(row.median, 1))),
        ...row.errors.map((error) =>
          svgEl(doc, "circle", { class: "tests-dot", cx: x(error), cy: strip + STRIP / 2, r: 3.2 }),
        ),
      ];
    }),
    ...ticks.map((tick) => text("tests-tick", x(tick), bottom + 18, "middle", formatNumber(100 + 100 * tick))),
    text("tests-tick", (LEFT + RIGHT) / 2, bottom + 37, "middle", en.axis),
  ];
}

function tableOf(doc: Document, { rows }: TestsState): Element {
  const cells = (row: TestsRow) => [
    row.what,
    formatNumber(row.count),
    percent(row.median, 1),
    percent(row.ninetieth, 1),
    percent(row.worst, 1),
    signed(row.bias),
  ];
  return el(
    doc,
    "table",
    {},
    el(doc, "thead", {}, el(doc, "tr", {}, ...en.columns.map((title) => el(doc, "th", { scope: "col" }, title)))),
    el(
      doc,
      "tbody",
      {},
      ...rows.map((row) =>
        el(
          doc,
          "tr",
          {},
          el(doc, "th", { scope: "row" }, row.name),
          ...cells(row).map((cell) => el(doc, "td", {}, cell)),
        ),
      ),
    ),
  );
}
