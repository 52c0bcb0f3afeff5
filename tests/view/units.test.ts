import { afterEach, describe, expect, it, vi } from "vitest";
import { chooseUnits, onUnits, recallUnits, unitsNow } from "#view/units";

afterEach(() => {
  vi.unstubAllGlobals();
  chooseUnits("metric");
  localStorage.clear();
});

describe("the choice of units", () => {
  it("is metric until the reader chooses, and is told to whoever listens, once", () => {
    let told = 0;
    const stop = onUnits(() => (told += 1));
    expect(unitsNow()).toBe("metric");
    chooseUnits("imperial");
    chooseUnits("imperial");
    expect([unitsNow(), told]).toEqual(["imperial", 1]);
    stop();
    chooseUnits("metric");
    expect(told).toBe(1);
  });

  it("is there again on the next visit", async () => {
    chooseUnits("imperial");
    vi.resetModules();
    const later = await import("#view/units");
    expect(later.unitsNow()).toBe("metric");
    later.recallUnits();
    expect(later.unitsNow()).toBe("imperial");
  });

  it("holds for the page where nothing can be kept", () => {
    const forbidden = (): never => {
      throw new Error("forbidden");
    };
    vi.stubGlobal("localStorage", { getItem: forbidden, setItem: forbidden });
    recallUnits();
    chooseUnits("imperial");
    expect(unitsNow()).toBe("imperial");
    vi.unstubAllGlobals();
  });
});
