import { beforeEach, describe, expect, it, vi } from "vitest";
import { openPage } from "../../src/notebook/page.ts";
import { show } from "../../src/view/shown.ts";
import { at, bench, cell, meter, mount, opened } from "./places.ts";

beforeEach(() => {
  delete document.documentElement.dataset.live;
});

describe("a cell's place", () => {
  it("takes plain values as text, never as markup, in place of what was drawn before", async () => {
    await opened(
      cell("words", () => "<b>bold</b>"),
      cell("number", () => 1.5),
      cell("nothing", () => undefined),
      cell("none", () => null),
    );
    expect(["words", "number", "nothing", "none"].map((id) => at(id)?.innerHTML)).toEqual([
      "&lt;b&gt;bold&lt;/b&gt;",
      "1.5",
      "",
      "",
    ]);
  });

  it("mounts a view once, with the bench, and then only updates it", async () => {
    mount.mockClear();
    const page = await opened(cell("meter", (x) => show(meter, x)));
    const output = at("meter")?.firstChild;
    page.give({ x: 2 });
    await page.settled();
    expect(at("meter")?.innerHTML).toBe("<output>2</output>");
    expect(at("meter")?.firstChild).toBe(output);
    expect(mount.mock.calls).toEqual([[bench]]);
  });

  it("changes from one kind of value to another and back", async () => {
    const page = await opened(cell("meter", (x) => (x === 2 ? "two" : show(meter, x))));
    for (const [x, html] of [
      [2, "two"],
      [3, "<output>3</output>"],
      [2, "two"],
    ] as const) {
      page.give({ x });
      await page.settled();
      expect(at("meter")?.innerHTML).toBe(html);
    }
  });

  it.each([
    ["a machine", { pack: 1 }],
    ["a truth", true],
    ["a function", () => 1],
  ])("says that %s can't be shown", async (_, value) => {
    await opened(cell("odd", () => value));
    expect(at("odd")?.textContent).toBe(
      "This part has stopped: its value is neither a number, nor words, nor something to draw",
    );
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY])("never shows %s", async (value) => {
    await opened(cell("odd", () => value));
    expect(at("odd")?.textContent).toBe("This part has stopped: its number has no value");
    expect(at("odd")?.dataset.stopped).toBe("true");
  });
});

describe("a cell that stops", () => {
  const stopping = cell(
    "first",
    (x) => {
      if (x === 2) throw new Error("<b>two</b>");
      return x;
    },
    ["speed"],
  );

  it("says why in its own place, as text, and its dependants name it and its line", async () => {
    const nameless = cell("third", (x) => x, [], ["speed"]);
    const page = await opened(
      stopping,
      nameless,
      cell("other", (x) => x),
    );
    page.give({ x: 2 });
    await page.settled();
    expect(at("first")?.textContent).toBe("This part has stopped: <b>two</b>");
    expect(at("third")?.textContent).toBe("This part waits for 'speed' (line 12), which has stopped.");
    expect(at("other")?.textContent).toBe("2");
  });

  it("goes on when it can", async () => {
    const page = await opened(stopping);
    for (const [x, text] of [
      [2, "This part has stopped: <b>two</b>"],
      [1, "1"],
    ] as const) {
      page.give({ x });
      await page.settled();
      expect(at("first")?.textContent).toBe(text);
    }
    expect(at("first")?.dataset.stopped).toBeUndefined();
  });

  it("may be a view that can't draw its state", async () => {
    const page = await opened(cell("meter", (x) => show(meter, x)));
    for (const [x, html] of [
      [13, "This part has stopped: unlucky"],
      [14, "<output>14</output>"],
    ] as const) {
      page.give({ x });
      await page.settled();
      expect(at("meter")?.innerHTML).toBe(html);
    }
  });
});

describe("the page", () => {
  it("says when it answers", async () => {
    expect(document.documentElement.dataset.live).toBeUndefined();
    await opened(cell("a", (x) => x));
    expect(document.documentElement.dataset.live).toBe("true");
  });

  it("runs cells that have no place on it", async () => {
    const run = vi.fn((x: number) => x);
    document.body.innerHTML = "";
    await openPage({ document, records: [cell("a", run)], given: { x: 1 }, bench }).settled();
    expect(run).toHaveBeenCalledWith(1);
  });
});

describe("the cells for other machines", () => {
  const both = (shown: { state: unknown }, others: Readonly<Record<string, { state: unknown } | undefined>>) =>
    others.earlier ? Number(shown.state) * 1000 + Number(others.earlier.state) : shown.state;

  it("are drawn into the same places, follow what they are given, and go", async () => {
    const run = vi.fn((x: number) => show(meter, 2 * x));
    const page = await opened(cell("meter", run));
    const output = at("meter")?.firstChild;
    expect(run).toHaveBeenCalledTimes(1);
    page.compare({ earlier: { x: 5 } }, both);
    await page.settled();
    expect(at("meter")?.textContent).toBe("2010");
    page.give({ x: 3 });
    await page.settled();
    expect(at("meter")?.textContent).toBe("6010");
    expect(run).toHaveBeenCalledTimes(3);
    page.compare({ earlier: { x: 7 } }, both);
    await page.settled();
    expect(at("meter")?.textContent).toBe("6014");
    page.compare({}, both);
    await page.settled();
    expect(at("meter")?.textContent).toBe("6");
    expect(at("meter")?.firstChild).toBe(output);
    page.give({ x: 4 });
    await page.settled();
    expect(run).toHaveBeenCalledTimes(5);
  });

  it("leave a place alone where they have stopped", async () => {
    const page = await opened(
      cell("meter", (x) => {
        if (x === 5) throw new Error("five");
        return show(meter, x);
      }),
    );
    page.compare({ earlier: { x: 5 } }, both);
    await page.settled();
    expect(at("meter")?.textContent).toBe("1");
    expect(at("meter")?.dataset.stopped).toBeUndefined();
  });
});
