import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { demos } from "#machine/demos";
import { onPin, pin, pinNow, recallPin } from "#view/pin";

const KEY = "workbook.pin.1";
const garden = demos[1]!;

beforeEach(() => {
  pin(null);
  localStorage.clear();
});
afterEach(() => vi.restoreAllMocks());

describe("the pin", () => {
  it("is kept over a reload", () => {
    pin(garden);
    const kept = localStorage.getItem(KEY);
    pin(null);
    expect(localStorage.getItem(KEY)).toBeNull();
    localStorage.setItem(KEY, kept ?? "");
    recallPin();
    expect(pinNow()).toEqual(garden);
  });

  it.each(["", "m=1", "rubbish", "m=1b.zzzzzzz"])("is none when '%s' is what was kept", (text) => {
    localStorage.setItem(KEY, text);
    recallPin();
    expect(pinNow()).toBeNull();
  });

  it("tells those who listen, once for each change", () => {
    const heard = vi.fn();
    const stop = onPin(heard);
    pin(garden);
    pin(garden);
    pin(null);
    stop();
    pin(garden);
    expect(heard).toHaveBeenCalledTimes(2);
  });

  it("lasts as long as the page where nothing can be kept", () => {
    vi.spyOn(Storage.prototype, "setItem").mockImplementation(() => {
      throw new Error("full");
    });
    pin(garden);
    expect(pinNow()).toBe(garden);
  });
});
