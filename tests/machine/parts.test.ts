import { describe, expect, it } from "vitest";
import { fieldAt, fields } from "#machine/fields";
import { defaultMachine } from "#machine/machine";
import { partsOf } from "#machine/parts";
import { valueAt, withValue } from "#machine/paths";
import { toSi, type UnitName } from "#machine/units";

/** Where each field stands in the parts, and by what the value differs beside its unit. */
const places: Record<string, [string, number?]> = {
  "pack.capacityMah": ["pack.capacity"],
  "pack.cellResistanceMilliohm": ["pack.cellResistance"],
  "pack.leadResistanceMilliohm": ["pack.leadResistance"],
  "pack.chargePercent": ["pack.charge"],
  "pack.temperatureC": ["pack.temperature"],
  "motor.kvRpmPerVolt": ["motor.speedConstant"],
  "motor.resistanceMilliohm": ["motor.resistance"],
  "motor.ratedRpm": ["motor.ratedSpeed"],
  "motor.rotorInertiaGcm2": ["motor.rotorInertia"],
  "motor.windingTemperatureC": ["motor.windingTemperature"],
  "controller.resistanceMilliohm": ["controller.resistance"],
  "controller.electricalRpmLimit": ["controller.electricalSpeedLimit"],
  "controller.usableLowPercent": ["controller.usableLow"],
  "controller.usableHighPercent": ["controller.usableHigh"],
  "controller.learned.throttlePercent": ["controller.learned.throttle"],
  "controller.learned.motorRpm": ["controller.learned.motorSpeed"],
  "gears.moduleMm": ["gears.module"],
  "mainRotor.diameterMm": ["mainRotor.radius", 0.5],
  "mainRotor.chordMm": ["mainRotor.chord"],
  "mainRotor.rootCutoutMm": ["mainRotor.rootCutout"],
  "mainRotor.bladeMassG": ["mainRotor.bladeMass"],
  "mainRotor.bladeCentreMm": ["mainRotor.bladeCentre"],
  "mainRotor.ratedRpm": ["mainRotor.ratedSpeed"],
  "tailRotor.diameterMm": ["tailRotor.radius", 0.5],
  "tailRotor.chordMm": ["tailRotor.chord"],
  "tailRotor.armMm": ["tailRotor.arm"],
  "airframe.massG": ["airframe.mass"],
  "place.temperatureC": ["place.temperature"],
  "place.humidityPercent": ["place.humidity"],
  "modes.1.headRpm": ["modes.1.headSpeed"],
  "modes.1.collectiveMinDeg": ["modes.1.collectiveMin"],
  "modes.1.collectiveMaxDeg": ["modes.1.collectiveMax"],
};

const at = (value: unknown, path: string): unknown =>
  path.split(".").reduce<unknown>((node, key) => (node as Record<string, unknown>)[key], value);

describe("the machine in SI", () => {
  const machine = withValue(defaultMachine, "controller.learned.motorRpm", 14_000);
  const parts = partsOf(machine);

  it.each(Object.entries(places))("takes %s over in SI", (path, [place, share = 1]) => {
    const expected = toSi(valueAt(machine, path) as number, fieldAt(path).unit as UnitName) * share;
    expect(at(parts, place)).toBeCloseTo(expected, 12);
    expect(expected).not.toBe(0);
  });

  it("takes counts, volts, amperes and ratios over as they are", () => {
    const bare = new Set(["", "A", "V", "Hz", "s", "m", "m²", "1/s", "teeth"]);
    const renamed: Record<string, string> = {
      noLoadCurrentA: "noLoadCurrent",
      noLoadVoltageV: "noLoadVoltage",
      loopHz: "loopRate",
      startRampSeconds: "startRamp",
      dragAreaM2: "dragArea",
      elevationM: "elevation",
    };
    const plain = fields.filter(
      ({ path, kind, unit }) =>
        (kind === "number" || kind === "integer") && bare.has(unit) && !/fittedWith|secondStage|modes/.test(path),
    );
    expect(plain.length).toBeGreaterThan(12);
    for (const { path } of plain) {
      const place = path.replace(/\w+$/, (key) => renamed[key] ?? key);
      expect(at(parts, place), path).toBe(valueAt(machine, path));
    }
  });

  it("keeps what is not there as null", () => {
    const bare = partsOf(withValue(defaultMachine, "mainRotor.ratedRpm", null));
    expect([bare.mainRotor.ratedSpeed, bare.gears.secondStage, bare.controller.learned.motorSpeed]).toEqual([
      null,
      null,
      null,
    ]);
    expect(bare.controller.learned.fittedWith).toBeNull();
  });

  it("turns a thousand turns a minute into the radians that they are", () => {
    expect(parts.modes[1]?.headSpeed).toBeCloseTo((2100 * 2 * Math.PI) / 60, 12);
    expect(parts.motor.speedConstant).toBeCloseTo(117.286, 3);
  });
});
