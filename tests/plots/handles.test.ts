import { describe, expect, it } from "vitest";
import { lateFrames } from "../support/frames.ts";
import { fullState, mounted } from "./states.ts";

describe("a mark that can be dragged", () => {
  const press = (element: Element, key: string, options: KeyboardEventInit = {}) =>
    element.dispatchEvent(new KeyboardEvent("keydown", { key, bubbles: true, cancelable: true, ...options }));

  it("says what it is, what it holds and what it may hold", () => {
    const { one } = mounted(fullState());
    const handle = one("[data-handle=set]");
    const said = [
      "role",
      "tabindex",
      "aria-label",
      "aria-valuenow",
      "aria-valuemin",
      "aria-valuemax",
      "aria-valuetext",
      "aria-orientation",
    ];
    expect(said.map((name) => handle.getAttribute(name))).toEqual([
      "slider",
      "0",
      "head speed of the mode hover",
      "2000",
      "600",
      "3600",
      "2000 rpm",
      "vertical",
    ]);
    expect(handle.closest("[role=img]")).toBeNull();
  });

  it("tells each step to who holds it, and what else has moved when the hand rests", async () => {
    const { one, update } = mounted(fullState(2000));
    const value = () => one("[data-handle=set]").getAttribute("aria-valuenow");
    update(fullState(2010));
    update(fullState(2020));
    expect(value()).toBe("2000");
    await expect.poll(value).toBe("2020");
    (one("[data-handle=set]") as unknown as HTMLElement).focus();
    update(fullState(2030));
    update(fullState(2040));
    expect(value()).toBe("2040");
  });

  it("goes with the hand that holds it; where frames come late, other marks wait for their turn", async () => {
    const frames = await lateFrames();
    const { one, update } = mounted(fullState(2000));
    const place = () => one("[data-handle=set]").getAttribute("transform");
    const moves = (rpm: number) => {
      const before = place();
      update(fullState(rpm));
      return place() !== before;
    };
    const through = [2010, 2100, 2200].map((rpm) => {
      const moved = moves(rpm);
      frames.late();
      return moved;
    });
    expect(through).toEqual([true, true, false]);
    expect(moves(2300)).toBe(false);
    const before = place();
    frames.late();
    expect(place()).not.toBe(before);
    (one("[data-handle=set]") as unknown as HTMLElement).focus();
    expect(moves(2400)).toBe(true);
    frames.stop();
  });

  it.each([
    ["set", "ArrowUp", false, 2010],
    ["set", "ArrowDown", true, 1900],
    ["set", "PageUp", false, 2100],
    ["set", "Home", false, 600],
    ["set", "End", false, 3600],
    // The charge falls to the right: the mark goes where the arrow points.
    ["charge", "ArrowRight", false, 59],
    ["charge", "ArrowLeft", true, 70],
    ["charge", "ArrowUp", false, 61],
  ])("proposes by keys: %s, %s, shift %s", (key, pressed, shiftKey, value) => {
    const { one, proposals } = mounted(fullState());
    press(one(`[data-handle=${key}]`), pressed, { shiftKey });
    expect(proposals).toHaveLength(1);
    expect(proposals[0]).toMatchObject({ path: key === "set" ? "modes.0.headRpm" : "pack.chargePercent", value });
    expect(proposals[0]?.machine).toBe(key === "charge" ? "what-if" : undefined);
  });

  it("shows arrows only where it can still go", () => {
    const { one, update } = mounted(fullState(2000));
    const arrows = () => one("[data-handle=set] .arrows").getAttribute("d");
    const both = arrows();
    update(fullState(3600));
    const down = arrows();
    update(fullState(600));
    expect(down).toBe("M-4,11L0,15L4,11");
    expect(both).toBe(`${arrows()}${down}`);
  });

  it("leaves other keys to the page", () => {
    const { one, proposals } = mounted(fullState());
    expect(press(one("[data-handle=set]"), "a")).toBe(true);
    expect(press(one("[data-handle=set]"), "ArrowUp", { ctrlKey: true })).toBe(true);
    expect(proposals).toEqual([]);
  });

  it("proposes the value under the pointer while it is held, in one gesture", () => {
    const { one, proposals } = mounted(fullState());
    const handle = one("[data-handle=charge]");
    const point = (kind: string, clientX: number) =>
      handle.dispatchEvent(new PointerEvent(kind, { clientX, clientY: 0, button: 0, pointerId: 1, bubbles: true }));
    const [, x = ""] = /translate\(([\d.]+),/.exec(handle.getAttribute("transform") ?? "") ?? [];
    const axis = one('.plot-grid [class="y"] line');
    const perPercent = (Number(axis.getAttribute("x2")) - Number(axis.getAttribute("x1"))) / 100;
    point("pointermove", 0);
    point("pointerdown", Number(x) + 3);
    point("pointermove", Number(x) + 3 - 10 * perPercent);
    point("pointermove", Number(x) + 3 - 20 * perPercent);
    point("pointermove", -9999);
    point("pointerup", -9999);
    point("pointermove", 0);
    expect(proposals.map((each) => each.value)).toEqual([70, 80, 100]);
    expect(new Set(proposals.map((each) => each.gesture)).size).toBe(1);
    point("pointerdown", 0);
    point("pointermove", 5 * perPercent);
    expect(proposals.at(-1)?.gesture).not.toBe(proposals[0]?.gesture);
  });

  it("shows the bench's words when a value is refused", () => {
    const { one } = mounted(fullState(), "Head speed: holds 2,010 rpm. Allowed: less than 2,005 rpm.");
    expect(one(".plot-problem").hasAttribute("hidden")).toBe(true);
    press(one("[data-handle=set]"), "ArrowUp");
    expect(one(".plot-problem").textContent).toContain("less than 2,005");
    expect(one(".plot-problem").hasAttribute("hidden")).toBe(false);
  });

  it("keeps its axis still while it is held", () => {
    const { one, update } = mounted(fullState(2000));
    const handle = one("[data-handle=set]");
    const ticks = () => [...document.querySelectorAll(".plot-grid")].at(-1)?.textContent;
    const before = ticks();
    handle.dispatchEvent(new PointerEvent("pointerdown", { clientX: 0, clientY: 0, button: 0, pointerId: 1 }));
    update(fullState(3400));
    expect(ticks()).toBe(before);
    handle.dispatchEvent(new PointerEvent("pointerup", { pointerId: 1 }));
    expect(ticks()).not.toBe(before);
  });
});
