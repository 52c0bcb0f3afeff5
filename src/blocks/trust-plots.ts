/** Where the reader's own rotors stand among the tested ones, by the Reynolds number of their tips. */
import type { Figures } from "#figures/figures";
import { modeName } from "#figures/mode-name";
import { operatingOf } from "#figures/operating";
import { reynoldsNumber } from "#model/rotor/blade";
import { expectedError } from "#model/rotor/doubt";
import { plot } from "#plots/plot";
import type { PlotState, Point } from "#plots/state";
import { bounds } from "#validation/check";
import { everyRotor, overall, tipReynoldsOf } from "#validation/summary";
import { formatNumber, formatValue } from "#view/format";
import type { Shown } from "#view/shown";
import { enTrust } from "#view/words/en-trust";
import { type FactsState, factsTable } from "./facts-table.ts";

const en = enTrust.size;

interface OwnRotor {
  /** m/s */
  readonly tipSpeed: number;
  readonly mach: number;
  readonly reynolds: number;
  /** Share of the true value. */
  readonly expected: number;
}

/** Main and tail rotor of a machine at a mode's set speed: what their tips do. */
function ownRotors({ rig }: Figures, mode: number): { main: OwnRotor; tail: OwnRotor } {
  const { parts, air } = rig;
  const speed = parts.modes[Math.min(mode, parts.modes.length - 1)]?.headSpeed ?? 0;
  const rotor = (turning: number, radius: number, chord: number): OwnRotor => {
    const tipSpeed = turning * radius;
    const reynolds = reynoldsNumber(air, tipSpeed, chord);
    return { tipSpeed, mach: tipSpeed / air.soundSpeed, reynolds, expected: expectedError(reynolds) };
  };
  return {
    main: rotor(speed, parts.mainRotor.radius, parts.mainRotor.chord),
    tail: rotor(speed * parts.gears.tailRatio, parts.tailRotor.radius, parts.tailRotor.chord),
  };
}

/** Whether two dots stand so close that their words would lie on each other. */
const close = (a: OwnRotor, b: OwnRotor): boolean => Math.abs(log(a.reynolds / b.reynolds)) < TOO_CLOSE;

/** Two figures: nobody knows a Reynolds number better. */
const reynoldsText = (value: number): string => formatNumber(Number(value.toPrecision(2)), 0);
const percent = (share: number): string => formatValue(100 * share, "percent", { decimals: 0 });

/** Ticks in thousands. */
const thousands = [1, 3, 10, 30, 100, 300, 1000, 3000] as const;
const log = Math.log10;
const [LOW, HIGH] = [log(8e3), log(5e6)] as const;
const POINTS = 41;
/** Decades. */
const TOO_CLOSE = 1;

/** Error to expect against tip Reynolds number, with the tested rotors as points and the reader's own two on the curve. */
export function trustPlot(figures: Figures, whatIf: Figures | null = null, mode = 0): Shown<PlotState> {
  const { main, tail } = ownRotors(figures, mode);
  const other = whatIf && ownRotors(whatIf, mode);
  const all = [main, tail, ...(other ? [other.main, other.tail] : [])].map(({ reynolds }) => log(reynolds));
  const low = Math.min(LOW, Math.floor(10 * Math.min(...all)) / 10 - 0.1);
  const high = Math.max(HIGH, Math.ceil(10 * Math.max(...all)) / 10 + 0.1);
  const xs = Array.from({ length: POINTS }, (_, i) => low + ((high - low) * i) / (POINTS - 1));
  const tested = everyRotor().map((checked) => ({
    ...overall([checked]),
    reynolds: tipReynoldsOf(checked.set),
    checked,
  }));
  const least = Math.min(...tested.map(({ reynolds }) => reynolds));
  const own = (key: string, rotor: OwnRotor, kind: "now" | "what-if", label: string): Point => ({
    key,
    x: log(rotor.reynolds),
    y: 100 * rotor.expected,
    kind,
    label,
  });
  const ordered = (
    [
      ["main", main],
      ["tail", tail],
    ] as const
  ).toSorted(([, a], [, b]) => a.reynolds - b.reynolds);
  const bothLabel = en.both(en.short[ordered[0]![0]], en.short[ordered[1]![0]]);
  return plot({
    name: "expected-error",
    title: en.title,
    unit: "%",
    x: {
      label: en.x,
      unit: "",
      low,
      high,
      exact: true,
      ticks: thousands.map((each) => log(1000 * each)),
      tickTexts: thousands.map((each) => formatNumber(each)),
    },
    y: { label: en.y, unit: "percent", low: 0, high: 40 },
    curves: [
      { key: "expected", label: en.expected, ink: "plain", xs, ys: xs.map((x) => 100 * expectedError(10 ** x)) },
    ],
    zones: [{ key: "untested", words: en.none, x: [null, log(least)] }],
    points: [
      ...tested.map(
        ({ median, ninetieth, reynolds, checked }, i): Point => ({
          key: `test-${i}`,
          x: log(reynolds),
          y: 100 * median,
          kind: "measured",
          low: 100 * median,
          high: 100 * ninetieth,
          // One name says enough where several stand on one spot.
          label: /^TM/.test(checked.set.name) ? checked.set.name : "",
        }),
      ),
      ...(other
        ? [
            own("what-if-main", other.main, "what-if", en.whatIfMain),
            own("what-if-tail", other.tail, "what-if", en.whatIfTail),
          ]
        : []),
      ...(close(main, tail)
        ? [...ordered].reverse().map(([key, rotor], i) => own(key, rotor, "now", i === 0 ? bothLabel : ""))
        : [own("main", main, "now", en.main), own("tail", tail, "now", en.tail)]),
    ],
    words: [
      en.words(percent(main.expected), percent(tail.expected)),
      en.numbers(reynoldsText(main.reynolds), reynoldsText(tail.reynolds)),
      en.below(reynoldsText(least)),
      en.bars,
    ].join(" "),
    table: {
      columns: en.columns,
      rows: [3e3, 1e4, 3e4, 1e5, 3e5, 1e6].map((reynolds) => [formatNumber(reynolds), 100 * expectedError(reynolds)]),
    },
  });
}

/** The reader's two rotors side by side: tip speed, Mach and Reynolds number, the error to expect. */
export function ownRotorsTable(figures: Figures, mode = 0): Shown<FactsState> {
  const { main, tail } = ownRotors(figures, mode);
  const { rows, columns } = enTrust.yours;
  const away = (reynolds: number) => Math.abs(log(reynolds / main.reynolds));
  const [nearest] = everyRotor()
    .map(({ set }) => set)
    .sort((a, b) => away(tipReynoldsOf(a)) - away(tipReynoldsOf(b)));
  const row = (title: string, text: (rotor: OwnRotor) => string, marked = false) => ({
    title,
    cells: [text(main), text(tail)],
    marked,
  });
  return factsTable({
    name: "own-rotors",
    caption: enTrust.yours.caption(modeName(figures.machine, mode)),
    columns: ["", columns.main, columns.tail],
    rows: [
      row(rows.tip, ({ tipSpeed }) => formatValue(tipSpeed, "m/s", { decimals: 0 })),
      row(rows.mach, ({ mach }) => formatNumber(mach, 2)),
      row(rows.reynolds, ({ reynolds }) => reynoldsText(reynolds)),
      row(rows.expected, ({ expected }) => percent(expected), true),
    ],
    words: [nearest ? enTrust.yours.near(nearest.name) : "", tailWords(figures, mode, tail.expected)].join(" ").trim(),
  });
}

/** What an error on the tail comes to in the whole; nothing where there is no hover. */
function tailWords({ rig }: Figures, mode: number, error: number): string {
  const hover = operatingOf(rig, "hover", mode);
  if (!hover.ok) return "";
  const share = hover.balance.rotors.tail / hover.balance.source;
  return enTrust.yours.tail(
    percent(share),
    percent(error),
    formatValue(100 * share * error, "percent", { decimals: 1 }),
  );
}

/** What the page asks and answers about the tests. */
export interface TrustFacts {
  /** Median error of all judged figures, %. */
  readonly median: number;
  /** The same and the 90th percentile, as they stand in the text. */
  readonly medianText: string;
  readonly ninetiethText: string;
  /** What the other half comes to, in a sentence. */
  readonly words: string;
  /** The rotor on which the model is worst, by its median. */
  readonly worst: "broad" | "many" | "large";
  readonly worstName: string;
  readonly worstError: string;
  /** What bands hold for the rotor model itself, as a standard uncertainty, on a rotor such as the tested ones. */
  readonly doubt: string;
  /** What we expect at tip Reynolds numbers of 100,000, 30,000 and 10,000. */
  readonly expected: readonly [string, string, string];
}

/** The model's errors on the published rotors, for the page's questions. */
export function trustFacts(): TrustFacts {
  const all = overall(everyRotor());
  const sets = everyRotor().map((checked) => ({ name: checked.set.name, ...overall([checked]) }));
  const worst = sets.toSorted((a, b) => b.median - a.median)[0] ?? { name: "", median: 0 };
  const worstError = percent(worst.median);
  return {
    median: 100 * all.median,
    medianText: percent(all.median),
    ninetiethText: percent(all.ninetieth),
    words: enTrust.seen(percent(all.ninetieth), worst.name, worstError),
    worst: /^TM/.test(worst.name) ? "broad" : /^TN 2318/.test(worst.name) ? "large" : "many",
    worstName: worst.name,
    worstError,
    doubt: percent(expectedError(1e6)),
    expected: [percent(expectedError(1e5)), percent(expectedError(3e4)), percent(expectedError(1e4))],
  };
}

/** The rotor with the broadest blades of all tests. */
const BROAD = "TM-81232";

/** How the reader's blades compare with the broadest that were tested, and what that means for the pitch named here. */
export function broadBlades({ rig }: Figures): string {
  const tested = everyRotor().find(({ set }) => set.name === BROAD);
  const { radius, chord } = rig.parts.mainRotor;
  if (!tested) return "";
  const { geometry } = tested.set;
  const times = (long: number, wide: number) => formatNumber(long / wide, 1);
  const { broad } = enTrust;
  const { median } = overall([tested]);
  const compared = broad.compared(BROAD, times(geometry.radius, geometry.chordTip), times(radius, chord));
  return `${compared} ${median > bounds.median ? broad.beware(percent(median)) : broad.fine(percent(median))}`;
}
