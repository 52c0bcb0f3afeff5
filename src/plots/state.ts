/**
 * What a plot shows, as plain data. Values are in the units that the axes name; whoever makes a state has converted
 * them. A state knows nothing of pixels: the same one is drawn on a phone, a wide screen and paper.
 */

/**
 * The marks of the workbook. Ink is what the model says (the reader's machine now, and the what-if); pinned is an
 * earlier state of either; pencil is the reader's guess; plain is a line of neither, such as a set level.
 */
export type Ink = "now" | "what-if" | "pinned-now" | "pinned-what-if" | "pencil" | "plain";

export interface Axis {
  /** What it measures, in plain words: `charge`, `head speed`. */
  readonly label: string;
  /** As in the record and the quantities: `rpm`, `percent`, ``. */
  readonly unit: string;
  /** In the reader's units already, or in one that is the same for everybody. */
  readonly sameForAll?: boolean;
  /** Values that have to be in view whatever the curves do. */
  readonly low?: number;
  readonly high?: number;
  /** The axis ends exactly at `low` and `high`. */
  readonly exact?: boolean;
  /** Runs from high to low: a pack that empties to the right. */
  readonly reversed?: boolean;
  /** The only values that have ticks, such as whole teeth. */
  readonly ticks?: readonly number[];
  /** What stands at them, where that isn't the value itself: an axis of logarithms. */
  readonly tickTexts?: readonly string[];
  /** Words at the two ends, in the order they stand on the page: `full`, `empty`. */
  readonly ends?: readonly [string, string];
}

export interface Curve {
  readonly key: string;
  /** Stands at the end of the curve; there is no legend. */
  readonly label: string;
  /** What the table calls it, where the label on the drawing says less. */
  readonly name?: string;
  readonly ink: Ink;
  readonly xs: ArrayLike<number>;
  /** Null where there is no value: the curve has a gap there. */
  readonly ys: ArrayLike<number | null>;
  /** Dots instead of a line: for what only exists at whole values, such as teeth. */
  readonly dots?: boolean;
}

/** A rule across the whole plot with its words: a set speed, the charge looked at. */
export interface Level {
  readonly key: string;
  /** The axis whose value it marks: a level of `y` lies flat. */
  readonly axis: "x" | "y";
  readonly at: number;
  readonly label: string;
  readonly ink: Ink;
}

/**
 * Where a limit is passed: hatched, with words in it. A rectangle, open (null) towards an end of an axis, or the area
 * between two curves.
 */
export interface Zone {
  readonly key: string;
  readonly words: string;
  readonly x?: readonly [number | null, number | null];
  readonly y?: readonly [number | null, number | null];
  readonly between?: {
    readonly xs: ArrayLike<number>;
    readonly lower: ArrayLike<number | null>;
    readonly upper: ArrayLike<number | null>;
  };
}

/** One point: measured (with its bar), a place the reader should look at, or one of the two machines. */
export interface Point {
  readonly key: string;
  readonly x: number;
  readonly y: number;
  readonly kind: "measured" | "place" | "now" | "what-if" | "pinned";
  readonly label?: string;
  /** Its words stand below it first: its curve comes from above. */
  readonly under?: boolean;
  /** Ends of the bar of a measured point. */
  readonly low?: number;
  readonly high?: number;
}

/** A mark that the reader can drag, or move by keys. It changes one field of the machine. */
export interface Handle {
  readonly key: string;
  /** Where it stands; null on one axis puts it at that axis' far end. */
  readonly x: number | null;
  readonly y: number | null;
  readonly moves: "x" | "y";
  /** The field it changes, as a dot path of the record, and the machine it belongs to. */
  readonly path: string;
  readonly machine?: "now" | "what-if";
  /** The field's present value, limits and step, in the field's unit. */
  readonly value: number;
  readonly min: number;
  readonly max: number;
  readonly step: number;
  /** Field value = axis value x `scale` + `offset`; as the axis itself when left out. */
  readonly scale?: number;
  readonly offset?: number;
  /** What it is, for those who do not see it: `head speed of the mode hover`. */
  readonly name: string;
  /** Its value in words: `1,650 rpm`. */
  readonly valueText: string;
  /** Words beside the mark, if any. */
  readonly shows?: string;
}

export interface Table {
  readonly columns: readonly string[];
  readonly rows: readonly (readonly (string | number | null)[])[];
}

export interface PlotState {
  /** Its stable name in kebab-case (`data-plot`). */
  readonly name: string;
  readonly title: string;
  /** Stands beside the title in a lighter hand: the unit of the upright axis, and what else holds for the whole. */
  readonly unit: string;
  readonly x: Axis;
  readonly y: Axis;
  readonly curves: readonly Curve[];
  readonly levels?: readonly Level[];
  readonly zones?: readonly Zone[];
  readonly points?: readonly Point[];
  readonly handles?: readonly Handle[];
  /** What the plot says, in whole sentences. The first is the main thing. */
  readonly words: string;
  /** The numbers behind it; made from the curves and levels when left out. */
  readonly table?: Table;
  readonly size?: "short" | "regular" | "tall";
}
