/** What was read over what was asked for, mode by mode, with its bars, and the lines of what would explain it. */
import type { Figures } from "#figures/figures";
import type { Explained, Reading } from "#figures/misread";
import { modeName } from "#figures/mode-name";
import { plot } from "#plots/plot";
import type { PlotState } from "#plots/state";
import { formatValue } from "#view/format";
import type { Shown } from "#view/shown";
import { enMisread } from "#view/words/en-misread";
import { type FactsState, factsTable } from "./facts-table.ts";

const en = enMisread;

/** So many explanations are drawn. */
const LINES = 3;
/** Bars of measured points span two standard uncertainties to either side, as bands do. */
const COVERAGE = 2;
/** Lines that lie closer together than this, per cent, are one: the first keeps it. */
const APART = 0.3;
/** Explanations of less weight than this get no line of their own. */
const LEAST = 0.02;

const percent = (value: number, decimals = 1) => formatValue(value, "percent", { decimals });

interface Row {
  readonly mode: number;
  readonly asked: number;
  readonly measured: number;
  /** Measured over asked for, per cent. */
  readonly share: number;
}

function rowsOf(figures: Figures, { rows }: Reading): Row[] {
  return rows.flatMap(({ mode, measured }) => {
    const asked = figures.number("set-head-speed", mode);
    return asked === null || asked <= 0 ? [] : [{ mode, asked, measured, share: (100 * measured) / asked }];
  });
}

/** The table of a reading: asked for, read, off by. */
export function readingTable(figures: Figures, reading: Reading): Shown<FactsState> {
  const rows = rowsOf(figures, reading);
  const gaps = rows.map(({ share }) => share - 100);
  const signed = (gap: number) => formatValue(gap, "percent", { decimals: 1, signed: true });
  const words =
    rows.length === 0
      ? ""
      : rows.length === 1
        ? en.table.one(signed(gaps[0] ?? 0))
        : en.table.same(signed(Math.min(...gaps)), signed(Math.max(...gaps)));
  return factsTable({
    name: "reading",
    caption: en.table.caption,
    columns: [en.table.mode, en.table.asked, en.table.read, en.table.off],
    rows: rows.map(({ mode, asked, measured }, i) => ({
      title: modeName(figures.machine, mode),
      cells: [formatValue(asked, "rpm"), formatValue(measured, "rpm"), signed(gaps[i] ?? 0)],
    })),
    words,
  });
}

const areApart = (a: Explained, b: Explained): boolean =>
  a.reads.some((speed, i) => 100 * Math.abs(speed / (b.reads[i] ?? speed) - 1) > APART);

/** The modes before anything was read: the table behind the plot then says what is asked for. */
const notRead = ({ machine }: Figures) =>
  machine.modes.map(({ headRpm }, mode) => ({ mode, asked: headRpm, measured: null, share: null }));

/** Measured points over asked-for speeds; with lines where the causes may be told. */
export function readingPlot(figures: Figures, reading: Reading, causes: readonly Explained[] | null): Shown<PlotState> {
  const rows = rowsOf(figures, reading).sort((a, b) => a.asked - b.asked);
  const fitting = (causes ?? []).filter(({ fits, weight }) => fits && weight >= LEAST);
  const drawn = fitting
    .filter((cause, i) => fitting.slice(0, i).every((other) => areApart(cause, other)))
    .slice(0, LINES);
  // The explained speeds stand in the order of the reading.
  const readAt = (cause: Explained, mode: number) =>
    cause.reads[reading.rows.findIndex((row) => row.mode === mode)] ?? 0;
  const shares = rows.map(({ share }) => share);
  const [low, high] = [Math.min(100, ...shares), Math.max(100, ...shares)];
  const names = fitting.slice(0, LINES).map(({ key }) => en.causes[key].short);
  const words =
    rows.length === 0
      ? en.plot.none
      : [
          en.plot.points(percent(Math.min(...shares)), percent(Math.max(...shares))),
          causes === null ? en.plot.hidden : drawn.length > 0 ? en.plot.lines(names.join(", ")) : en.plot.noLine,
        ].join(" ");
  const speeds = figures.machine.modes.map(({ headRpm }) => headRpm);
  const [slow, fast] = [Math.min(...speeds), Math.max(...speeds)];
  return plot({
    name: "read-over-asked",
    title: en.plot.title,
    unit: en.plot.unit,
    x: { label: en.plot.x, unit: "rpm", low: 0.92 * slow, high: 1.04 * fast },
    y: { label: en.plot.y, unit: "percent", low: low - 3, high: high + 3 },
    curves: drawn.map((cause, i) => ({
      key: `cause-${i}`,
      label: en.causes[cause.key].short,
      ink: i === 0 ? ("now" as const) : ("plain" as const),
      xs: rows.map(({ asked }) => asked),
      ys: rows.map(({ mode, asked }) => (100 * readAt(cause, mode)) / asked),
    })),
    levels: [{ key: "asked", axis: "y", at: 100, label: en.plot.right, ink: "plain" }],
    points: rows.map(({ mode, asked, share }, i) => ({
      key: `mode-${mode}`,
      x: asked,
      y: share,
      kind: "measured" as const,
      low: share * (1 - COVERAGE * reading.sure),
      high: share * (1 + COVERAGE * reading.sure),
      // The last one's place belongs to the words of the lines.
      ...(drawn.length > 0 && i === rows.length - 1 ? {} : { label: modeName(figures.machine, mode) }),
    })),
    words,
    table: {
      columns: [en.table.mode, en.plot.x, en.table.read, en.plot.y, ...drawn.map(({ key }) => en.causes[key].short)],
      rows: (rows.length > 0 ? rows : notRead(figures)).map(({ mode, asked, measured, share }) => [
        modeName(figures.machine, mode),
        formatValue(asked, "rpm"),
        measured === null ? en.table.none : formatValue(measured, "rpm"),
        share === null ? en.table.none : percent(share),
        ...drawn.map((cause) => percent((100 * readAt(cause, mode)) / asked)),
      ]),
    },
    size: "short",
  });
}

/** How large the faults of the shapes are, as shares: a tooth or so, and an end point that one sees. */
const SHAPE = { count: 0.05, end: 0.08 } as const;
const POINTS = 25;

/** What three kinds of fault do to every head speed of this machine: level, lifted at the slow end, fallen at the fast end. */
export function shapesPlot(figures: Figures): Shown<PlotState> {
  const words = en.shapes;
  const speeds = figures.machine.modes.map(({ headRpm }) => headRpm);
  const [slow, fast] = [0.9 * Math.min(...speeds), 1.05 * Math.max(...speeds)];
  // A ceiling just below the fastest mode: where one commonly meets it.
  const ceiling = 0.95 * Math.max(...speeds);
  const even = Array.from({ length: POINTS }, (_, i) => slow + ((fast - slow) * i) / (POINTS - 1));
  // The knee is a point of its own, so that it is drawn where it is.
  const xs = [...even, ceiling].sort((a, b) => a - b);
  const learned = figures.number("learned-head-speed");
  const curve = (key: string, label: string, ink: "now" | "plain", ys: readonly number[]) => ({
    key,
    label,
    ink,
    xs,
    ys,
  });
  return plot({
    name: "shapes-of-faults",
    title: words.title,
    unit: en.plot.unit,
    x: { label: en.plot.x, unit: "rpm", low: slow, high: fast },
    y: { label: en.plot.y, unit: "percent", low: 92, high: 108 },
    curves: [
      curve(
        "count",
        words.count,
        "now",
        xs.map(() => 100 * (1 + SHAPE.count)),
      ),
      ...(learned === null
        ? []
        : [
            curve(
              "low-end",
              words.low,
              "plain",
              xs.map((speed) => 100 * (1 + SHAPE.end * Math.max(0, learned / speed - 1))),
            ),
          ]),
      curve(
        "ceiling",
        words.top,
        "plain",
        xs.map((speed) => 100 * Math.min(1, ceiling / speed)),
      ),
    ],
    levels: [{ key: "asked", axis: "y", at: 100, label: en.plot.right, ink: "plain" }],
    words: `${words.words} ${words.ceiling(formatValue(ceiling, "rpm", { decimals: -1 }))}`,
    size: "short",
  });
}
