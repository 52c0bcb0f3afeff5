/** The pack drawn to its cells, each filled as far as it is charged, with what it gives at rest and at full pitch. */
import { loadCurrent } from "#figures/curves-pack";
import type { Figures } from "#figures/figures";
import { loadedVoltage } from "#model/currents";
import { reserveCharge } from "#model/endurance";
import { el, Pen, setAttribute, setText, svgEl } from "#view/dom";
import { formatValue } from "#view/format";
import { type Shown, show, type View } from "#view/shown";
import { enPack } from "#view/words/en-pack";

const en = enPack.picture;

interface PackPictureState {
  readonly cells: number;
  /** 0 to 1 */
  readonly charge: number;
  /** V, of the whole pack */
  readonly rest: number;
  /** At full pitch; null when the motor can't turn the rotor. */
  readonly current: number | null;
  readonly loaded: number | null;
}

/** The pack of a machine as a picture; under load it is at the full pitch of a mode. */
export function packPicture(figures: Figures, mode = 0): Shown<PackPictureState> {
  const { pack } = figures.rig.parts;
  const { openVoltage, packResistance } = figures.rig.train;
  const current = loadCurrent(figures, "full-pitch", mode);
  const loaded = current === null ? null : loadedVoltage({ openVoltage, current, resistance: packResistance });
  return show<PackPictureState>(packPictureView, {
    cells: pack.cells,
    charge: pack.charge,
    rest: openVoltage,
    current,
    loaded,
  });
}

const volts = (value: number | null) => formatValue(value, "V", { decimals: 1 });

function sentence({ cells, charge, rest, current, loaded }: PackPictureState): string {
  const full = formatValue(100 * charge, "percent", { decimals: 0 });
  const first = en.words(cells, full, formatValue(rest / cells, "V", { decimals: 2 }), volts(rest));
  return `${first} ${current === null ? en.none : en.loaded(volts(loaded), formatValue(current, "A", { decimals: 0 }))}`;
}

const [LEFT, TOP, HEIGHT, ACROSS, WIDEST] = [14, 24, 108, 260, 40] as const;
/** Between two strokes of the hatch, px. */
const APART = 7;

const px = (place: number): string => place.toFixed(1);
const box = (x: number, y: number, wide: number, high: number): string =>
  `M${px(x)},${px(y)}h${px(wide)}v${px(high)}h${px(-wide)}Z`;
const each = (cells: number, width: number, draw: (x: number) => string): string =>
  Array.from({ length: cells }, (_, i) => draw(LEFT + i * width)).join("");

/** The part of each cell that a flight should leave in, hatched: slanted strokes up to that charge, and its edge. */
function hatch(cells: number, width: number, gap: number): string {
  const [wide, high, bottom] = [width - 2 * gap, HEIGHT * reserveCharge, TOP + HEIGHT];
  const strokes = (x: number): string => {
    let path = "";
    for (let from = APART / 2 - high; from < wide; from += APART) {
      const [start, end] = [Math.max(0, from), Math.min(wide, from + high)];
      path += `M${px(x + gap + start)},${px(bottom - start + from)}L${px(x + gap + end)},${px(bottom - end + from)}`;
    }
    return path;
  };
  return `M${LEFT - 8},${px(bottom - high)}H${px(LEFT + cells * width + 6)}${each(cells, width, strokes)}`;
}

/** One of the two leads, from the last cell to where the voltages stand. */
function lead(x: number, way: number): string {
  const middle = TOP + 50;
  return `M${px(x)},${middle - 16 * way}c16,0 14,${-14 * way} 30,${-14 * way}`;
}

const packPictureView: View<PackPictureState> = {
  name: "pack-picture",
  words: (state) => `${en.title}. ${sentence(state)}`,
  mount(host) {
    const doc = host.ownerDocument;
    const cells = new Pen(svgEl(doc, "path", { class: "cell-frames" }));
    const fill = new Pen(svgEl(doc, "path", { class: "cell-fill" }));
    const reserve = new Pen(svgEl(doc, "path", { class: "cell-reserve" }));
    const leads = new Pen(svgEl(doc, "path", { class: "pack-leads" }));
    const words = new Pen(svgEl(doc, "text", { class: "limit", y: TOP + HEIGHT + 22 }));
    const line = (y: number, label: string) => {
      const figure = new Pen(svgEl(doc, "text", { class: "volts", x: 318, y }));
      return { figure, label: svgEl(doc, "text", { x: 318, y: y + 18 }, label) };
    };
    const [rest, full] = [line(TOP + 22, en.rest), line(TOP + 82, en.full)];
    const svg = svgEl(
      doc,
      "svg",
      { role: "img", viewBox: "0 0 430 164" },
      ...[fill, reserve, cells, leads, words, rest.figure, full.figure].map((pen) => pen.element),
      rest.label,
      full.label,
    );
    const caption = el(doc, "figcaption");
    host.append(el(doc, "figure", { class: "pack-picture", "data-picture": "pack" }, svg, caption));
    let said = "";
    return (state) => {
      const width = Math.min(WIDEST, ACROSS / state.cells);
      const right = LEFT + width * state.cells;
      const gap = Math.min(2.5, width / 8);
      // Each cell is a box with its two tabs on top.
      const boxes = each(state.cells, width, (x) => box(x + gap, TOP, width - 2 * gap, HEIGHT));
      const tabs = each(
        state.cells,
        width,
        (x) => `M${px(x + 0.3 * width)},${TOP}v-7M${px(x + 0.7 * width)},${TOP}v-7`,
      );
      const filled = HEIGHT * state.charge;
      cells.set("d", boxes + tabs);
      fill.set(
        "d",
        state.charge > 0
          ? each(state.cells, width, (x) => box(x + gap, TOP + HEIGHT - filled, width - 2 * gap, filled))
          : "",
      );
      reserve.set("d", hatch(state.cells, width, gap));
      leads.set("d", [1, -1].map((way) => lead(right, way)).join(""));
      words.set("x", LEFT);
      words.text(`↑ ${en.reserve}`);
      rest.figure.text(volts(state.rest));
      full.figure.text(state.loaded === null ? "–" : volts(state.loaded));
      const next = sentence(state);
      if (next === said) return;
      said = next;
      setAttribute(svg, "aria-label", packPictureView.words(state));
      setText(caption, next);
    };
  },
};
