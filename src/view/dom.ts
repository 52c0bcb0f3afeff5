/**
 * The few helpers with which parts build and change their elements. They work on any document, also on a light one
 * without layout in which pages are set before a browser sees them, so they never read sizes and never write styles.
 */
const SVG = "http://www.w3.org/2000/svg";

type Attributes = Readonly<Record<string, string | number | boolean | undefined>>;

function fill<E extends Element>(element: E, attributes: Attributes, children: readonly (Node | string)[]): E {
  for (const name in attributes) {
    const value = attributes[name];
    if (value === undefined || value === false) continue;
    element.setAttribute(name, value === true ? "" : String(value));
  }
  if (children.length > 0) element.append(...children);
  return element;
}

/** A new HTML element. An attribute that is `false` or not given is left out; text becomes text, never markup. */
export function el<K extends keyof HTMLElementTagNameMap>(
  doc: Document,
  tag: K,
  attributes: Attributes = {},
  ...children: readonly (Node | string)[]
): HTMLElementTagNameMap[K] {
  return fill(doc.createElement(tag), attributes, children);
}

/** A new SVG element, likewise. */
export function svgEl<K extends keyof SVGElementTagNameMap>(
  doc: Document,
  tag: K,
  attributes: Attributes = {},
  ...children: readonly (Node | string)[]
): SVGElementTagNameMap[K] {
  return fill(doc.createElementNS(SVG, tag), attributes, children);
}

/** Sets an element's text, touching the page only when it differs. The text that stands there is changed rather than replaced. */
export function setText(element: Element, text: string): void {
  const only = element.firstChild;
  if (only?.nodeType === 3 && !only.nextSibling) {
    if ((only as Text).data !== text) (only as Text).data = text;
  } else if (only || text !== "") element.textContent = text;
}

/** Sets or (with null) takes away an attribute, touching the page only when it differs. */
export function setAttribute(element: Element, name: string, value: string | null): void {
  if (element.getAttribute(name) === value) return;
  if (value === null) element.removeAttribute(name);
  else element.setAttribute(name, value);
}

/** Hides or shows an element, touching the page only when that differs. */
export function setHidden(element: HTMLElement, hidden: boolean): void {
  if (element.hidden !== hidden) element.hidden = hidden;
}

/**
 * An element whose attributes are written again and again, many times a second. It remembers what it wrote, so an
 * unchanged value costs a comparison and no call into the page. Nobody else may write the same attributes.
 */
export class Pen<E extends Element = Element> {
  readonly element: E;
  #written = new Map<string, string | number>();
  #text: string | null = null;

  constructor(element: E) {
    this.element = element;
  }

  set(name: string, value: string | number): void {
    if (this.#written.get(name) === value) return;
    this.#written.set(name, value);
    this.element.setAttribute(name, String(value));
  }

  text(text: string): void {
    if (this.#text === text) return;
    this.#text = text;
    setText(this.element, text);
  }

  /** Shows or hides an SVG element with all in it, by an attribute of its own, so that no style is written. */
  show(shown: boolean): void {
    this.set("display", shown ? "inline" : "none");
  }
}
