/**
 * `npm run -s bench`: builds the workbook, measures its first page beside a page written by hand (both in this run, turn
 * by turn, so that the machine doesn't matter), then the model. Prints one JSON object a line; see line.ts.
 */
import { existsSync } from "node:fs";
import { build } from "vite";
import { serve } from "../support/serve.ts";
import { type Line, median, quantile } from "./line.ts";
import { type Load, load, type Slide, slide } from "./page.ts";

const cache = new URL("../../.cache/", import.meta.url);
const inputs = ["motor.poles", "gears.pinionTeeth", "gears.mainTeeth", "pack.voltage", "motor.kvRpmPerVolt"];
const ours = inputs.map((path) => `[data-input="${path}"] input[type=range]`);
const theirs = ["speed", "mass", "slope", "drag", "rolling"].map((path) => `[data-input="${path}"] input[type=range]`);

async function measurePage(): Promise<Line[]> {
  const page = new URL("bench-site", cache).pathname;
  const yardstick = new URL("bench-yardstick", cache).pathname;
  const root = new URL("reference", import.meta.url).pathname;
  const quiet = { logLevel: "error", define: { "process.env.NODE_ENV": '"production"' } } as const;
  await build({ ...quiet, build: { outDir: page, emptyOutDir: true } });
  await build({ ...quiet, root, configFile: false, build: { outDir: yardstick, emptyOutDir: true } });
  const [site, other] = [await serve(page), await serve(yardstick)];
  try {
    const [url, otherUrl] = [`${site.origin}/`, `${other.origin}/`];
    // The first load compresses the files and warms the machine: not counted.
    await load(url);
    await load(otherUrl);
    const own: Load[] = [];
    const hand: Load[] = [];
    for (let i = 0; i < 7; i++) {
      own.push(await load(url));
      hand.push(await load(otherUrl));
    }
    const lines = loadLines(own, hand);
    for (const slowdown of [1, 6]) {
      const ownSlides: Slide[] = [];
      const handSlides: Slide[] = [];
      for (let i = 0; i < 3; i++) {
        ownSlides.push(await slide(url, ours, slowdown));
        handSlides.push(await slide(otherUrl, theirs, slowdown));
      }
      lines.push(...slideLines(ownSlides, handSlides, slowdown));
    }
    return lines;
  } finally {
    await site.close();
    await other.close();
  }
}

/** A figure that is judged against the hand-written page's: the budget is `allowed` times that one. */
const beside = (name: string, value: number, hand: number, allowed: number): Line => ({
  name,
  value,
  unit: "ms",
  budget: allowed * hand,
  ratio: value / hand,
});

function loadLines(own: Load[], hand: Load[]): Line[] {
  const of = (loads: Load[], key: keyof Load): number => median(loads.map((one) => one[key]));
  return [
    { name: "first-page-transfer", value: of(own, "bytes") / 1000, unit: "kB", budget: 150 },
    { name: "first-page-requests", value: of(own, "requests"), unit: "1", budget: 25 },
    { name: "first-page-other-hosts", value: of(own, "otherHosts"), unit: "1", budget: 0 },
    { name: "first-page-layout-shift", value: Math.max(...own.map((one) => one.layoutShift)), unit: "1", budget: 0 },
    beside("first-page-first-paint", of(own, "firstPaint"), of(hand, "firstPaint"), 1.5),
    beside("first-page-plots-drawn", of(own, "drawn"), of(hand, "drawn"), 1.5),
  ];
}

function slideLines(own: Slide[], hand: Slide[], slowdown: number): Line[] {
  const mark = slowdown > 1 ? `-at-${slowdown}-fold-throttling` : "";
  const all = (slides: Slide[], key: "toFigures" | "frames"): number[] => slides.flatMap((one) => one[key]);
  const busy = (slides: Slide[]): number => median(slides.map((one) => one.busy));
  const late = (slides: Slide[]): number => quantile(all(slides, "frames"), 0.95);
  return [
    // The next frame comes within 16.7 ms; with a slowed processor the budget is as much longer.
    { name: `event-to-figures${mark}`, value: median(all(own, "toFigures")), unit: "ms", budget: 16.7 * slowdown },
    {
      name: `event-to-figures-95th${mark}`,
      value: quantile(all(own, "toFigures"), 0.95),
      unit: "ms",
      budget: 16.7 * slowdown,
    },
    beside(`busy-per-step${mark}`, busy(own), busy(hand), 1.3),
    beside(`frame-95th${mark}`, late(own), late(hand), 1.1),
  ];
}

/** Benchmarks of the model stand in files of their own, each with a function `bench` that returns its lines. */
async function measureModel(): Promise<Line[]> {
  const lines: Line[] = [];
  for (const name of ["figures", "rotor", "flight"]) {
    const file = new URL(`${name}.ts`, import.meta.url);
    if (!existsSync(file)) continue;
    const { bench } = (await import(file.href)) as { bench: () => Line[] | Promise<Line[]> };
    lines.push(...(await bench()));
  }
  return lines;
}

const rounded = (value: number): number => Number(value.toPrecision(4));
for (const measure of [measureModel, measurePage]) {
  for (const line of await measure()) {
    const ratio = line.ratio === undefined ? {} : { ratio: rounded(line.ratio) };
    console.log(JSON.stringify({ ...line, value: rounded(line.value), budget: rounded(line.budget), ...ratio }));
  }
}
