/** Pinion and main gear, drawn to their tooth counts and in mesh, turning at their true ratio when the reader wants it. */
import type { Machine } from "#machine/machine";
import { ratioOf, toothMeeting } from "#model/gears";
import { pinionFit } from "#model/gears-mesh";
import { el, setAttribute, setText, svgEl } from "#view/dom";
import { formatNumber, formatValue } from "#view/format";
import { type Shown, show, type View } from "#view/shown";
import { enBlocks as en } from "#view/words/en-blocks";
import { enGears } from "#view/words/en-gears";
import { facing, outline, piece, pushing, someTeeth } from "./gear-shapes.ts";

interface GearPictureOptions {
  /** Teeth of another pinion, drawn dashed where it would have to stand. */
  readonly other?: number;
  /** Fills in one tooth of the pinion and all that it meets. */
  readonly meeting?: boolean;
}

interface GearPictureState {
  readonly pinion: number;
  readonly main: number;
  readonly ratio: number;
  readonly other: number | null;
  /** How far the motor moves away from the main gear for the other pinion, mm. */
  readonly shiftMm: number;
  readonly meeting: boolean;
}

/** The gears of a machine as a picture. */
export function gearPicture(machine: Machine, options: GearPictureOptions = {}): Shown<GearPictureState> {
  const { pinionTeeth, mainTeeth, moduleMm } = machine.gears;
  const other = options.other ?? null;
  return show<GearPictureState>(gearPictureView, {
    pinion: pinionTeeth,
    main: mainTeeth,
    ratio: ratioOf(machine.gears),
    other,
    shiftMm: other === null ? 0 : 1000 * pinionFit(moduleMm / 1000, pinionTeeth, other).shift,
    meeting: options.meeting ?? false,
  });
}

function sentence({ pinion, main, ratio, other, shiftMm, meeting }: GearPictureState): string {
  const meets = toothMeeting(pinion, main);
  const meet = meets ? `${(meets.common === 1 ? en.gears.hunting : en.gears.meet)(meets.pinionTurns)} ` : "";
  if (meeting && meets) return `${meet}${enGears.picture.met(meets.pinionTurns, main)} ${en.gears.slowed}`;
  const ratioWords = en.gears.words(pinion, main, formatNumber(ratio, 2));
  if (other === null) return `${ratioWords} ${meet}${en.gears.slowed}`;
  const way = shiftMm > 0 ? enGears.picture.away : enGears.picture.towards;
  const moved = enGears.picture.moves(
    other,
    formatValue(Math.abs(shiftMm), "mm", { decimals: 2, units: "metric" }),
    way,
  );
  return `${ratioWords} ${other === pinion ? enGears.picture.stays : moved} ${en.gears.slowed}`;
}

/** Pitch diameters add up to this many units, whatever the tooth counts. */
const ACROSS = 270;
const MARGIN = 8;
const MIDDLE = 144;
const TURN_SECONDS = 40;

/** The glass beside the gears, under which the place where they meet is seen large. */
const GLASS = { x: 372, radius: 68, most: 6 } as const;
let pictures = 0;

/** A gear: its teeth, those filled in, its hub, and a mark by which the eye follows a turn. */
function gear(doc: Document, name: string) {
  const teeth = svgEl(doc, "path", { class: "gear-teeth" });
  const met = svgEl(doc, "path", { class: "gear-met" });
  const hub = svgEl(doc, "circle", { class: "gear-hub", r: 5 });
  const mark = svgEl(doc, "line", { class: "gear-mark", y1: 0, y2: 0 });
  const turning = svgEl(doc, "g", {}, teeth, met, hub, mark);
  const group = svgEl(doc, "g", { class: name }, turning);
  return { group, turning, teeth, met, mark };
}

/** Both gears and, dashed, the other pinion, with the main gear's axis at the origin and a module of `m` px. */
function gears(doc: Document) {
  const [pinion, main, other] = [gear(doc, "gear-pinion"), gear(doc, "gear-main"), gear(doc, "gear-other")];
  const put = ({ group, mark }: ReturnType<typeof gear>, count: number, m: number, x: number, angle: number) => {
    setAttribute(mark, "x2", (0.4 * m * count).toFixed(1));
    setAttribute(group, "transform", `translate(${x.toFixed(1)},0) rotate(${angle.toFixed(2)})`);
  };
  return {
    pinion: pinion.turning,
    main: main.turning,
    group: svgEl(doc, "g", {}, main.group, pinion.group, other.group),
    /** `reach`: so many teeth of the main gear to either side are enough, as long as it stands still. */
    draw(state: GearPictureState, m: number, reach = state.main): void {
      const apart = (count: number) => (m * (count + state.main)) / 2;
      setAttribute(main.teeth, "d", piece(state.main, m, reach));
      setAttribute(pinion.teeth, "d", outline(state.pinion, m));
      put(main, state.main, m, 0, 0);
      // A tooth of the main gear points right; the pinion's gap has to face it.
      put(pinion, state.pinion, m, apart(state.pinion), facing(state.pinion));
      const meets = state.meeting ? toothMeeting(state.pinion, state.main) : null;
      setAttribute(main.met, "d", meets ? someTeeth(state.main, m, 0, meets.common) : "");
      const [first, only] = [pushing(state.pinion), state.pinion];
      setAttribute(pinion.met, "d", meets ? someTeeth(state.pinion, m, first, only) : "");
      const drawn = state.other !== null && state.other !== state.pinion ? state.other : null;
      setAttribute(other.group, "display", drawn === null ? "none" : "inline");
      if (drawn === null) return;
      setAttribute(other.teeth, "d", outline(drawn, m));
      put(other, drawn, m, apart(drawn), facing(drawn));
    },
  };
}

const gearPictureView: View<GearPictureState> = {
  name: "gear-picture",
  words: sentence,
  mount(host) {
    const doc = host.ownerDocument;
    pictures += 1;
    const clip = `gear-glass-${pictures}`;
    const [whole, large] = [gears(doc), gears(doc)];
    const lens = svgEl(doc, "circle", { class: "gear-lens", cy: MIDDLE });
    const ring = { cx: GLASS.x, cy: MIDDLE, r: GLASS.radius };
    const svg = svgEl(
      doc,
      "svg",
      { role: "img", viewBox: `0 0 448 ${2 * MIDDLE}` },
      svgEl(doc, "defs", {}, svgEl(doc, "clipPath", { id: clip }, svgEl(doc, "circle", ring))),
      whole.group,
      lens,
      svgEl(doc, "g", { "clip-path": `url(#${clip})` }, large.group),
      svgEl(doc, "circle", { ...ring, class: "gear-lens" }),
    );
    const caption = el(doc, "figcaption");
    const turn = el(doc, "button", { type: "button", class: "quiet" }, en.gears.turn);
    host.append(el(doc, "figure", { class: "gears", "data-picture": "gears" }, svg, caption, turn));
    let state: GearPictureState | null = null;
    let shown = "";
    let running: Animation[] = [];
    /** Module under the glass, px. */
    let seenLarge = 1;
    const stop = () => {
      for (const animation of running) animation.cancel();
      running = [];
      setText(turn, en.gears.turn);
    };
    const start = () => {
      if (!state) return;
      large.draw(state, seenLarge);
      const { pinion, main } = state;
      const spin = (element: SVGElement, seconds: number, way: 1 | -1) =>
        element.animate([{ transform: "rotate(0deg)" }, { transform: `rotate(${way * 360}deg)` }], {
          duration: seconds * 1000,
          iterations: Number.POSITIVE_INFINITY,
        });
      running = [whole, large].flatMap((pair) => [
        spin(pair.main, TURN_SECONDS, 1),
        spin(pair.pinion, (TURN_SECONDS * pinion) / main, -1),
      ]);
      setText(turn, en.gears.stop);
    };
    turn.addEventListener("click", () => (running.length > 0 ? stop() : start()));
    return (next) => {
      const key = Object.values(next).join(" ");
      if (key === shown) return;
      shown = key;
      const turned = state === null || state.pinion !== next.pinion || state.main !== next.main;
      const again = turned && running.length > 0;
      if (turned) stop();
      state = next;
      const bigger = Math.max(next.pinion, next.other ?? 0);
      const m = ACROSS / (bigger + next.main + 2.5);
      const axis = MARGIN + m + (m * next.main) / 2;
      whole.draw(next, m);
      setAttribute(whole.group, "transform", `translate(${axis.toFixed(1)},${MIDDLE})`);
      const zoom = Math.min(GLASS.most, Math.max(1, (1.5 * GLASS.radius) / (m * (bigger + 2))));
      // What is seen large lies around a place a little to the right of where the teeth meet.
      const look = (m * next.main) / 2 + (0.6 * GLASS.radius) / zoom;
      seenLarge = m * zoom;
      // Under the glass a few teeth are seen; all of them only when they come round.
      large.draw(
        next,
        seenLarge,
        running.length > 0 ? next.main : Math.ceil((2 * GLASS.radius) / (Math.PI * seenLarge)) + 1,
      );
      setAttribute(large.group, "transform", `translate(${(GLASS.x - zoom * look).toFixed(1)},${MIDDLE})`);
      setAttribute(lens, "cx", (axis + look).toFixed(1));
      setAttribute(lens, "r", (GLASS.radius / zoom).toFixed(1));
      setAttribute(svg, "aria-label", sentence(next));
      setText(caption, sentence(next));
      if (again) start();
    };
  },
};
