import { beforeEach, describe, expect, it, vi } from "vitest";
import { openPage } from "../../src/notebook/page.ts";
import { show, type View } from "../../src/view/shown.ts";
import { type Frames, lateFrames } from "../support/frames.ts";
import { at, bench, cell, meter, opened } from "./places.ts";

describe("a table where frames come late", () => {
  const table: View<number> = { ...meter, name: "table", patient: true };
  let frames: Frames;
  beforeEach(async () => {
    frames = await lateFrames();
    return frames.stop;
  });
  const give = async (page: Awaited<ReturnType<typeof opened>>, x: number) => {
    page.give({ x });
    await page.settled();
  };
  /** A movement through some values, a late frame after each but the last. */
  const through = async (page: Awaited<ReturnType<typeof opened>>, ...xs: number[]) => {
    for (const x of xs) {
      await give(page, x);
      if (x !== xs.at(-1)) frames.late();
    }
  };

  it("is drawn in its turn, with the newest state, while the rest is drawn at once", async () => {
    const page = await opened(
      cell("table", (x) => show(table, x)),
      cell("meter", (x) => show(meter, x)),
    );
    // Two frames tell how fast they come: from then on it waits, here for the last one.
    await through(page, 2, 3, 4, 5);
    expect([at("table"), at("meter")].map((place) => place?.textContent)).toEqual(["4", "5"]);
    frames.late();
    expect(at("table")?.textContent).toBe("5");
  });

  it("gives its turn up when the cell stops or shows something else, and says why it can't be drawn", async () => {
    const says = (x: number) => {
      if (x === 7) throw new Error("seven");
      return x === 8 ? "eight" : show(table, x);
    };
    const page = await opened(cell("table", says));
    for (const [x, text] of [
      [7, "This part has stopped: seven"],
      [8, "eight"],
      [13, "This part has stopped: unlucky"],
    ] as const) {
      await through(page, 2, 3, 4, 5, x);
      frames.late();
      frames.late();
      expect(at("table")?.textContent).toBe(text);
      frames.late();
    }
  });

  it("and so is what stands out of sight, but for figures in the text", async () => {
    let tell: (entries: object[]) => void = () => {};
    const watched: Element[] = [];
    class Observer {
      constructor(heard: typeof tell) {
        tell = heard;
      }
      observe = (host: Element) => watched.push(host);
      disconnect = () => watched.splice(0);
    }
    vi.stubGlobal("IntersectionObserver", Observer);
    const ids = ["near", "far"];
    document.body.innerHTML = `${ids.map((id) => `<div data-cell="${id}"></div>`).join("")}<span data-cell="text"></span>`;
    const records = [...ids, "text"].map((id) => cell(id, (x) => show(meter, x)));
    const page = openPage({ document, records, given: { x: 1 }, bench });
    await page.settled();
    expect(watched).toEqual(ids.map(at));
    tell([
      { target: at("near"), isIntersecting: true },
      { target: at("far"), isIntersecting: false },
    ]);
    const texts = () => [...ids, "text"].map((id) => at(id)?.textContent);
    await through(page, 2, 3, 4, 5);
    expect(texts()).toEqual(["5", "3", "5"]);
    // It comes into sight, and has its turn.
    tell([{ target: at("far"), isIntersecting: true }]);
    frames.late();
    expect(texts()).toEqual(["5", "5", "5"]);
    page.dispose();
    expect(watched).toEqual([]);
  });
});
