import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { choose } from "#blocks/guess";
import { createBench } from "#machine/bench";
import { followAddress, present } from "#shell/present";
import { stagesOf } from "#shell/present-stages";
import { answer, answersNow } from "#view/answers";

const words = (count: number) => Array.from({ length: count }, (_, i) => `word${i}`).join(" ");

/** A page with one of everything that a notebook makes. */
function page(): HTMLElement {
  const cell = (inner: string) => `<div data-cell="c">${inner}</div>`;
  document.body.innerHTML = `<main><div class="text"><article class="page">
    <p class="kicker">kicker</p><h1>question</h1>
    <div class="prose">
      <p id="p1">${words(30)}</p><p id="p2">${words(30)}</p><p id="p3">${words(10)}</p>
      ${cell('<div id="guess"></div><fieldset></fieldset>')}${cell("")}
      <h2 id="h2">heading</h2>
      ${cell('<select id="mode"></select>')}
      ${cell('<figure data-plot="x"></figure>')}
      <p id="p4">${words(12)}</p>
      ${cell('<p id="warning">says something</p>')}
      <details class="teacher"><summary>club</summary></details>
      ${cell('<ol class="exercises"></ol>')}
      <h2 id="glossary">all the words</h2>
      ${cell('<label class="word-finder"><input></label>')}
      <section class="word" id="duty"><h3>Duty</h3><p>${words(20)}</p></section>
      <h2 id="sum">in three lines</h2><ul id="lines"><li>one</li></ul><p id="bench">at the bench</p>
    </div>
    <p class="foot-does">foot</p>
    <nav class="turn"><a rel="prev" href="./a.html">a</a><a rel="next" href="#next-page">b</a></nav>
  </article></div></main>`;
  return document.querySelector<HTMLElement>(".page")!;
}

const nameOf = (element: HTMLElement): string =>
  element.id ||
  element.querySelector("[id], figure")?.id ||
  element.dataset.plot ||
  element.classList[0] ||
  element.tagName;

describe("the stages of a page", () => {
  it("are the question, some sentences, each guess, each plot with what leads to it, the summary, and the way on", () => {
    expect(stagesOf(page()).map((stage) => stage.map(nameOf))).toEqual([
      ["kicker", "H1"],
      ["p1"],
      ["p2", "p3"],
      ["guess"],
      ["h2", "mode", "DIV"],
      ["p4", "warning"],
      ["sum", "lines"],
      ["bench"],
      ["turn"],
    ]);
  });
});

describe("the presenting view", () => {
  const stage = () => [...document.querySelectorAll<HTMLElement>(".on-stage")].map(nameOf);
  const at = () => new URLSearchParams(location.search).get("present");
  const press = (key: string, target: Element = document.body, more: KeyboardEventInit = {}) =>
    target.dispatchEvent(new KeyboardEvent("keydown", { key, bubbles: true, cancelable: true, ...more }));
  const wipe = (from: number, to: number, target: Element = document.body) => {
    for (const [type, clientX] of [
      ["pointerdown", from],
      ["pointerup", to],
    ] as const) {
      target.dispatchEvent(
        new PointerEvent(type, {
          clientX,
          clientY: 9,
          pointerId: 1,
          pointerType: "touch",
          isPrimary: true,
          bubbles: true,
        }),
      );
    }
  };

  beforeEach(() => {
    vi.stubGlobal("scrollTo", () => {});
    Element.prototype.scrollIntoView = () => {};
    answer("present-test", null);
    history.replaceState(null, "", "/page.html?present=2#m=1a");
    page();
    present(document);
  });
  afterEach(() => {
    press("Escape");
    vi.unstubAllGlobals();
  });

  it("begins where the address says, and writes there how far it has come, with the machine still in it", () => {
    expect(stage()).toEqual(["p1"]);
    press("PageDown");
    expect([stage(), at(), location.hash]).toEqual([["p2", "p3"], "3", "#m=1a"]);
    expect(document.activeElement).toBe(document.querySelector("#p2"));
    expect(document.querySelector(".present-count")?.textContent).toBe("3 of 9");
  });

  it.each([
    ["ArrowRight", {}, "p2"],
    ["ArrowDown", {}, "p2"],
    [" ", {}, "p2"],
    ["PageDown", {}, "p2"],
    ["ArrowLeft", {}, "kicker"],
    ["ArrowUp", {}, "kicker"],
    ["PageUp", {}, "kicker"],
    [" ", { shiftKey: true }, "kicker"],
    ["Home", {}, "kicker"],
    ["End", {}, "turn"],
    ["x", {}, "p1"],
    ["ArrowRight", { ctrlKey: true }, "p1"],
  ])("goes on and back by '%s' %j", (key, more, first) => {
    press(key, document.body, more);
    expect(stage()[0]).toBe(first);
  });

  it("leaves a control its keys, but not a clicker's", () => {
    const input = document.createElement("input");
    const button = document.createElement("button");
    document.querySelector("#p1")?.append(input, button);
    press("ArrowRight", input);
    press(" ", input);
    press(" ", button);
    expect(stage()).toEqual(["p1"]);
    press("PageDown", input);
    expect(stage()[0]).toBe("p2");
    document.querySelector("#p2")?.append(input);
    press("Escape", input);
    expect(document.activeElement).toBe(document.querySelector("#p2"));
    expect(at()).toBe("3");
  });

  it("is led by a finger that wipes sideways, unless it holds a mark", () => {
    wipe(300, 200);
    expect(stage()[0]).toBe("p2");
    wipe(100, 300);
    expect(stage()[0]).toBe("p1");
    wipe(100, 80);
    expect(stage()[0]).toBe("p1");
    const mark = document.createElement("span");
    mark.setAttribute("role", "slider");
    document.querySelector("#p1")?.append(mark);
    wipe(300, 100, mark);
    expect(stage()[0]).toBe("p1");
  });

  it("answers a question before it goes on, and offers it to the room", () => {
    const host = document.querySelector("#guess")!.parentElement!;
    host.replaceChildren();
    const make = () =>
      choose({
        id: "present-test",
        ask: "What?",
        options: [{ key: "a", says: "this" }],
        right: "a",
        reply: { a: "Yes." },
        answers: answersNow(),
      });
    const update = make().view.mount(host, createBench());
    update(make().state);
    press("PageDown");
    press("PageDown");
    expect(host.classList.contains("on-stage")).toBe(true);
    host.querySelector<HTMLElement>(".present-ask")!.click();
    expect(host.querySelectorAll(".room")).toHaveLength(1);
    press("PageDown");
    expect(answersNow()["present-test"]).toBe("show me");
    expect(host.classList.contains("on-stage")).toBe(true);
    update(make().state);
    press("PageDown");
    expect(stage()[0]).toBe("h2");
    expect(document.querySelector(".present-ask")).toBeNull();
  });

  it("leads to the next page, presented as well", () => {
    press("End");
    const next = document.querySelector<HTMLAnchorElement>(".turn a[rel=next]")!;
    const clicked = vi.fn((event: Event) => event.preventDefault());
    next.addEventListener("click", clicked);
    expect(new URL(next.href).search).toBe("?present");
    press("PageDown");
    expect(clicked).toHaveBeenCalledTimes(1);
  });

  it("goes with Escape and leaves the page as it was", () => {
    press("m");
    press("b");
    press("Escape");
    expect([at(), location.hash]).toEqual([null, "#m=1a"]);
    expect(document.querySelectorAll(".on-stage, [class^=present-]")).toHaveLength(0);
    expect(document.body.className).toBe("");
    expect(document.body.dataset.presenting).toBeUndefined();
    expect(document.querySelector<HTMLElement>(".page")?.style.length).toBe(0);
    expect(document.querySelector<HTMLAnchorElement>(".turn a[rel=next]")?.href).not.toContain("?present");
    press("PageDown");
    expect(stage()).toEqual([]);
  });

  it("follows the browser's back button out of the view and in again", () => {
    followAddress(document);
    history.replaceState(null, "", "/page.html");
    dispatchEvent(new PopStateEvent("popstate"));
    expect(document.body.dataset.presenting).toBeUndefined();
    history.replaceState(null, "", "/page.html?present=4");
    dispatchEvent(new PopStateEvent("popstate"));
    expect(stage()).toEqual(["guess"]);
  });

  it("rings the pointer, but no finger", () => {
    const ring = document.querySelector<HTMLElement>(".present-ring")!;
    const move = (pointerType: string) =>
      document.dispatchEvent(new PointerEvent("pointermove", { clientX: 5, clientY: 6, pointerType }));
    move("mouse");
    expect([ring.hidden, ring.style.translate]).toEqual([false, "5px 6px"]);
    move("touch");
    expect(ring.hidden).toBe(true);
  });
});
