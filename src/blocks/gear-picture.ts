/** Pinion and main gear, drawn to their tooth counts and in mesh, turning at their true ratio when the reader wants it. */

import type { Machine } from "#machine/machine";
import { ratioOf, toothMeeting } from "#model/gears";
import { el, setText, svgEl } from "#view/dom";
import { formatNumber } from "#view/format";
import { type Shown, show, type View } from "#view/shown";
import { enBlocks as en } from "#view/words/en-blocks";

interface GearPictureState {
  readonly pinion: number;
  readonly main: number;
  readonly ratio: number;
}

/** The gears of a machine as a picture. */
export function gearPicture(machine: Machine): Shown<GearPictureState> {
  const { pinionTeeth, mainTeeth } = machine.gears;
  return show<GearPictureState>(gearPictureView, {
    pinion: pinionTeeth,
    main: mainTeeth,
    ratio: ratioOf(machine.gears),
  });
}

function sentence({ pinion, main, ratio }: GearPictureState): string {
  const meeting = toothMeeting(pinion, main);
  const meet = meeting ? (meeting.common === 1 ? en.gears.hunting : en.gears.meet)(meeting.pinionTurns) : "";
  return `${en.gears.words(pinion, main, formatNumber(ratio, 2))} ${meet} ${en.gears.slowed}`;
}

/** Pitch diameters add up to this many units, whatever the tooth counts. */
const ACROSS = 300;
const MARGIN = 8;
const TURN_SECONDS = 40;

/** Outline of a gear of module `m` around the origin, its first tooth pointing right: straight flanks are enough at this size. */
function outline(teeth: number, m: number): string {
  const [root, tip] = [(m * teeth) / 2 - 1.25 * m, (m * teeth) / 2 + m];
  const step = (2 * Math.PI) / teeth;
  const at = (radius: number, angle: number) =>
    `${(radius * Math.cos(angle)).toFixed(1)},${(radius * Math.sin(angle)).toFixed(1)}`;
  const points: string[] = [];
  for (let i = 0; i < teeth; i++) {
    const a = i * step;
    points.push(
      at(root, a - 0.34 * step),
      at(tip, a - 0.13 * step),
      at(tip, a + 0.13 * step),
      at(root, a + 0.34 * step),
    );
  }
  return `M${points.join("L")}Z`;
}

/** A gear: its teeth, its hub, and a mark by which the eye follows a turn. */
function gear(doc: Document, name: string) {
  const teeth = svgEl(doc, "path", { class: "gear-teeth" });
  const hub = svgEl(doc, "circle", { class: "gear-hub", r: 5 });
  const mark = svgEl(doc, "line", { class: "gear-mark", y1: 0, y2: 0 });
  const turning = svgEl(doc, "g", {}, teeth, hub, mark);
  const group = svgEl(doc, "g", { class: name }, turning);
  return { group, turning, teeth, mark };
}

const gearPictureView: View<GearPictureState> = {
  name: "gear-picture",
  words: sentence,
  mount(host) {
    const doc = host.ownerDocument;
    const [pinion, main] = [gear(doc, "gear-pinion"), gear(doc, "gear-main")];
    const svg = svgEl(doc, "svg", { role: "img", viewBox: "0 0 340 262" }, main.group, pinion.group);
    const caption = el(doc, "figcaption");
    const turn = el(doc, "button", { type: "button", class: "quiet" }, en.gears.turn);
    host.append(el(doc, "figure", { class: "gears", "data-plot": "gears" }, svg, caption, turn));
    let state: GearPictureState | null = null;
    let running: Animation[] = [];
    const stop = () => {
      for (const animation of running) animation.cancel();
      running = [];
      setText(turn, en.gears.turn);
    };
    const start = () => {
      if (!state) return;
      const spin = (element: SVGElement, seconds: number, way: 1 | -1) =>
        element.animate([{ transform: "rotate(0deg)" }, { transform: `rotate(${way * 360}deg)` }], {
          duration: seconds * 1000,
          iterations: Number.POSITIVE_INFINITY,
        });
      running = [
        spin(main.turning, TURN_SECONDS, 1),
        spin(pinion.turning, (TURN_SECONDS * state.pinion) / state.main, -1),
      ];
      setText(turn, en.gears.stop);
    };
    turn.addEventListener("click", () => (running.length > 0 ? stop() : start()));
    return (next) => {
      if (state?.pinion === next.pinion && state.main === next.main) return;
      const again = running.length > 0;
      stop();
      state = next;
      const m = ACROSS / (next.pinion + next.main + 2.5);
      const [r1, r2] = [(m * next.pinion) / 2, (m * next.main) / 2];
      const y = 131;
      main.teeth.setAttribute("d", outline(next.main, m));
      pinion.teeth.setAttribute("d", outline(next.pinion, m));
      main.mark.setAttribute("x2", (0.8 * r2).toFixed(1));
      pinion.mark.setAttribute("x2", (0.8 * r1).toFixed(1));
      const x = MARGIN + m + r2;
      main.group.setAttribute("transform", `translate(${x.toFixed(1)},${y})`);
      // A tooth of the main gear points right; the pinion's gap has to face it: half a step, if a tooth would face left.
      const facing = next.pinion % 2 === 0 ? 180 / next.pinion : 0;
      pinion.group.setAttribute(
        "transform",
        `translate(${(x + r1 + r2).toFixed(1)},${y}) rotate(${facing.toFixed(2)})`,
      );
      svg.setAttribute("aria-label", sentence(next));
      setText(caption, sentence(next));
      if (again) start();
    };
  },
};
