/**
 * The yardstick of the page benchmarks: as much on it as on a page of the workbook (five sliders, three plots of two
 * curves with 200 points, twelve figures), written by hand in the plainest way: an event handler that works everything
 * out anew, d3 for scales, curves and axes, no notebook. Machines differ; the ratio of the two pages hardly does.
 */
import { axisBottom, axisLeft } from "d3-axis";
import { scaleLinear } from "d3-scale";
import { select } from "d3-selection";
import { line } from "d3-shape";

const inputs = {
  speed: { name: "speed, km/h", low: 5, high: 60, step: 1, value: 25 },
  mass: { name: "mass, kg", low: 50, high: 130, step: 1, value: 85 },
  slope: { name: "slope, %", low: 0, high: 15, step: 0.5, value: 4 },
  drag: { name: "drag area, m²", low: 0.2, high: 0.7, step: 0.01, value: 0.4 },
  rolling: { name: "rolling, ‰", low: 2, high: 12, step: 0.5, value: 5 },
};
type Inputs = Record<keyof typeof inputs, number>;
const state = Object.fromEntries(Object.entries(inputs).map(([key, input]) => [key, input.value])) as Inputs;

/** One way to write numbers for each count of decimals. */
const formats = [0, 1, 2].map(
  (d) => new Intl.NumberFormat("en", { minimumFractionDigits: d, maximumFractionDigits: d }),
);
const format = (decimals: number) => (value: number) => formats[decimals]?.format(value) ?? "";

const density = 1.2;
const gravity = 9.81;
const airForce = (s: Inputs, v: number): number => 0.5 * density * s.drag * v * v;
const tyreForce = (s: Inputs): number => (s.rolling / 1000) * s.mass * gravity * Math.cos(Math.atan(s.slope / 100));
const hillForce = (s: Inputs): number => s.mass * gravity * Math.sin(Math.atan(s.slope / 100));
const power = (s: Inputs, v: number): number => v * (airForce(s, v) + tyreForce(s) + hillForce(s));

function figures(s: Inputs): Record<string, [value: number, decimals: number, unit: string]> {
  const v = s.speed / 3.6;
  const all = power(s, v);
  const free = Math.max(0, hillForce(s) - tyreForce(s)) / (0.5 * density * s.drag);
  return {
    "air-power": [v * airForce(s, v), 0, "W"],
    "tyre-power": [v * tyreForce(s), 0, "W"],
    "hill-power": [v * hillForce(s), 0, "W"],
    power: [all, 0, "W"],
    "power-per-kilogram": [all / s.mass, 2, "W/kg"],
    "air-force": [airForce(s, v), 1, "N"],
    "other-force": [tyreForce(s) + hillForce(s), 1, "N"],
    energy: [all * 3.6, 0, "kJ"],
    climb: [s.speed * 10 * s.slope, 0, "m"],
    "coasting-speed": [3.6 * Math.sqrt(free), 1, "km/h"],
    "half-power": [power(s, v / 2), 0, "W"],
    "tenth-more": [power(s, v * 1.1) - all, 0, "W"],
  };
}

const plots = [
  {
    name: "power",
    title: "Power against speed",
    x: [0, 60],
    unit: "W",
    at: (s: Inputs) => s.speed,
    curves: [(s: Inputs, x: number) => power(s, x / 3.6), (s: Inputs, x: number) => (x / 3.6) * airForce(s, x / 3.6)],
  },
  {
    name: "slope",
    title: "Power against slope",
    x: [0, 15],
    unit: "W",
    at: (s: Inputs) => s.slope,
    curves: [
      (s: Inputs, x: number) => power({ ...s, slope: x }, s.speed / 3.6),
      (s: Inputs, x: number) => (s.speed / 3.6) * hillForce({ ...s, slope: x }),
    ],
  },
  {
    name: "mass",
    title: "Power against mass",
    x: [50, 130],
    unit: "W",
    at: (s: Inputs) => s.mass,
    curves: [
      (s: Inputs, x: number) => power({ ...s, mass: x }, s.speed / 3.6),
      (s: Inputs, x: number) => (s.speed / 3.6) * tyreForce({ ...s, mass: x }),
    ],
  },
] as const;

const width = 620;
const height = 260;

/** Draws one plot's frame and returns what brings it to a state. */
function draw(plot: (typeof plots)[number]): (s: Inputs) => void {
  const figure = select("#plots").append("figure").attr("data-plot", plot.name);
  figure.append("h2").text(`${plot.title}, ${plot.unit}`);
  const svg = figure.append("svg").attr("viewBox", `0 0 ${width} ${height}`).attr("role", "img");
  svg.attr("aria-label", plot.title);
  const x = scaleLinear(plot.x, [50, width - 20]);
  const y = scaleLinear([0, 1], [height - 30, 10]);
  svg
    .append("g")
    .attr("transform", `translate(0,${height - 30})`)
    .call(axisBottom(x));
  const left = svg.append("g").attr("transform", "translate(50,0)");
  const curves = plot.curves.map((curve, i) => ({
    curve,
    path: svg
      .append("path")
      .attr("fill", "none")
      .attr("stroke", i ? "#a8480f" : "#0a5a75")
      .attr("stroke-width", 2.4),
  }));
  const dot = svg.append("circle").attr("r", 6).attr("fill", "#0a5a75");
  const note = svg.append("text");
  const caption = figure.append("figcaption");
  const xs = Array.from({ length: 200 }, (_, i) => plot.x[0] + ((plot.x[1] - plot.x[0]) * i) / 199);
  return (s) => {
    const data = curves.map(({ curve }) => xs.map((at): [number, number] => [at, curve(s, at)]));
    const top = Math.max(...data.flatMap((points) => points.map((point) => point[1])));
    y.domain([0, top]).nice();
    left.call(
      axisLeft(y)
        .ticks(6)
        .tickSize(70 - width),
    );
    const shape = line<[number, number]>(
      (point) => x(point[0]),
      (point) => y(point[1]),
    );
    curves.forEach(({ path }, i) => {
      path.attr("d", shape(data[i] ?? []));
    });
    const at = plot.at(s);
    const value = plot.curves[0](s, at);
    dot.attr("cx", x(at)).attr("cy", y(value));
    note
      .attr("x", x(at) + 9)
      .attr("y", y(value) - 9)
      .text(`${format(0)(value)} ${plot.unit}`);
    caption.text(`At ${format(1)(at)} it takes ${format(0)(value)} ${plot.unit}.`);
  };
}

const redraw = plots.map(draw);
const outputs = new Map(
  [...document.querySelectorAll<HTMLOutputElement>("output")].map((output) => [output.dataset.quantity ?? "", output]),
);

function update(): void {
  for (const [name, [value, how, unit]] of Object.entries(figures(state))) {
    const output = outputs.get(name);
    if (!output) continue;
    output.textContent = `${format(how)(value)} ${unit}`;
    output.dataset.value = String(value);
  }
  for (const plot of redraw) plot(state);
}

for (const [key, input] of Object.entries(inputs) as [keyof Inputs, (typeof inputs)["speed"]][]) {
  const label = select("#inputs").append("label").attr("data-input", key);
  label.append("span").text(input.name);
  const control = label.append("input").attr("type", "range").attr("min", input.low).attr("max", input.high);
  control.attr("step", input.step).property("value", input.value);
  const shown = label.append("b").text(input.value);
  control.on("input", (event: Event) => {
    state[key] = (event.currentTarget as HTMLInputElement).valueAsNumber;
    shown.text(state[key]);
    update();
  });
}
update();
