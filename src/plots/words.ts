/** Words on a plot, in one line or in two. */
import { Pen, svgEl } from "#view/dom";
import { LINE } from "./labels.ts";

/** Words stand on whole pixels: sharper, and set anew less often. */
const whole = Math.round;

/** One text; each of its lines is an element of its own, which a browser sets faster than one with parts. */
export class Words {
  readonly #lines: readonly [Pen, Pen];
  readonly #group: Pen;

  constructor(parent: Element) {
    const doc = parent.ownerDocument;
    this.#lines = [new Pen(svgEl(doc, "text")), new Pen(svgEl(doc, "text"))];
    this.#group = new Pen(svgEl(doc, "g", {}, ...this.#lines.map((line) => line.element)));
    parent.append(this.#group.element);
  }

  show(shown: boolean): void {
    this.#group.show(shown);
  }

  /** Sets the lines, the first of them with its baseline at `y`. `ink` names the mark that they belong to; upright words read upwards around `x` and `y`. */
  put(ink: string, lines: readonly string[], x: number, y: number, anchor: string, upright = false): void {
    this.#group.show(true);
    this.#group.set("class", `words ${ink}`);
    this.#group.set("text-anchor", anchor);
    this.#group.set("transform", upright ? `rotate(-90,${whole(x)},${whole(y)})` : "");
    for (let i = 0; i < 2; i++) {
      const line = this.#lines[i]!;
      const text = lines[i] ?? "";
      line.text(text);
      if (text === "") continue;
      line.set("x", whole(x));
      line.set("y", whole(y + i * (LINE - 1)));
    }
  }
}
