import { afterEach, describe, expect, it } from "vitest";
import { inShownUnits } from "#plots/shown-units";
import type { PlotState } from "#plots/state";
import { formatValue, unitText } from "#view/format";
import { chooseUnits } from "#view/units";
import { mounted } from "./states.ts";

const state: PlotState = {
  name: "tip-against-cold",
  title: "Tip speed against temperature",
  unit: "m/s",
  x: { label: "temperature", unit: "°C", low: 0, high: 40, exact: true, ticks: [0, 20, 40] },
  y: { label: "tip speed", unit: "m/s", low: 0, high: 200 },
  curves: [{ key: "tip", label: "tip", ink: "now", xs: [0, 20, 40], ys: [100, null, 200] }],
  levels: [
    { key: "limit", axis: "y", at: 150, label: "limit", ink: "plain" },
    { key: "now", axis: "x", at: 20, label: "now", ink: "plain" },
  ],
  zones: [
    { key: "over", words: "over", y: [150, null] },
    { key: "band", words: "band", between: { xs: [0, 40], lower: [0, 10], upper: [20, null] } },
  ],
  points: [{ key: "measured", x: 10, y: 120, low: 110, high: 130, kind: "measured" }],
  handles: [
    {
      key: "cold",
      x: 10,
      y: null,
      moves: "x",
      path: "pack.temperatureC",
      value: 10,
      min: -20,
      max: 90,
      step: 1,
      name: "temperature",
      valueText: "",
    },
  ],
  words: "A plot.",
};

// NIST SP 811 (2008), appendix B.8: mile per hour = 4.4704E-01 m/s; temperature in F = 1.8 times that in C, plus 32.
const mph = 1 / 0.44704;

describe("a plot in the reader's units", () => {
  afterEach(() => chooseUnits("metric"));

  it("is the very same one where they are its own", () => {
    expect(inShownUnits(state)).toBe(state);
    chooseUnits("imperial");
    const turns = { ...state, x: { ...state.x, unit: "%" }, y: { ...state.y, unit: "rpm" } };
    expect(inShownUnits(turns)).toBe(turns);
  });

  it("has every mark on the new axes", () => {
    chooseUnits("imperial");
    const shown = inShownUnits(state);
    expect([shown.unit, shown.x.unit, shown.y.unit]).toEqual(["mph", "°F", "mph"]);
    expect([shown.x.low, shown.x.high, shown.x.ticks]).toEqual([
      expect.closeTo(32, 9),
      expect.closeTo(104, 9),
      undefined,
    ]);
    expect(Array.from(shown.curves[0]?.xs ?? [])).toEqual([32, 68, 104].map((value) => expect.closeTo(value, 9)));
    expect(Array.from(shown.curves[0]?.ys ?? [])).toEqual([
      expect.closeTo(100 * mph, 9),
      null,
      expect.closeTo(200 * mph, 9),
    ]);
    expect(shown.levels?.map(({ at }) => at)).toEqual([expect.closeTo(150 * mph, 9), expect.closeTo(68, 9)]);
    expect(shown.zones?.[0]?.y).toEqual([expect.closeTo(150 * mph, 9), null]);
    expect(shown.zones?.[1]?.between?.lower).toEqual([0, expect.closeTo(10 * mph, 9)]);
    expect(shown.zones?.[1]?.between?.upper).toEqual([expect.closeTo(20 * mph, 9), null]);
    const { x, y, low, high } = shown.points![0]!;
    expect([x, y, low, high]).toEqual([50, 120 * mph, 110 * mph, 130 * mph].map((value) => expect.closeTo(value, 9)));
  });

  it("still moves its field in the field's own unit", () => {
    chooseUnits("imperial");
    const handle = inShownUnits(state).handles![0]!;
    expect(handle.x).toBeCloseTo(50, 9);
    expect((handle.x ?? 0) * (handle.scale ?? 1) + (handle.offset ?? 0)).toBeCloseTo(10, 9);
    const { one, proposals } = mounted(inShownUnits(state));
    one("[data-handle=cold]").dispatchEvent(new KeyboardEvent("keydown", { key: "ArrowRight", bubbles: true }));
    expect(proposals[0]).toMatchObject({ path: "pack.temperatureC", value: 11 });
  });

  it("leaves an axis alone whose unit is the same for everybody", () => {
    chooseUnits("imperial");
    const gears = { ...state, x: { label: "slot", unit: "mm", sameForAll: true }, y: { label: "", unit: "" } };
    expect(inShownUnits(gears)).toBe(gears);
  });

  it("agrees with the figures in the text", () => {
    expect(formatValue(100, "m/s")).toBe("100\u00a0m/s");
    chooseUnits("imperial");
    expect(formatValue(100, "m/s")).toBe("224\u00a0mph");
    expect(formatValue(100, "m/s", { units: "metric" })).toBe("100\u00a0m/s");
    expect(formatValue(-40, "°C")).toBe("\u221240\u00a0°F");
    expect(unitText("mm")).toBe("in");
  });
});
