import { beforeAll, describe, expect, it } from "vitest";
import { dial, makeDial } from "#inputs/dial";
import { createBench } from "#machine/bench";
import { box, complaint, placed, press, type } from "./hand.ts";

const kv = "motor.kvRpmPerVolt";
const at = (path: string) => placed((socket) => makeDial(socket, path));

beforeAll(() => {
  // A browser has it; here the pointer stays on the element anyhow.
  HTMLElement.prototype.setPointerCapture ??= () => {};
});

function dragged(input: HTMLInputElement, by: readonly number[]): void {
  const at = (name: string, x: number) =>
    input.dispatchEvent(new PointerEvent(name, { clientX: x, button: 0, pointerId: 1, bubbles: true }));
  at("pointerdown", 100);
  for (const dx of by) at("pointermove", 100 + dx);
  at("pointerup", 100 + (by.at(-1) ?? 0));
}

describe("a number in the prose", () => {
  it("shows the value with its unit, and says what it is", () => {
    const { element } = at(kv);
    expect(element.dataset.input).toBe(kv);
    expect(box(element).value).toBe("1,120");
    expect(element.querySelector(".unit")?.textContent).toBe("rpm/V");
    expect(box(element).getAttribute("role")).toBe("spinbutton");
    expect(box(element).getAttribute("aria-valuetext")).toBe("1,120\u00a0rpm/V");
    expect(box(element).getAttribute("aria-valuenow")).toBe("1120");
  });

  it.each([
    ["ArrowRight", 14],
    ["ArrowUp", 14],
    ["ArrowLeft", 12],
    ["ArrowDown", 12],
    ["PageUp", 18],
  ])("steps with %s", (key, value) => {
    const { bench, element } = at("gears.pinionTeeth");
    expect(press(box(element), key)).toBe(false);
    expect(bench.now.gears.pinionTeeth).toBe(value);
  });

  it("takes a held key as one step of undo", () => {
    const { bench, element } = at("gears.pinionTeeth");
    press(box(element), "ArrowUp");
    press(box(element), "ArrowUp", { repeat: true });
    press(box(element), "ArrowUp", { repeat: true });
    expect(bench.now.gears.pinionTeeth).toBe(16);
    bench.undo();
    expect(bench.now.gears.pinionTeeth).toBe(13);
  });

  it("is dragged sideways by whole steps, as one step of undo, and comes back with the pointer", () => {
    const { bench, element } = at("gears.pinionTeeth");
    dragged(box(element), [6, 24, 36]);
    expect(bench.now.gears.pinionTeeth).toBe(16);
    bench.undo();
    expect(bench.now.gears.pinionTeeth).toBe(13);
    dragged(box(element), [36, 0]);
    expect(bench.now.gears.pinionTeeth).toBe(13);
  });

  it("stops at the hard limit", () => {
    const { bench, element } = at("gears.pinionTeeth");
    dragged(box(element), [-9000]);
    expect(bench.now.gears.pinionTeeth).toBe(5);
  });

  it("is typed after Enter, or after a double click", () => {
    const { bench, element } = at(kv);
    expect(box(element).readOnly).toBe(true);
    press(box(element), "Enter");
    expect(box(element).readOnly).toBe(false);
    type(box(element), "1.250,5");
    expect(bench.now.motor.kvRpmPerVolt).toBe(1250.5);
    expect(box(element).readOnly).toBe(true);
    box(element).dispatchEvent(new Event("dblclick"));
    expect(box(element).readOnly).toBe(false);
  });

  it("takes a figure typed on it as the start of a new number", () => {
    const { element } = at(kv);
    expect(press(box(element), "9", { ctrlKey: true })).toBe(true);
    expect(box(element).readOnly).toBe(true);
    expect(press(box(element), "9")).toBe(true);
    expect(box(element).readOnly).toBe(false);
  });

  it("is typed after a finger's tap, but not after its drag, nor after a click", () => {
    const tap = (pointerType: string, dx: number) => {
      const { element } = at(kv);
      const point = (name: string, x: number) =>
        box(element).dispatchEvent(
          new PointerEvent(name, { clientX: x, button: 0, pointerId: 1, pointerType, bubbles: true }),
        );
      point("pointerdown", 100);
      if (dx !== 0) point("pointermove", 100 + dx);
      point("pointerup", 100 + dx);
      return !box(element).readOnly;
    };
    expect(tap("touch", 0)).toBe(true);
    expect(tap("touch", 40)).toBe(false);
    expect(tap("mouse", 0)).toBe(false);
  });

  it("leaves no gap where there is no unit", () => {
    expect(at("motor.poles").element.textContent).toMatch(/^(?!\u00a0)/);
    expect(at(kv).element.textContent).toMatch(/^\u00a0rpm/);
  });

  it("says what it can't take, and keeps the value", () => {
    const { bench, element } = at(kv);
    press(box(element), "Enter");
    type(box(element), "fast");
    expect(complaint(box(element))).toMatch(/fast/);
    expect(box(element).readOnly).toBe(false);
    press(box(element), "Escape");
    expect([box(element).value, box(element).readOnly]).toEqual(["1,120", true]);
    expect(bench.canUndo).toBe(false);
  });

  it("mounts as a cell and keeps its elements from state to state", () => {
    const host = document.createElement("span");
    const { view, state } = dial(kv);
    const update = view.mount(host, createBench());
    update(state);
    const input = box(host);
    update({ path: kv });
    expect(box(host)).toBe(input);
    expect(view.words(state)).toMatch(/Motor Kv/);
  });
});
