/**
 * The chain of the machine, drawn on every page: throttle, governor, controller, motor, gears, rotor, tail, pack. What
 * the last change touched lights up, and so does what follows from it. A part opens its section of the parts panel.
 */
import type { Bench } from "#machine/bench";
import { el, setText, svgEl } from "#view/dom";
import { type Shown, show, type View } from "#view/shown";
import { en } from "#view/words/en";
import { drawings } from "./chain-drawings.ts";
import { type Light, lightsFor, type Part, parts } from "./chain-links.ts";
import type { Section } from "./parts-list.ts";
import { openSection } from "./parts-panel.ts";

const sectionOf: Readonly<Record<Part, Section>> = {
  throttle: "modes",
  governor: "learned",
  controller: "controller",
  motor: "motor",
  gears: "gears",
  rotor: "mainRotor",
  tail: "tailRotor",
  pack: "pack",
};

const spoken: Readonly<Record<Light, string>> = { touched: en.chain.touched, follows: en.chain.follows, "": "" };

/** Draws the chain in its host; it follows the bench from then on. */
export function mountChain(host: HTMLElement, bench: Bench): void {
  const doc = host.ownerDocument;
  const links = parts.map((part) => {
    const drawing = svgEl(doc, "svg", { viewBox: "0 0 48 34", "aria-hidden": "true", focusable: "false" });
    for (const d of drawings[part]) drawing.append(svgEl(doc, "path", { d }));
    // Read when a reader comes by, never spoken by itself: it changes with every step of a drag.
    const state = el(doc, "span", { class: "heard" });
    const button = el(doc, "button", { type: "button" }, drawing, el(doc, "span", {}, en.chain.parts[part]), state);
    button.addEventListener("click", () => openSection(doc, sectionOf[part]));
    return { part, item: el(doc, "li", { "data-part": part }, button), state, light: "" as Light };
  });
  const list = el(doc, "ol", { class: "chain", "aria-label": en.chain.title }, ...links.map(({ item }) => item));
  host.replaceChildren(list);

  let seen = bench.version;
  let paths: readonly string[] = [];
  let placed = false;
  const stop = bench.subscribe(() => {
    if (host.isConnected) placed = true;
    else if (placed) return stop();
    // The same fields in a row, as in a drag, light the same parts.
    if (bench.version === seen || sameList(paths, bench.changedPaths)) return;
    seen = bench.version;
    paths = bench.changedPaths;
    const lights = lightsFor(paths);
    for (const link of links) {
      const light = lights[link.part];
      if (light === link.light) continue;
      link.light = light;
      link.item.dataset.light = light;
      setText(link.state, spoken[light]);
    }
  });
}

const sameList = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length && a.every((item, i) => item === b[i]);

const chainView: View<null> = {
  name: "chain",
  words: () => `${en.chain.title}: ${parts.map((part) => en.chain.parts[part]).join(", ")}.`,
  mount(host, bench) {
    mountChain(host, bench);
    return () => {};
  },
};

/** The chain as something that a cell shows. */
export const chain = (): Shown<null> => show(chainView, null);
