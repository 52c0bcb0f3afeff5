/** What happened in a flight and when, in sentences. The first is the main thing; plots, speech and tests all use them. */
import { withUnit } from "#machine/words";
import { rpm } from "#model/constants";
import { reserveCharge } from "#model/endurance";
import type { Span } from "#model/flight/watch";
import type { Flown } from "./flight.ts";
import { laneAt } from "./lanes.ts";
import type { Scenario } from "./scenarios.ts";

const speed = (value: number): string => withUnit(Math.round(value / rpm), "rpm");
const seconds = (time: number): string => withUnit(Number(time.toFixed(time < 10 ? 1 : 0)), "s");
const fine = (time: number): string => withUnit(Number(time.toFixed(2)), "s");
const percent = (share: number): string => withUnit(Math.round(100 * share), "%");
const minutes = (time: number): string => withUnit(Number((time / 60).toFixed(1)), "min");

const longest = (spans: readonly Span[]): Span | null =>
  spans.reduce<Span | null>((best, s) => (best && best.to - best.from >= s.to - s.from ? best : s), null);

const ofKind = (flown: Flown, kind: Span["kind"]): Span[] => flown.spans.filter((span) => span.kind === kind);

/** Time (s) of the last moment before `at` at which the collective began to rise, or null. Angles in rad. */
function riseBefore({ trace }: Flown, at: number): number | null {
  const { time, collective } = trace;
  let began: number | null = null;
  for (let i = 1; i < time.length && time[i]! <= at; i++) {
    const rate = (collective[i]! - collective[i - 1]!) / Math.max(time[i]! - time[i - 1]!, 1e-6);
    if (rate > 0.1) began ??= time[i - 1]!;
    else if (rate < -0.1) began = null;
  }
  return began;
}

/** Whether the collective was eased by more than half a degree between two times (s), before the speed was back. */
function easedBetween(flown: Flown, from: number, to: number): boolean {
  const { time, collective } = flown.trace;
  let highest = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < time.length && time[i]! <= to; i++) {
    if (time[i]! < from) continue;
    highest = Math.max(highest, collective[i]!);
    if (highest - collective[i]! > 0.01) return true;
  }
  return false;
}

/** A drop shorter than this is told as a dip that the governor mends, s. Our choice. */
const dip = 0.4;

/** How the set speed was held: the main sentence of every flight with a governor. Times in s, speeds in rpm. */
function heldWords(flown: Flown): string {
  const lows = ofKind(flown, "speed-low");
  const worst = lows.reduce<Span | null>((best, s) => (best && best.value <= s.value ? best : s), null);
  if (!worst) return steadyWords(flown);
  const began = riseBefore(flown, worst.from);
  const more = lows.length > 1 ? ` That is the deepest of ${lows.length} dips.` : "";
  if (worst.ended && worst.to - worst.from < dip) {
    const after =
      began === null || worst.at - began > 3
        ? `at ${fine(worst.at)}`
        : `${fine(worst.at - began)} after the pitch comes`;
    return `Dips by ${speed(worst.level - worst.value)} ${after}, and is back within 1 % ${fine(worst.to - worst.at)} later.${more}`;
  }
  const holds =
    began === null || worst.from - began > 3
      ? `Holds until ${fine(worst.from)}`
      : `Holds for ${fine(worst.from - began)}`;
  const low = `then sinks by ${speed(worst.level - worst.value)}`;
  const eased = easedBetween(flown, worst.at, worst.to);
  const end = !worst.ended
    ? ", and isn't back by the end"
    : eased
      ? " until you ease the pitch"
      : `, and is back within 1 % after ${fine(worst.to - worst.from)}`;
  return `${holds}, ${low}${end}.${more}`;
}

function steadyWords(flown: Flown): string {
  const { rotorSpeed, setSpeed, time } = flown.trace;
  let deepest = 0;
  let at = 0;
  let asked = false;
  let reached = false;
  for (let i = 0; i < time.length; i++) {
    if (!(setSpeed[i]! > 0)) continue;
    asked = true;
    // A ramp on the way to the speed is no dip.
    if (setSpeed[i]! < flown.setSpeed * 0.999) continue;
    if (Math.abs(rotorSpeed[i]! / setSpeed[i]! - 1) < 0.01) reached = true;
    if (reached && setSpeed[i]! - rotorSpeed[i]! > deepest) {
      deepest = setSpeed[i]! - rotorSpeed[i]!;
      at = time[i]!;
    }
  }
  if (!asked) return "No governor is at work here.";
  const cut = flown.end.why !== "flown" && flown.end.why !== "ground";
  if (!reached) return `Never reaches the set speed of ${speed(flown.setSpeed)}.`;
  const least = Math.round(deepest / rpm);
  if (cut) return "Until then it holds the set speed.";
  return least < 2
    ? "Holds the set speed all through."
    : `Holds the set speed all through: never more than ${withUnit(least, "rpm")} short, at ${fine(at)}.`;
}

function dutyWords(flown: Flown): string {
  const limits = ofKind(flown, "duty-at-limit");
  const whole = limits.reduce((sum, s) => sum + s.to - s.from, 0);
  const first = limits[0];
  if (first && whole >= 0.05) {
    return `The duty stands at its limit for ${fine(whole)} in all, first at ${fine(first.from)}: there the governor has nothing more to give.`;
  }
  const highest = flown.trace.duty.reduce((most, duty) => Math.max(most, duty), 0);
  return highest > 0.995
    ? "The duty touches its limit and comes straight back."
    : `The duty goes no higher than ${percent(highest)}: there is room left.`;
}

/** An overspeed so soon after the pitch was eased comes from it, s. A duty that moves so far at once is restless. Our choice. */
const reaction = 0.6;
const jump = 0.3;

function overspeedWords(flown: Flown): string {
  const high = ofKind(flown, "speed-high").reduce<Span | null>(
    (best, s) => (best && best.value - best.level >= s.value - s.level ? best : s),
    null,
  );
  if (!high) return "";
  const over = `head runs ${speed(high.value - high.level)} over, at ${fine(high.at)}.`;
  return easedBetween(flown, high.from - reaction, high.at) ? `Unloaded, the ${over}` : `The ${over}`;
}

/** A duty that jumps from one correction to the next: what gains do that are too high for the loop, whether the speed shows it or not. */
function restlessWords({ trace: { duty } }: Flown): string {
  let changes = 0;
  let jumps = 0;
  for (let i = 1; i < duty.length; i++) {
    const change = Math.abs(duty[i]! - duty[i - 1]!);
    if (change > 0.001) changes++;
    if (change > jump) jumps++;
  }
  return jumps > 5 && jumps > 0.15 * changes
    ? `The duty jumps by more than ${percent(jump)} from one correction to the next: these gains are too high here.`
    : "";
}

const limitKinds = [
  "blades-over-limit",
  "motor-over-limit",
  "electrical-over-limit",
  "current-over-limit",
  "winding-over-limit",
  "controller-over-limit",
] as const;

/** Limits that were passed, or hunting: each kind once, the longest. */
function limitWords(flown: Flown, kinds: readonly Span["kind"][]): string[] {
  return kinds.flatMap((kind) => {
    const span = longest(ofKind(flown, kind));
    const event = span && flown.events.find((e) => e.kind === kind && e.from === span.from);
    return event ? [event.words] : [];
  });
}

/** Hunting first, where there is any: then 'holds all through' would be no more than half the truth. */
function unsteadyWords(flown: Flown): string[] {
  const unrest = [...limitWords(flown, ["hunting"]), restlessWords(flown)].filter(Boolean);
  return unrest.length > 0 && ofKind(flown, "speed-low").length === 0 ? unrest : [...unrest, heldWords(flown)];
}

/** What the duty does while nothing happens; the first tenth of a second is the start's own. */
function quietDutyWords({ trace: { time, duty } }: Flown): string {
  let [low, high] = [1, 0];
  for (let i = 0; i < time.length; i++) {
    if (time[i]! < 0.1) continue;
    low = Math.min(low, duty[i]!);
    high = Math.max(high, duty[i]!);
  }
  const tenths = (share: number): string => withUnit(Number((100 * share).toFixed(1)), "%");
  return high < low ? "" : `While nothing happens, the duty moves between ${tenths(low)} and ${tenths(high)}.`;
}

function packWords(flown: Flown): string {
  const reserve = ofKind(flown, "charge-low")[0];
  const { lost, end } = flown;
  const held = lost
    ? `The mode is lost at ${percent(lost.charge)} of charge, after ${minutes(lost.time)}: from there ${speed(lost.set - lost.lowest)} low and more at full load.`
    : `The mode is held to the end, ${minutes(end.time)}.`;
  const land = reserve ? ` ${percent(reserveCharge)} is left after ${minutes(reserve.from)}: land.` : "";
  return `${held}${land}`;
}

function autorotationWords(flown: Flown): string {
  const alone = longest(ofKind(flown, "overrunning"));
  const lowest = ofKind(flown, "speed-low")[0];
  if (!alone) return "The motor is off, but the rotor never runs ahead of it.";
  const { time, rotorSpeed } = flown.trace;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < time.length; i++) {
    if (time[i]! >= alone.from && time[i]! <= alone.to) least = Math.min(least, rotorSpeed[i]!);
  }
  const back = lowest
    ? ` Back on the motor it is ${speed(lowest.level - lowest.value)} low, and there again after ${fine(lowest.to - lowest.from)}.`
    : "";
  return `The rotor turns on its own for ${seconds(alone.to - alone.from)}${Number.isFinite(least) ? `, at the least with ${speed(least)}` : ""}.${back}`;
}

function learningWords(flown: Flown): string {
  const { learned, trace, end } = flown;
  const head = trace.rotorSpeed[trace.rotorSpeed.length - 1] ?? 0;
  const volts = laneAt(trace, "voltage", end.time);
  const left = volts === null ? "" : `, on ${withUnit(Number(volts.toFixed(1)), "V")}`;
  const turned = `The head turns at ${speed(head)} at the end${left}.`;
  if (!learned) return turned;
  return learned.ok
    ? `${turned} Stored as 100 %: ${speed(learned.reference)} at the motor.`
    : `${turned} ${learned.words}`;
}

/** A run that stands beside another: what sets it apart, in two sentences or three. Units as in `flightWords`. */
export const flightWordsInShort = (flown: Flown): string =>
  flown.learned
    ? learningWords(flown)
    : [flown.endWords ?? "", ...unsteadyWords(flown), overspeedWords(flown)].filter(Boolean).join(" ");

/** All of it in sentences, the main one first. Units stand in the words: s, min, rpm, %. */
export function flightWords(flown: Flown, scenario: Scenario): string {
  const parts = ((): string[] => {
    switch (scenario.kind) {
      case "whole-pack":
        return [packWords(flown), ...limitWords(flown, limitKinds).slice(0, 2)];
      case "hover":
        return [...unsteadyWords(flown), quietDutyWords(flown), ...limitWords(flown, limitKinds)];
      case "learning":
        return [learningWords(flown)];
      case "autorotation":
        return [autorotationWords(flown)];
      case "unload":
        return [
          overspeedWords(flown) || "Unloaded, the head stays within 1 % of its speed.",
          heldWords(flown),
          ...limitWords(flown, limitKinds),
        ];
      default:
        return [...unsteadyWords(flown), dutyWords(flown), overspeedWords(flown), ...limitWords(flown, limitKinds)];
    }
  })();
  const ended = scenario.kind === "whole-pack" ? "" : (flown.endWords ?? "");
  // Ground comes last; a run that left the possible says so first.
  return (flown.end.why === "ground" ? [...parts, ended] : [ended, ...parts]).filter(Boolean).join(" ");
}
