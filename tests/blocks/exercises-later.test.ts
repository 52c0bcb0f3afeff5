import { beforeEach, describe, expect, it, vi } from "vitest";
import { exercisesLater } from "#blocks/exercises-later";
import { recipes } from "#exercises/pages";
import { createBench } from "#machine/bench";
import { clubTrainer, demos } from "#machine/demos";

const page = "what-the-throttle-asks-for";
const items = () => document.querySelectorAll(".exercises > li");

// This document has no screen that anything could come near to.
vi.stubGlobal("IntersectionObserver", undefined);

beforeEach(() => {
  Object.defineProperty(document, "compatMode", { value: "CSS1Compat", configurable: true });
  document.body.replaceChildren(document.createElement("main"));
});

describe("exercises that come later", () => {
  it("say that they do, and then stand in the same place with the machine's own numbers", async () => {
    const bench = createBench();
    const shown = exercisesLater(page, clubTrainer, {});
    const update = shown.view.mount(document.querySelector("main")!, bench);
    expect(document.body.textContent).toBe(shown.view.words(shown.state));
    update(shown.state);
    await expect.poll(() => items().length).toBe(recipes[page].length);
    expect(document.querySelector(".later")).toBeNull();
    const before = items()[0]?.textContent;
    update(exercisesLater(page, demos[1]!, {}).state);
    expect(items()[0]?.textContent).not.toBe(before);
  });
});
