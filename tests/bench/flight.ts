/**
 * Speed of flights in time: processor time of one core, the median of runs that follow each other as while a slider moves, and
 * the garbage that a tick makes.
 */
import { type HeapProfiler, Session } from "node:inspector/promises";
import { fileURLToPath } from "node:url";
import { decimate } from "#model/flight/decimate";
import { type Flight, type FlightOrder, fly } from "#model/flight/run";
import { hover, punch, wholePack } from "#model/flight/scenarios";
import { rotorSurface } from "#model/flight/surface";
import { sample } from "../model/flight/sample.ts";
import { type Line, median } from "./line.ts";

const mode = { machine: sample, setSpeed: (2100 * Math.PI) / 30 };

/**
 * A plain loop, the yardstick of this run: five million steps of a recurrence with a square root and a division. Some 52 ms
 * where the budgets were set.
 */
function yardstick(): number {
  let x = 1;
  for (let i = 1; i <= 5_000_000; i++) x = Math.sqrt(x + i) / (1 + x);
  return x;
}

/** Processor time of the process in ms: unlike the clock, it does not count what other processes take. */
function time(work: () => unknown, runs: number): number {
  for (let i = 0; i < Math.ceil(runs / 2); i++) work();
  const spent = Array.from({ length: runs }, () => {
    const before = process.cpuUsage();
    work();
    const { user, system } = process.cpuUsage(before);
    return (user + system) / 1000;
  });
  return median(spent);
}

/** Bytes of all objects that a run makes, those collected meanwhile too: counted by the engine's own allocation profiler. */
async function made(session: Session, order: FlightOrder): Promise<number> {
  for (let i = 0; i < 30; i++) fly(order);
  await session.post("HeapProfiler.startSampling", {
    samplingInterval: 64,
    includeObjectsCollectedByMajorGC: true,
    includeObjectsCollectedByMinorGC: true,
  });
  fly(order);
  const { profile } = await session.post("HeapProfiler.stopSampling");
  const sum = (node: HeapProfiler.SamplingHeapProfileNode): number =>
    node.selfSize + node.children.reduce((all, child) => all + sum(child), 0);
  return sum(profile.head);
}

async function garbagePerTick(): Promise<number> {
  const session = new Session();
  session.connect();
  const short = await made(session, hover(mode, 10));
  const long = await made(session, hover(mode, 30));
  session.disconnect();
  return Math.max(0, (long - short) / 20_000);
}

/** Figures of the simulator. */
export async function bench(): Promise<Line[]> {
  const ten: FlightOrder = { ...punch(mode, { collective: 0.19 }), duration: 10 };
  const mix = [
    { collective: 0.08, seconds: 6 },
    { collective: 0.19, seconds: 1.5 },
    { collective: 0.12, seconds: 3 },
  ];
  const pack: FlightOrder = { ...wholePack(mode, mix), duration: 360 };
  const flown: Flight = fly(ten);
  if (flown.ticks !== 10_000 || fly(pack).end.time < 359) throw new Error("The flights are not what they should be.");
  const { trace } = flown;
  // Another density each time, so that nothing kept serves.
  let density = 1.2;
  const plain = time(yardstick, 10);
  const second = time(() => fly(ten), 30);
  const whole = time(() => fly(pack), 10);
  const tables = () => {
    density += 1e-6;
    return rotorSurface(sample.rotor.map, sample.tail, 0.5, density, 320);
  };
  return [
    { name: "flight-10s-at-1-khz", value: second, unit: "ms", budget: 16 },
    { name: "flight-six-minute-pack", value: whole, unit: "ms", budget: 400 },
    // The same over the plain loop: comparable between machines, and between loads of one.
    { name: "flight-10s-over-plain-loop", value: second / plain, unit: "1", budget: 16 / 52 },
    { name: "flight-six-minute-pack-over-plain-loop", value: whole / plain, unit: "1", budget: 400 / 52 },
    { name: "flight-garbage-per-tick", value: await garbagePerTick(), unit: "B", budget: 1 },
    { name: "flight-decimate-trace", value: time(() => decimate(trace.rotorSpeed, 800), 50), unit: "ms", budget: 1 },
    { name: "flight-rotor-tables", value: time(tables, 30), unit: "ms", budget: 16 },
  ];
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  for (const line of await bench()) console.log(JSON.stringify({ ...line, value: Number(line.value.toPrecision(4)) }));
}
