/** Elements that are made once and used again: a list grows when a state needs more, and hides what it does not need. */
import type { Pen } from "#view/dom";

/** What a slot is drawn with. */
export interface Slot {
  /** Its outermost element, shown and hidden as a whole. */
  readonly group: Pen;
  /** An element of it in another layer; whoever draws the slot shows it, a slot left over hides it. */
  readonly outside?: { show(shown: boolean): void };
}

export class Slots<S extends Slot> {
  readonly #make: () => S;
  readonly #all: S[] = [];

  constructor(make: () => S) {
    this.#make = make;
  }

  /** Every slot made so far, also those left over. */
  get all(): readonly S[] {
    return this.#all;
  }

  /** Draws each item in a slot of its own, in order, and hides the slots left over. */
  draw<T>(items: readonly T[], put: (slot: S, item: T, index: number) => void): void {
    for (let i = 0; i < items.length; i++) {
      let slot = this.#all[i];
      if (!slot) {
        slot = this.#make();
        this.#all.push(slot);
      }
      slot.group.show(true);
      put(slot, items[i] as T, i);
    }
    for (let i = items.length; i < this.#all.length; i++) {
      this.#all[i]!.group.show(false);
      this.#all[i]!.outside?.show(false);
    }
  }
}
