/** What sliders, boxes and inline numbers have in common: reading, proposing and stepping a numeric field. */
import type { Problem } from "#machine/bench";
import { type Field, fieldAt } from "#machine/fields";
import { fieldFor, inputValue, voltagePath } from "#machine/voltage";
import { aimed, propose, type Socket } from "./bound.ts";
import { boxText, figureText, readTyped, tidied, withUnit } from "./typed.ts";

export interface NumberWork {
  readonly path: string;
  /** The field as it is on the present machine: the limits of some follow other fields. */
  field(): Field;
  /** The present value; null where the machine has none. */
  value(): number | null;
  /** The present value as its box holds it, and as it stands in the text; "" where there is none. */
  text(): string;
  figure(): string;
  words(): string;
  take(text: string): Problem | null;
  set(value: number | null, gesture?: string): Problem | null;
  /** The value so many steps away, kept inside the limits; null where there is nothing to step from. */
  stepped(steps: number, from?: number): number | null;
}

/** `none` are the words for a value that is null; with them, a blank box means null. */
export function numberWork(socket: Socket, path: string, none: string | null = null): NumberWork {
  const fixed = path === voltagePath ? null : fieldAt(path);
  const field = () => fixed ?? fieldFor(aimed(socket), path);
  const value = () => {
    const found = inputValue(aimed(socket), path);
    return typeof found === "number" ? found : null;
  };
  const set = (next: number | null, gesture?: string) => propose(socket, path, next, gesture);
  const written = (write: (value: number, field: Field) => string) => () => {
    const now = value();
    return now === null ? "" : write(now, field());
  };
  return {
    path,
    field,
    value,
    set,
    text: written(boxText),
    figure: written(figureText),
    words() {
      const now = value();
      return now === null ? (none ?? "") : withUnit(now, field());
    },
    take(text) {
      if (none !== null && text.trim() === "") return set(null);
      // What is no number goes on as text: the validator has the words for it.
      return propose(socket, path, readTyped(text, field()) ?? text);
    },
    stepped(steps, from = value() ?? undefined) {
      if (from === undefined) return null;
      const { step, min, max } = field();
      // From between two steps the first step goes to the next one, as a native slider does.
      const place = from / step;
      const start =
        Math.abs(place - Math.round(place)) < 1e-6
          ? Math.round(place)
          : steps > 0
            ? Math.floor(place)
            : Math.ceil(place);
      return tidied(Math.min(max, Math.max(min, (start + steps) * step)));
    },
  };
}
