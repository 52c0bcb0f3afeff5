/**
 * A claim in words, tied to what makes it true. On the reader's machine it says what holds there; on the machine with which
 * the pages are drawn it has to hold, or the site isn't built.
 */
import { failed } from "#view/claims";
import { el, setText } from "#view/dom";
import { type Shown, show, type View } from "#view/shown";

interface ClaimState {
  readonly holds: boolean;
  readonly claim: string;
  readonly words: string;
}

/** Words that stand where `condition` holds, and `otherwise` where it doesn't. */
export function holds(condition: boolean, claim: string, otherwise: string): Shown<ClaimState> {
  return show(claimView, { holds: condition, claim, words: condition ? claim : otherwise });
}

/** The same as a text, for what blocks say: the answers to a guess, or a label. */
export function holdsText(condition: boolean, claim: string, otherwise: string): string {
  if (import.meta.env?.SSR && !condition) failed.add(claim);
  return condition ? claim : otherwise;
}

const claimView: View<ClaimState> = {
  name: "claim",
  words: ({ words }) => words,
  mount(host) {
    const span = el(host.ownerDocument, "span", { class: "claim" });
    host.append(span);
    return (state) => {
      setText(span, state.words);
      // Whoever draws the pages looks for this, and says which claim has failed.
      if (state.holds) delete span.dataset.fails;
      else span.dataset.fails = state.claim;
    };
  },
};
