/** The main rotor from above, blades at their true proportions, with the tip's speed and the pull at the bolt. */
import type { Figures } from "#figures/figures";
import { massOfWeight } from "#model/weights";
import { el, Pen, setAttribute, setText, svgEl } from "#view/dom";
import { formatValue } from "#view/format";
import { type Shown, show, type View } from "#view/shown";
import { enBlades } from "#view/words/en-blades";

const en = enBlades.disc;

interface DiscState {
  readonly blades: number;
  readonly diameterMm: number;
  /** Shares of the radius. */
  readonly chord: number;
  readonly root: number;
  readonly centre: number;
  /** m/s, N */
  readonly tipSpeed: number;
  readonly pull: number;
}

/** The rotor of a machine as a picture, at a mode's set speed. */
export function discPicture(figures: Figures, mode = 0): Shown<DiscState> {
  const { blades, diameterMm, chordMm, rootCutoutMm, bladeCentreMm } = figures.machine.mainRotor;
  const radius = diameterMm / 2;
  return show<DiscState>(discView, {
    blades,
    diameterMm,
    chord: chordMm / radius,
    root: rootCutoutMm / radius,
    centre: bladeCentreMm / radius,
    tipSpeed: figures.number("tip-speed", mode) ?? 0,
    pull: figures.number("blade-pull", mode) ?? 0,
  });
}

const tipText = ({ tipSpeed }: DiscState) => formatValue(tipSpeed, "m/s", { decimals: 0 });
const pullText = ({ pull }: DiscState) => formatValue(pull, "N");
const massText = ({ pull }: DiscState) => formatValue(massOfWeight(pull), "kg", { decimals: 0 });

const sentence = (state: DiscState): string =>
  `${en.words(state.blades, formatValue(state.diameterMm, "mm", { decimals: 0 }), tipText(state))} ${en.pull(pullText(state), massText(state))}`;

const RADIUS = 108;
/** The blade that is lettered stands at this angle, degrees clockwise from the right. */
const FIRST = -20;

const discView: View<DiscState> = {
  name: "disc-picture",
  words: (state) => `${en.title}. ${sentence(state)}`,
  mount(host) {
    const doc = host.ownerDocument;
    const blades = new Pen(svgEl(doc, "path", { class: "disc-blades" }));
    const mass = new Pen(svgEl(doc, "circle", { class: "disc-mass", r: 4.5 }));
    const pull = new Pen(svgEl(doc, "path", { class: "disc-pull" }));
    const first = svgEl(doc, "g", { transform: `rotate(${FIRST})` }, pull.element, mass.element);
    const tip = svgEl(doc, "path", {
      class: "disc-tip",
      d: `M${RADIUS},0v46m-5,-9l5,9l5,-9`,
      transform: `rotate(${FIRST})`,
    });
    const text = (y: number, label: string) => {
      const figure = new Pen(svgEl(doc, "text", { class: "volts", x: 282, y }));
      return { figure, label: svgEl(doc, "text", { x: 282, y: y + 18 }, label) };
    };
    const [speed, force, weight] = [text(70, en.tip), text(126, en.bolt), text(182, en.hung)];
    const svg = svgEl(
      doc,
      "svg",
      { role: "img", viewBox: "0 0 430 246" },
      svgEl(
        doc,
        "g",
        { transform: "translate(124,122)" },
        svgEl(doc, "circle", { class: "disc-path", r: RADIUS }),
        blades.element,
        svgEl(doc, "circle", { class: "disc-hub", r: 5 }),
        first,
        tip,
      ),
      ...[speed, force, weight].flatMap(({ figure, label }) => [figure.element, label]),
    );
    const caption = el(doc, "figcaption");
    host.append(el(doc, "figure", { class: "disc-picture", "data-picture": "rotor-disc" }, svg, caption));
    let said = "";
    return (state) => {
      const root = Math.min(state.root, 1) * RADIUS;
      // A very broad blade is drawn as broad as it still looks like one.
      const chord = Math.min(state.chord, 1) * RADIUS;
      let path = "";
      for (let i = 0; i < state.blades; i++) {
        const angle = ((FIRST + (360 * i) / state.blades) * Math.PI) / 180;
        const at = (along: number, across: number) =>
          `${(along * Math.cos(angle) - across * Math.sin(angle)).toFixed(1)},${(along * Math.sin(angle) + across * Math.cos(angle)).toFixed(1)}`;
        path += `M${at(0, 0)}L${at(root, 0)}M${at(root, 0.7 * chord)}L${at(RADIUS, 0.7 * chord)}L${at(RADIUS, -0.3 * chord)}L${at(root, -0.3 * chord)}Z`;
      }
      blades.set("d", path);
      const centre = Math.min(state.centre, 1) * RADIUS;
      mass.set("cx", centre.toFixed(1));
      pull.set("d", `M${centre.toFixed(1)},0H${RADIUS + 22}m-9,-5l9,5l-9,5`);
      speed.figure.text(tipText(state));
      force.figure.text(pullText(state));
      weight.figure.text(massText(state));
      const next = sentence(state);
      if (next === said) return;
      said = next;
      setAttribute(svg, "aria-label", discView.words(state));
      setText(caption, next);
    };
  },
};
