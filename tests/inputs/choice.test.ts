import { describe, expect, it } from "vitest";
import { choice, makeChoice, makeText, makeToggle, textInput } from "#inputs/choice";
import { box, complaint, placed, type } from "./hand.ts";

describe("a choice", () => {
  const chemistry = () => placed((socket) => makeChoice(socket, "pack.chemistry"));
  const list = (element: Element): HTMLSelectElement => element.querySelector("select")!;

  it("offers every word of its field and shows the present one", () => {
    const { element } = chemistry();
    expect([...list(element).options].map(({ value }) => value)).toEqual(["lipo", "lihv", "life"]);
    expect(list(element).value).toBe("lipo");
    expect(element.querySelector("label")?.textContent).toBe("Cell chemistry");
  });

  it("sets the machine, and follows it back", () => {
    const { bench, element } = chemistry();
    list(element).value = "life";
    list(element).dispatchEvent(new Event("change"));
    expect(bench.now.pack.chemistry).toBe("life");
    bench.undo();
    expect(list(element).value).toBe("lipo");
  });

  it("says in words what it offers", () => {
    const { view, state } = choice("pack.chemistry");
    expect(view.words(state)).toMatch(/lithium polymer/);
  });
});

describe("a text", () => {
  const name = () => placed((socket) => makeText(socket, "name"));

  it("takes a name", () => {
    const { bench, element } = name();
    type(box(element), "  Old Faithful ", "blur");
    expect(bench.now.name).toBe("Old Faithful");
    expect(box(element).value).toBe("Old Faithful");
  });

  it("doesn't take one that is too long, and says so", () => {
    const { bench, element } = name();
    type(box(element), "x".repeat(81));
    expect(complaint(box(element))).toMatch(/at most 80 characters/);
    expect(bench.now.name).toBe("6-cell club trainer");
  });

  it("never turns a text into elements", () => {
    const { bench, element } = name();
    bench.set("name", "<b>bold</b>");
    expect(element.querySelector("b")).toBeNull();
    expect(box(element).value).toBe("<b>bold</b>");
  });

  it("is misspelt only once", () => {
    expect(() => textInput("nom")).toThrow(/nom/);
  });
});

describe("a tick for a group", () => {
  const stage = () => placed((socket) => makeToggle(socket, "gears.secondStage", "a second stage"));
  const tick = (element: Element, on: boolean) => {
    box(element).checked = on;
    box(element).dispatchEvent(new Event("change"));
  };

  it("puts the group there at its defaults, and takes it away", () => {
    const { bench, element } = stage();
    expect(box(element).checked).toBe(false);
    tick(element, true);
    expect(bench.now.gears.secondStage).toEqual({ driverTeeth: 20, drivenTeeth: 40 });
    tick(element, false);
    expect(bench.now.gears.secondStage).toBeNull();
  });

  it("remembers what the group held", () => {
    const { bench, element } = stage();
    tick(element, true);
    bench.set("gears.secondStage.driverTeeth", 18);
    tick(element, false);
    tick(element, true);
    expect(bench.now.gears.secondStage?.driverTeeth).toBe(18);
  });
});
