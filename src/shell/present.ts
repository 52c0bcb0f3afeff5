/**
 * The presenting view: the page in large type, one thing at a time, for a room. The same cells go on working; nothing is
 * copied, all but the present stage is hidden. The address says that it is on, and where: `?present=3`.
 */
import { type Asked, askedOn } from "#blocks/asked";
import { askRoomAt, isAnswered, revealed } from "#blocks/room-guesses";
import { onAnswer } from "#view/answers";
import { el, setText } from "#view/dom";
import { enPresent as en } from "#view/words/en-present";
import { enRoom } from "#view/words/en-room-guesses";
import { listenToHand } from "./present-hand.ts";
import { showPointer } from "./present-pointer.ts";
import { asItWas, enlarge } from "./present-size.ts";
import { type Stage, stagesOf } from "./present-stages.ts";
import "./present.css";

const PARAMETER = "present";

let leaveNow: ((keepAddress?: boolean) => void) | null = null;

/** The address with the stage in it, or without any. */
function addressFor(at: number | null): string {
  const url = new URL(location.href);
  if (at === null) url.searchParams.delete(PARAMETER);
  else url.searchParams.set(PARAMETER, String(at + 1));
  return `${url.pathname}${url.search}${url.hash}`;
}

/** Which stage the address asks for, from 0; null when it doesn't ask for the view. */
function stageAsked(): number | null {
  const asked = new URLSearchParams(location.search).get(PARAMETER);
  if (asked === null) return null;
  const place = Number.parseInt(asked, 10);
  return Number.isFinite(place) && place > 0 ? place - 1 : 0;
}

/** Begins to present this page; `anew` when the reader comes from the page itself and may want to go back to it. */
export function present(doc: Document, anew = false): void {
  const page = doc.querySelector<HTMLElement>(".page");
  if (!page || leaveNow) return;
  if (anew) history.pushState(history.state, "", addressFor(0));
  leaveNow = open(doc, page, stageAsked() ?? 0);
}

/** Follows the reader's back and forward buttons into the view and out of it. */
export function followAddress(doc: Document): void {
  addEventListener("popstate", () => {
    if (stageAsked() === null) leaveNow?.(true);
    else present(doc);
  });
}

function open(doc: Document, page: HTMLElement, first: number): (keepAddress?: boolean) => void {
  let stages = stagesOf(page);
  let at = Math.min(first, stages.length - 1);
  let shown: Stage = [];
  const count = el(doc, "p", { class: "present-count", role: "status" });
  const hint = el(doc, "p", { class: "present-hint" }, en.hint);
  const askButton = el(doc, "button", { type: "button", class: "quiet present-ask" }, enRoom.ask);
  const edge = (kind: "back" | "next", move: () => void) => {
    const button = el(doc, "button", { type: "button", class: `present-edge is-${kind}`, "aria-label": en[kind] });
    button.addEventListener("click", move);
    return button;
  };
  const askedHere = (): Asked | undefined =>
    askedOn(doc).find(({ element }) => shown.some((part) => part.contains(element)));

  // A frame that was waited for may come when the view has been left.
  const refit = () => doc.body.dataset.presenting !== undefined && enlarge(page, shown);
  const later = () => requestAnimationFrame(() => requestAnimationFrame(refit));
  const settle = () => shown[0]?.focus({ preventScroll: true });
  const put = (next: number) => {
    for (const part of shown) {
      part.classList.remove("on-stage");
      part.removeAttribute("tabindex");
    }
    at = next;
    shown = stages[at] ?? [];
    for (const part of shown) part.classList.add("on-stage");
    shown[0]?.setAttribute("tabindex", "-1");
    doc.body.dataset.presenting = String(at + 1);
    const asked = askedHere();
    if (asked) asked.element.append(askButton);
    else askButton.remove();
    setText(count, en.count(at + 1, stages.length));
    hint.hidden = at !== 0;
    history.replaceState(history.state, "", addressFor(at));
    enlarge(page, shown);
    // Plots that were hidden take their true width a frame later.
    later();
    scrollTo(0, 0);
    settle();
  };
  /** What the page shows may have changed since: the stages are taken anew, from the one that is on. */
  const go = (by: number) => {
    const here = shown[0];
    stages = stagesOf(page);
    const now = stages.findIndex((stage) => here !== undefined && stage.includes(here));
    put(Math.min(Math.max((now < 0 ? at : now) + by, 0), stages.length - 1));
  };
  const next = () => {
    const asked = askedHere();
    // The guess first; the answer is a step of its own.
    if (asked && !isAnswered(asked)) return revealed(asked);
    if (at < stages.length - 1) return go(1);
    doc.querySelector<HTMLAnchorElement>(".turn a[rel=next]")?.click();
  };
  askButton.addEventListener("click", () => {
    const asked = askedHere();
    if (!asked) return;
    askRoomAt(asked);
    enlarge(page, shown);
    asked.element.querySelector<HTMLElement>(".room input, .room textarea")?.focus();
  });

  const links = [...page.querySelectorAll<HTMLAnchorElement>(".turn a")];
  for (const link of links) link.search = `?${PARAMETER}`;
  const parts = [edge("back", () => go(-1)), edge("next", next), count, hint];
  (doc.querySelector("main") ?? doc.body).append(...parts);
  const stops = [
    showPointer(doc),
    onAnswer(later),
    listenToHand(doc, {
      next,
      back: () => go(-1),
      first: () => put(0),
      last: () => put(stages.length - 1),
      leave: () => leaveNow?.(),
      machine: () => doc.body.classList.toggle("with-machine"),
      fill: () => void (doc.fullscreenElement ? doc.exitFullscreen() : doc.documentElement.requestFullscreen()),
      blank: () => doc.body.classList.toggle("is-blank"),
      settle,
    }),
  ];
  addEventListener("resize", refit);
  put(at);

  return (keepAddress = false) => {
    leaveNow = null;
    for (const stop of stops) stop();
    removeEventListener("resize", refit);
    for (const part of [...parts, askButton]) part.remove();
    for (const link of links) link.search = "";
    const here = shown[0];
    for (const part of shown) part.classList.remove("on-stage");
    delete doc.body.dataset.presenting;
    doc.body.classList.remove("with-machine", "is-blank");
    asItWas(page);
    if (!keepAddress) history.replaceState(history.state, "", addressFor(null));
    here?.scrollIntoView({ block: "center" });
    here?.focus({ preventScroll: true });
    here?.addEventListener("blur", () => here.removeAttribute("tabindex"), { once: true });
  };
}
