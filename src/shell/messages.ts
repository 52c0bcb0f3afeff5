/**
 * The place for what the workbook has to say: results quietly, problems at once, both until somebody closes them. It
 * lies over the page's edge, so that nothing moves when a message comes.
 */
import { el } from "#view/dom";
import { type Shown, show, type View } from "#view/shown";
import { en } from "#view/words/en";

export interface Message {
  readonly words: string;
  readonly kind: "result" | "problem";
  /** Single points under the words. */
  readonly points?: readonly string[];
  /** Something to copy by hand. */
  readonly copy?: string;
  readonly action?: { readonly words: string; run(): void };
  /** A later message on the same subject takes the place of this one. */
  readonly subject?: string;
}

/** More points than this are only counted. */
const MOST_POINTS = 6;
const MOST_MESSAGES = 3;

let regions: { result: HTMLElement; problem: HTMLElement; quiet: HTMLElement } | null = null;
let early: Message[] = [];

/** Puts a message up. Messages that come before there is a place for them wait for it. */
export function say(message: Message): void {
  if (!regions) {
    early.push(message);
    return;
  }
  const region = regions[message.kind];
  const subject = message.subject ?? "";
  for (const old of [...region.parentElement!.querySelectorAll<HTMLElement>(".message")]) {
    if (subject !== "" && old.dataset.subject === subject) old.remove();
  }
  while (region.children.length >= MOST_MESSAGES) region.firstElementChild?.remove();
  region.append(messageElement(region.ownerDocument, message));
}

/** Says something to screen readers alone: what everybody else sees happen. */
export function sayQuietly(words: string): void {
  if (regions) regions.quiet.textContent = words;
}

/** Takes the messages on a subject away: it is settled. */
export function settle(subject: string): void {
  early = early.filter((message) => message.subject !== subject);
  for (const region of regions ? Object.values(regions) : [])
    for (const old of [...region.children]) if ((old as HTMLElement).dataset.subject === subject) old.remove();
}

function messageElement(doc: Document, { words, kind, points = [], copy, action, subject = "" }: Message): HTMLElement {
  const element = el(doc, "div", { class: `message is-${kind}`, "data-subject": subject }, el(doc, "p", {}, words));
  if (points.length > 0) {
    const shown = points.slice(0, MOST_POINTS).map((point) => el(doc, "li", {}, point));
    if (points.length > MOST_POINTS) shown.push(el(doc, "li", {}, en.messages.more(points.length - MOST_POINTS)));
    element.append(el(doc, "ul", {}, ...shown));
  }
  if (copy !== undefined) {
    const box = el(doc, "input", { type: "text", readonly: true, class: "copy", "aria-label": en.messages.link });
    box.value = copy;
    box.addEventListener("focus", () => box.select());
    element.append(box);
  }
  const buttons = el(doc, "div", { class: "message-buttons" });
  if (action) {
    const act = el(doc, "button", { type: "button" }, action.words);
    act.addEventListener("click", () => {
      element.remove();
      action.run();
    });
    buttons.append(act);
  }
  const close = el(
    doc,
    "button",
    { type: "button", class: "quiet", "aria-label": en.messages.dismiss },
    en.messages.close,
  );
  close.addEventListener("click", () => element.remove());
  buttons.append(close);
  element.append(buttons);
  return element;
}

const messagesView: View<null> = {
  name: "messages",
  words: () => "",
  mount(host) {
    const doc = host.ownerDocument;
    regions = {
      result: el(doc, "div", { role: "status" }),
      problem: el(doc, "div", { role: "alert" }),
      quiet: el(doc, "div", { class: "heard", role: "status" }),
    };
    const region = el(doc, "section", { class: "messages", "aria-label": en.messages.title });
    region.append(regions.problem, regions.result, regions.quiet);
    host.replaceChildren(region);
    for (const message of early.splice(0)) say(message);
    return () => {};
  },
};

/** The place for messages. */
export const messages = (): Shown<null> => show(messagesView, null);
