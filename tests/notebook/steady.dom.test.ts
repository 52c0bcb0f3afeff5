import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { openPage } from "../../src/notebook/page.ts";
import { steadyPlaces } from "../../src/notebook/steady.ts";
import { show } from "../../src/view/shown.ts";
import { at, bench, cell, meter } from "./places.ts";

/** Tells of sizes when the test says so: nothing is laid out here. */
class Sizes {
  static last: Sizes;
  readonly watched = new Set<Element>();
  constructor(readonly tell: (entries: { target: Element }[]) => void) {
    Sizes.last = this;
  }
  observe(element: Element): void {
    this.watched.add(element);
  }
  disconnect(): void {
    this.watched.clear();
  }
}

const measured = (host: HTMLElement, height: number): void => {
  Object.defineProperty(host, "offsetHeight", { value: height, configurable: true });
  Sizes.last.tell([{ target: host }]);
};

describe("a place", () => {
  const real = window.ResizeObserver;
  beforeEach(() => {
    vi.useFakeTimers({ toFake: ["setTimeout", "performance"] });
    window.ResizeObserver = Sizes as unknown as typeof ResizeObserver;
  });
  afterEach(() => {
    vi.useRealTimers();
    window.ResizeObserver = real;
  });

  it("keeps its height while a hand moves, grows with what it shows, and gives way when the hand rests", () => {
    const host = document.createElement("div");
    const places = steadyPlaces(document);
    const drawn = places.of(host);
    measured(host, 135);
    drawn();
    expect(host.style.minHeight).toBe("");
    vi.advanceTimersByTime(16);
    drawn();
    expect(host.style.minHeight).toBe("135px");
    measured(host, 197);
    vi.advanceTimersByTime(16);
    drawn();
    expect(host.style.minHeight).toBe("197px");
    vi.advanceTimersByTime(300);
    expect(host.style.minHeight).toBe("");
    places.end();
    expect(Sizes.last.watched.size).toBe(0);
  });

  it("changes its height at once for a single change", () => {
    const host = document.createElement("div");
    const drawn = steadyPlaces(document).of(host);
    measured(host, 135);
    for (let i = 0; i < 3; i++) {
      drawn();
      expect(host.style.minHeight).toBe("");
      vi.advanceTimersByTime(1000);
    }
  });

  it("of its own on a page is held, a figure in the text is not", async () => {
    document.body.innerHTML = `<div data-cell="plot"></div><p><span data-cell="figure"></span></p>`;
    const records = ["plot", "figure"].map((id) => cell(id, (x) => show(meter, x)));
    const page = openPage({ document, records, given: { x: 1 }, bench });
    await page.settled();
    expect([...Sizes.last.watched]).toEqual([at("plot")]);
    measured(at("plot")!, 50);
    for (const x of [2, 3]) {
      page.give({ x });
      await page.settled();
    }
    expect(at("plot")!.style.minHeight).toBe("50px");
    page.dispose();
    expect(Sizes.last.watched.size).toBe(0);
  });
});
