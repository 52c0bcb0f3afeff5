/** The motor from its end: as many magnets as it has, around coils that stand still. The bell turns by hand. */
import type { Machine } from "#machine/machine";
import { el, Pen, setAttribute, setText, svgEl } from "#view/dom";
import { formatNumber } from "#view/format";
import { type Shown, show, type View } from "#view/shown";
import { enMagnets } from "#view/words/en-magnets";

const en = enMagnets.picture;

interface MagnetPictureState {
  readonly poles: number;
}

/** The magnets of the machine's motor as a picture, drawn to their count. */
export function magnetPicture({ motor }: Machine): Shown<MagnetPictureState> {
  return show<MagnetPictureState>(magnetPictureView, { poles: motor.poles });
}

const sentence = ({ poles }: MagnetPictureState): string => `${en.words(poles, poles / 2)} ${en.how}`;

const [INNER, OUTER, BELL] = [74, 96, 104];
/** Between more magnets than this there is no room for letters. */
const MOST_LETTERS = 28;
const DEGREES = 360;

const point = (radius: number, turns: number): string => {
  const angle = 2 * Math.PI * turns - Math.PI / 2;
  return `${(radius * Math.cos(angle)).toFixed(1)},${(radius * Math.sin(angle)).toFixed(1)}`;
};

/** A piece of the ring, from one share of a turn to another. */
function segment(from: number, to: number): string {
  const arc = (radius: number, way: 0 | 1, end: string) => `A${radius},${radius} 0 0 ${way} ${end}`;
  return `M${point(OUTER, from)}${arc(OUTER, 1, point(OUTER, to))}L${point(INNER, to)}${arc(INNER, 0, point(INNER, from))}Z`;
}

/** All magnets of one kind as one path: every second piece of the ring. */
function magnets(poles: number, first: 0 | 1): string {
  const gap = Math.min(0.006, 0.12 / poles);
  let path = "";
  for (let i = first; i < poles; i += 2) path += segment((i - 0.5) / poles + gap, (i + 0.5) / poles - gap);
  return path;
}

/** One electrical turn: the bow over the first pair. */
function pairBow(poles: number): string {
  const [from, to] = [-0.5 / poles, 1.5 / poles];
  // Two magnets are the whole ring: a bow from end to end would have no length.
  const end = poles === 2 ? to - 0.01 : to;
  return `M${point(BELL + 7, from)}A${BELL + 7},${BELL + 7} 0 ${poles === 2 ? 1 : 0} 1 ${point(BELL + 7, end)}`;
}

const magnetPictureView: View<MagnetPictureState> = {
  name: "magnet-picture",
  words: (state) => `${en.title}. ${sentence(state)}`,
  mount(host) {
    const doc = host.ownerDocument;
    const north = new Pen(svgEl(doc, "path", { class: "magnet north" }));
    const south = new Pen(svgEl(doc, "path", { class: "magnet south" }));
    const bow = new Pen(svgEl(doc, "path", { class: "magnet-pair" }));
    const letters = svgEl(doc, "g", { class: "magnet-letters" });
    const mark = svgEl(doc, "line", { class: "bell-mark", y1: -BELL, y2: -BELL - 12 });
    const bell = new Pen(
      svgEl(
        doc,
        "g",
        {},
        svgEl(doc, "circle", { class: "bell", r: BELL }),
        north.element,
        south.element,
        letters,
        bow.element,
        mark,
      ),
    );
    const coils = svgEl(
      doc,
      "g",
      { class: "coils" },
      svgEl(doc, "circle", { r: INNER - 6 }),
      svgEl(doc, "circle", { class: "shaft", r: 9 }),
      svgEl(doc, "text", { y: -28, "text-anchor": "middle" }, "coils"),
    );
    const needle = new Pen(svgEl(doc, "line", { class: "count-needle", y1: 8, y2: -44 }));
    const count = new Pen(svgEl(doc, "text", { class: "count", y: 84, "text-anchor": "middle" }));
    const under = svgEl(doc, "text", { y: 104, "text-anchor": "middle" }, en.counted);
    const dial = svgEl(
      doc,
      "g",
      { class: "count-dial", transform: "translate(292,118)" },
      svgEl(doc, "circle", { r: 50 }),
      svgEl(doc, "line", { class: "tick", y1: -50, y2: -42 }),
      needle.element,
      svgEl(doc, "circle", { class: "shaft", r: 4 }),
      count.element,
      under,
    );
    const svg = svgEl(
      doc,
      "svg",
      { role: "img", viewBox: "0 0 370 252" },
      svgEl(doc, "g", { transform: "translate(126,128)" }, bell.element, coils),
      dial,
    );
    const range = el(doc, "input", { type: "range", min: 0, max: DEGREES, step: 1, value: 0 });
    const label = el(doc, "label", { class: "page-number" }, el(doc, "span", {}, en.turn), range);
    const caption = el(doc, "figcaption");
    host.append(el(doc, "figure", { class: "magnets", "data-picture": "magnets" }, svg, label, caption));
    let poles = 0;
    const turn = () => {
      const turns = Number(range.value) / DEGREES;
      const counted = (turns * poles) / 2;
      bell.set("transform", `rotate(${range.value})`);
      needle.set("transform", `rotate(${((counted % 1) * DEGREES).toFixed(1)})`);
      count.text(formatNumber(counted, 2));
      setAttribute(range, "aria-valuetext", en.turned(formatNumber(turns, 2), formatNumber(counted, 2)));
    };
    range.addEventListener("input", turn);
    return (state) => {
      if (state.poles === poles) return;
      poles = state.poles;
      north.set("d", magnets(poles, 0));
      south.set("d", magnets(poles, 1));
      bow.set("d", pairBow(poles));
      const named = poles <= MOST_LETTERS ? poles : 0;
      letters.replaceChildren(
        ...Array.from({ length: named }, (_, i) => {
          const [x = "0", y = "0"] = point((INNER + OUTER) / 2, i / poles).split(",");
          return svgEl(doc, "text", { x, y, dy: "0.35em", "text-anchor": "middle" }, i % 2 === 0 ? "N" : "S");
        }),
      );
      setAttribute(svg, "aria-label", sentence(state));
      setText(caption, sentence(state));
      turn();
    };
  },
};
