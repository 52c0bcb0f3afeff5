import { beforeAll, beforeEach, describe, expect, it } from "vitest";
import { exercises } from "#blocks/exercise";
import { startFrom } from "#blocks/exercise-progress";
import { choose, estimate } from "#blocks/guess";
import { createBench } from "#machine/bench";
import { clubTrainer } from "#machine/demos";
import type { CellRecord } from "#notebook/record";
import { makeSheet } from "#shell/sheet";
import { answersNow } from "#view/answers";
import { show } from "#view/shown";
import { plain } from "../blocks/mounted.ts";

const picture = show({ name: "picture", words: () => "It rises.", mount: () => () => {} }, {});
const cell = (id: string, shown: () => unknown): CellRecord => ({
  id,
  line: 1,
  needs: [],
  gives: [],
  shows: true,
  run: () => [shown()],
});
const records = [
  cell("cell-1", () =>
    choose({
      id: "a",
      ask: "Which?",
      options: [
        { key: "x", says: "this one" },
        { key: "y", says: "that one" },
      ],
      right: "y",
      reply: { x: "No.", y: "Because." },
      answers: { a: "x" },
    }),
  ),
  cell("cell-2", () =>
    estimate({
      id: "b",
      ask: "How many?",
      unit: "rpm",
      low: 0,
      high: 9,
      step: 1,
      answer: 1234,
      within: 1,
      reply: "So.",
      answers: {},
    }),
  ),
  cell("cell-3", () => picture),
  cell("cell-4", () => exercises("two-gears", clubTrainer, answersNow())),
  cell("cell-5", () => show({ name: "table", words: () => "A table.", mount: () => () => {} }, { rows: [] })),
];

beforeAll(() => {
  // The typesetter asks for a page with a doctype; this document has no such mode at all.
  Object.defineProperty(document, "compatMode", { value: "CSS1Compat", configurable: true });
});

const put = (html: string): void => {
  // The page as the compiler would have made it.
  document.body.innerHTML = "<div class='page'><h1>A question?</h1><div class='prose'></div></div>";
  const prose = document.querySelector(".prose")!;
  for (const [tag, words, id] of html.split("\n").map((line) => line.split("|"))) {
    const part = document.createElement(tag ?? "p");
    part.textContent = words ?? "";
    if (id?.startsWith("cell")) part.dataset.cell = id;
    else if (id?.startsWith(".")) part.className = id.slice(1);
    else if (id) part.id = id;
    prose.append(part);
  }
};

beforeEach(() => {
  put(
    [
      "p|The scene, at 100 %.",
      "div||cell-1",
      "p|The answer is told.",
      "h2|A heading of words|h-1",
      "p|More telling.",
      "h2|Plots|h-2",
      "div||cell-2",
      "div||cell-3",
      "div||cell-5",
      "aside|Mind the blades.|.caution",
      "div||cell-4",
      "h2|In three lines|in-three-lines",
      "ul|One. Two.",
      "p|At the bench: measure.",
      "p|At the field: fly.",
    ].join("\n"),
  );
  document.querySelector("[data-cell=cell-5]")!.innerHTML = `<table role="grid"><caption>What it costs</caption>
    <thead><tr><td></td><th>now</th><th>with 14</th></tr></thead>
    <tbody><tr><th>speed</th><td><label>x</label><input value="4,321"></td><td tabindex="0">5,678</td></tr></tbody></table>
    <details><table><tbody><tr><td>behind</td></tr></tbody></table></details>`;
  const host = document.querySelector("[data-cell=cell-3]")!;
  const figure = document.createElement("figure");
  const svg = document.createElementNS("http://www.w3.org/2000/svg", "svg");
  const clip = document.createElementNS("http://www.w3.org/2000/svg", "clipPath");
  const path = document.createElementNS("http://www.w3.org/2000/svg", "path");
  clip.id = "clip-1";
  path.setAttribute("clip-path", "url(#clip-1)");
  svg.append(clip, path);
  const caption = document.createElement("figcaption");
  caption.textContent = "It rises.";
  figure.append(svg, caption);
  host.append(figure);
});

const sheet = (kind: "handout" | "key") => makeSheet(document, kind, records, createBench());
const headings = (made: HTMLElement) => [...made.querySelectorAll("h2")].map((h) => h.textContent);

describe("a handout", () => {
  it("has question, scene and room, and no answers, not even those that were given on the page", async () => {
    const made = await sheet("handout");
    const words = plain(made.textContent);
    expect(made.querySelector("h1")?.textContent).toBe("A question?");
    for (const kept of [
      "The scene, at 100 %.",
      "Which?",
      "this one",
      "How many?",
      "rpm",
      "Mind the blades.",
      "At the bench: measure.",
      "At the field: fly.",
    ])
      expect(words).toContain(kept);
    for (const told of [
      "The answer is told.",
      "More telling.",
      "Because.",
      "1,234",
      "It rises.",
      "One. Two.",
      "A table.",
    ])
      expect(words).not.toContain(told);
    expect(headings(made)).toEqual(["Plots", "Try it with numbers", "In three lines"]);
    expect(made.querySelectorAll(".boxes li")).toHaveLength(2);
    expect(made.querySelectorAll("ol .blank-number").length).toBe(made.querySelectorAll("ol > li").length);
  });

  it("gives a table's first figures and leaves room for the others; the key has them all", async () => {
    const [asked, told] = [await sheet("handout"), await sheet("key")];
    const cells = (made: HTMLElement) => [...made.querySelectorAll("tbody td")].map((cell) => plain(cell.textContent));
    expect(asked.querySelector("caption")?.textContent).toBe("What it costs");
    expect(cells(asked)).toEqual(["4,321", ""]);
    expect(asked.querySelectorAll(".to-fill")).toHaveLength(1);
    expect(plain(asked.textContent)).toContain("Fill in what you expect");
    expect(cells(told)).toEqual(["4,321", "5,678"]);
    expect(plain(told.textContent)).not.toContain("Fill in");
    for (const made of [asked, told])
      expect(made.querySelector("table [tabindex], table input, table label")).toBeNull();
  });

  it("gives a map of gears whole to both", async () => {
    const table = document.querySelector("[data-cell=cell-5] table")!;
    table.className = "gear-grid";
    for (const kind of ["handout", "key"] as const) {
      const made = await sheet(kind);
      expect([...made.querySelectorAll("tbody td")].map((cell) => plain(cell.textContent))).toEqual(["4,321", "5,678"]);
    }
  });

  it("shows the pictures as they stand, under names of their own", async () => {
    const made = await sheet("handout");
    const id = made.querySelector("clipPath")?.id;
    expect(id).not.toBe("clip-1");
    expect(made.querySelector("path")?.getAttribute("clip-path")).toBe(`url(#${id})`);
    expect(document.querySelector("main, .page figcaption")?.textContent).toBe("It rises.");
  });
});

describe("a page that shows no exercises", () => {
  const without = () => makeSheet(document, "handout", records.slice(0, 3), createBench());

  it("gets those that go by its title", async () => {
    document.title = "What the throttle asks for";
    const made = await without();
    expect(made.querySelectorAll("ol > li").length).toBeGreaterThan(1);
    expect(headings(made)).toEqual(["Plots", "Try it with numbers", "In three lines"]);
  });

  it("and none when there are none", async () => {
    document.title = "To teach with this";
    expect((await without()).querySelector("ol")).toBeNull();
  });
});

describe("a key", () => {
  it("has every answer, and what the pictures show", async () => {
    const words = plain((await sheet("key")).textContent);
    for (const told of ["Right: that one.", "Because.", "The model says 1,234 rpm", "Shown: It rises.", "One. Two."])
      expect(words).toContain(told);
    expect(words).not.toContain("Mind the blades.");
  });

  it("belongs to the same numbers as the handout", async () => {
    startFrom(31);
    const asked = async (kind: "handout" | "key") =>
      [...(await sheet(kind)).querySelectorAll("ol .sheet-ask")].map((ask) => ask.textContent);
    expect((await asked("key")).length).toBeGreaterThan(1);
    expect(await asked("key")).toEqual(await asked("handout"));
    expect(plain((await sheet("key")).textContent)).toContain("Numbers 31");
  });
});
