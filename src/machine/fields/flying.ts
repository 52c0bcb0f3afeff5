/**
 * Airframe, place and flight modes: what is flown, where, and how fast. Tolerances, sensible ranges and defaults are
 * common practice, no source.
 */
import { group, list, real, text } from "../shape.ts";

export const airframe = group("Airframe", {
  massG: real({
    name: "Mass, ready to fly",
    symbol: "m_h",
    unit: "g",
    low: 100,
    high: 7000,
    min: 10,
    max: 50_000,
    step: 10,
    default: 2050,
    read: "Scale: the whole machine with its pack in, unplugged, and its canopy.",
    tolerance: { relative: 0.01 },
  }),
  dragAreaM2: real({
    name: "Drag area",
    symbol: "f",
    unit: "m²",
    low: 0.001,
    high: 0.06,
    min: 0,
    max: 2,
    step: 0.001,
    default: 0.014,
    read: "Not printed: about a third of the area that you see from the front, skids and tail boom included.",
    tolerance: { relative: 0.25 },
  }),
});

export const place = group("Place", {
  elevationM: real({
    name: "Elevation",
    symbol: "h",
    unit: "m",
    low: 0,
    high: 3000,
    min: -500,
    max: 5000,
    step: 10,
    default: 100,
    read: "On a map, or as a phone shows it: the height of the field above the sea.",
    tolerance: { absolute: 20 },
  }),
  temperatureC: real({
    name: "Air temperature",
    symbol: "T",
    unit: "°C",
    low: -10,
    high: 40,
    min: -40,
    max: 60,
    step: 1,
    default: 20,
    read: "A thermometer in the shade at the field.",
    tolerance: { absolute: 2 },
  }),
  humidityPercent: real({
    name: "Relative humidity",
    symbol: "\\varphi",
    unit: "%",
    low: 0,
    high: 100,
    min: 0,
    max: 100,
    step: 5,
    default: 50,
    read: "In the weather report; it matters little.",
    tolerance: { absolute: 10 },
  }),
});

export const mode = group("Flight mode", {
  name: text({
    name: "Name of the mode",
    symbol: "",
    max: 80,
    default: "another",
    read: "Your own word for this position of the transmitter's switch.",
  }),
  headRpm: real({
    name: "Head speed",
    symbol: "N",
    unit: "rpm",
    low: 800,
    high: 5000,
    min: 50,
    max: 20_000,
    step: 10,
    default: 2000,
    read: "Your own choice, below the blade maker's limit; measured with an optical counter or by telemetry.",
    tolerance: {},
  }),
  collectiveMinDeg: real({
    name: "Lowest collective",
    symbol: "\\theta_{\\min}",
    unit: "°",
    low: -15,
    high: 5,
    min: -30,
    max: 30,
    step: 0.5,
    default: -8,
    read: "Motor unplugged or pinion out of mesh, throttle hold on: pitch gauge on a blade, collective stick all the way down.",
    tolerance: { absolute: 0.4 },
  }),
  collectiveMaxDeg: real({
    name: "Highest collective",
    symbol: "\\theta_{\\max}",
    unit: "°",
    low: 0,
    high: 15,
    min: -30,
    max: 30,
    step: 0.5,
    default: 10,
    read: "Motor unplugged or pinion out of mesh, throttle hold on: pitch gauge on a blade, collective stick all the way up.",
    tolerance: { absolute: 0.4 },
  }),
});

export const modes = list("Flight modes", [1, 6], mode, [
  { name: "gentle", headRpm: 1850, collectiveMinDeg: -4, collectiveMaxDeg: 9 },
  { name: "club", headRpm: 2100, collectiveMinDeg: -8, collectiveMaxDeg: 10 },
  { name: "sporty", headRpm: 2450, collectiveMinDeg: -11, collectiveMaxDeg: 11 },
]);
