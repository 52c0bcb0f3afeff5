import { afterEach, describe, expect, it } from "vitest";
import { boxText, figureText, readFigure, readTyped, withUnit } from "#inputs/typed";
import { fieldAt } from "#machine/fields";
import { chooseUnits } from "#view/units";

afterEach(() => chooseUnits("metric"));

describe("a figure as people write it", () => {
  it.each([
    ["12", 12],
    ["25.2", 25.2],
    ["25,2", 25.2],
    ["1,120", 1120],
    ["0,965", 0.965],
    ["1,120.5", 1120.5],
    ["1.120,5", 1120.5],
    ["1 120,5", 1120.5],
    ["1\u202f120", 1120],
    ["1'120", 1120],
    ["1,234,567", 1234567],
    ["1.234.567", 1234567],
    [".5", 0.5],
    ["-4", -4],
    ["\u22124", -4],
    ["+3", 3],
    ["1e9", 1e9],
  ])("%s is %d", (text, value) => {
    expect(readFigure(text)).toBe(value);
  });

  it.each(["", "abc", "1,2,3", "12,34.5", "1.2.3", "--3", "1 2", "0x10", "Infinity", "1e999", ".", ",", "1,1200.5"])(
    "'%s' is none",
    (text) => {
      expect(readFigure(text)).toBeNull();
    },
  );
});

describe("what is typed for a field", () => {
  it.each([
    ["gears.pinionTeeth", "14", 14],
    ["gears.pinionTeeth", "14 teeth", 14],
    ["gears.pinionTeeth", "14t", 14],
    ["pack.cells", "6S", 6],
    ["motor.poles", "10 poles", 10],
    ["motor.kvRpmPerVolt", "1,120 rpm/V", 1120],
    ["motor.kvRpmPerVolt", "1120 Kv", 1120],
    ["motor.resistanceMilliohm", "0.016 Ω", 16],
    ["motor.resistanceMilliohm", "16 mΩ", 16],
    ["pack.chargePercent", "57,5 %", 57.5],
    ["airframe.massG", "2.05 kg", 2050],
    // An inch is 25.4 mm and a pound 453.59237 g, by definition.
    ["mainRotor.diameterMm", "10 in", 254],
    ["airframe.massG", "1 lb", 453.59237],
    ["place.temperatureC", "68 °F", 20],
    ["place.temperatureC", "-5 °C", -5],
  ])("%s takes '%s'", (path, text, value) => {
    expect(readTyped(text, fieldAt(path))).toBeCloseTo(value, 9);
  });

  it.each([
    ["gears.pinionTeeth", "14 V"],
    ["gears.pinionTeeth", "fourteen"],
    ["pack.capacityMah", "3300 g"],
    ["mainRotor.diameterMm", "970 teeth"],
    ["mainRotor.diameterMm", "970 constructor"],
    ["pack.cells", ""],
  ])("%s can't read '%s'", (path, text) => {
    expect(readTyped(text, fieldAt(path))).toBeNull();
  });

  it("means inches without saying so where imperial units are chosen, but a unit that is said wins", () => {
    chooseUnits("imperial");
    const diameter = fieldAt("mainRotor.diameterMm");
    expect(readTyped("10", diameter)).toBeCloseTo(254, 9);
    expect(readTyped("254 mm", diameter)).toBe(254);
    // Gears are named by their module in millimetres everywhere.
    expect(readTyped("0.7", fieldAt("gears.moduleMm"))).toBe(0.7);
  });
});

describe("a value in its box", () => {
  it.each([
    ["motor.kvRpmPerVolt", 1120, "1120"],
    ["motor.kvRpmPerVolt", 1234.56, "1234.56"],
    ["controller.electricalRpmLimit", 240_000, "240,000"],
    ["airframe.dragAreaM2", 0.01234, "0.01234"],
    ["pack.chargePercent", 57.314_562_1, "57.3"],
    ["modes.0.collectiveMinDeg", -4, "-4"],
    ["gears.meshEfficiency", 1, "1"],
  ])("%s shows %d as %s", (path, value, text) => {
    expect(boxText(value, fieldAt(path))).toBe(text);
  });

  it("sets thousands apart in sentences, and names the unit", () => {
    expect(figureText(1120, fieldAt("motor.kvRpmPerVolt"))).toBe("1,120");
    expect(withUnit(1120, fieldAt("motor.kvRpmPerVolt"))).toBe("1,120\u00a0rpm/V");
    expect(withUnit(-4, fieldAt("modes.0.collectiveMinDeg"))).toBe("-4°");
  });

  it("shows imperial where that is chosen", () => {
    chooseUnits("imperial");
    expect(withUnit(254, fieldAt("mainRotor.diameterMm"))).toBe("10\u00a0in");
    expect(withUnit(20, fieldAt("place.temperatureC"))).toBe("68\u00a0°F");
    expect(withUnit(0.7, fieldAt("gears.moduleMm"))).toBe("0.7\u00a0mm");
  });
});
