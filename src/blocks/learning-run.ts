/** The rehearsed run on the page: what the reader expects to be stored, and the run itself beside the right one. */

import { modeName } from "#figures/mode-name";
import { sizeOf } from "#flights/flight";
import { liftIn, modesWith, rehearsal, type Stored, storedBy } from "#flights/rehearsal";
import { type LearningSetup, properLearning } from "#flights/scenarios";
import type { Machine } from "#machine/machine";
import type { Answers } from "#view/answers";
import { formatModelled, formatValue } from "#view/format";
import { type Shown, show } from "#view/shown";
import { enLearning as en } from "#view/words/en-learning";
import type { FlightRun, FlightState } from "./flight-state.ts";
import { flightView } from "./flight-view.ts";
import { type ChooseState, choose } from "./guess.ts";
import { learningSetup, slipsIn } from "./learning-setup.ts";

/** The question for a set-up: each combination of slips is asked once, so that sliders don't ask again and again. */
const questionOf = (machine: Machine, answers: Answers): string => {
  const { keys } = slipsIn(machine, answers);
  return `learning-guess-${keys.length === 0 ? "right" : keys.join("-")}`;
};

/** Whether the reader has committed to what this run stores; the right run asks for nothing. */
export const hasGuessed = (machine: Machine, answers: Answers): boolean =>
  slipsIn(machine, answers).keys.length === 0 || typeof answers[questionOf(machine, answers)] === "string";

/** Share of a reference as a text without a sign: `9.8 %`. */
const shareText = (off: number): string => formatValue(Math.abs(100 * off), "percent", { decimals: 1 });

/** What is stored, in one sentence. */
export function storedSentence(stored: Stored): string {
  if (stored.kind === "nothing" || stored.kind === "none") return stored.words;
  const speed = formatModelled(stored.storedRpm);
  return stored.kind === "same" ? en.stored.same(speed) : en.stored[stored.kind](speed, shareText(stored.off));
}

/** What a mode, the last of the list, then turns; "" where nothing is off. */
function exampleOf(machine: Machine, stored: Stored): string {
  if (stored.kind !== "low" && stored.kind !== "high") return "";
  const last = machine.modes.length - 1;
  const mode = modesWith(machine, stored.off)[last];
  if (!mode) return "";
  return en.stored.mode(modeName(machine, last), formatValue(mode.wanted, "rpm"), formatValue(mode.real, "rpm"));
}

/** Asks what a run with these slips stores, before it is flown; nothing to ask while everything is right. */
export function learningGuess(machine: Machine, answers: Answers): Shown<ChooseState> | null {
  const { keys, kinds } = slipsIn(machine, answers);
  if (keys.length === 0) return null;
  const stored = storedBy(machine, learningSetup(machine, answers));
  const right = stored.kind === "none" ? "nothing" : stored.kind;
  const facts = [storedSentence(stored), exampleOf(machine, stored)].filter(Boolean).join(" ");
  const reply = Object.fromEntries(
    en.guess.options.map(({ key }) => [key, key === right ? `${en.guess.yes} ${facts}` : en.guess.far]),
  );
  return choose({
    id: questionOf(machine, answers),
    ask: en.guess.ask(kinds),
    options: en.guess.options,
    right,
    reply: { ...reply, [right]: facts },
    answers,
  });
}

/** Less lift than this share of the weight is no matter: light on its skids, a machine stays where it is. Our choice. */
const noticed = 0.5;

/** What the rotor lifts in a run, where that is worth a word. */
export function liftWords(machine: Machine, setup: LearningSetup): string {
  const lift = liftIn(machine, setup);
  if (lift === null || lift < noticed) return "";
  const share = formatValue(100 * lift, "percent", { decimals: 0 });
  return lift < 1 ? en.run.lift(share) : en.run.flies(share);
}

/** What the questions of the page come to on a machine. */
export interface LearningFacts {
  /** What a mode turns after a run with half a pack, rpm. */
  readonly halfPack: number | null;
  readonly halfWords: string;
  /** The slip that costs most, and all three in words. */
  readonly heaviest: "pack" | "pitch" | "complete";
  /** What is answered to each of them; the heaviest one with the figures of all. */
  readonly replies: Readonly<Record<"pack" | "pitch" | "complete", string>>;
}

/**
 * Half a pack, five degrees of pitch, no blades: what each stores on this machine. Three runs: they are flown once a question
 * about them is answered.
 */
export function learningFacts(machine: Machine, mode: number, answered: boolean): LearningFacts {
  if (!answered) return { halfPack: null, halfWords: "", heaviest: "pack", replies: en.facts.replies };
  const offOf = (change: Partial<LearningSetup>): number | null => {
    const stored = storedBy(machine, { ...properLearning, ...change });
    return "off" in stored ? stored.off : null;
  };
  const offs = {
    pack: offOf({ chargePercent: 50 }),
    pitch: offOf({ pitchDeg: 5 }),
    complete: offOf({ complete: false }),
  };
  const size = (key: keyof typeof offs) => Math.abs(offs[key] ?? 0);
  const keys = ["pack", "pitch", "complete"] as const;
  const say = (off: number | null) =>
    off === null ? en.facts.none : en.facts.off[off < 0 ? "low" : "high"](shareText(off));
  const wanted = machine.modes[mode]?.headRpm ?? null;
  const pack = wanted === null ? null : offs.pack;
  const heaviest = keys.reduce((best, key) => (size(key) > size(best) ? key : best));
  const weights = en.facts.weights(say(offs.pack), say(offs.pitch), say(offs.complete));
  return {
    halfPack: pack === null ? null : wanted! * (1 + pack),
    halfWords:
      pack === null ? en.facts.noFormality : en.facts.formality(formatValue(wanted! * -pack, "rpm"), shareText(pack)),
    heaviest,
    replies: { ...en.facts.replies, [heaviest]: `${en.facts.replies[heaviest]} ${weights}` },
  };
}

/** Head speed, duty, voltage and pitch while it learns; beside it, dashed, the run as it should be. */
export function learningPlot(machine: Machine, whatIf: Machine | null, answers: Answers): Shown<FlightState> {
  const setup = learningSetup(machine, answers);
  const slips = slipsIn(machine, answers).keys.length > 0;
  const runs: FlightRun[] = [
    { key: "now", label: slips || whatIf ? en.run.yours : "", ink: "now", request: rehearsal(machine, setup) },
    ...(whatIf
      ? [{ key: "what-if", label: en.run.whatIf, ink: "what-if" as const, request: rehearsal(whatIf, setup) }]
      : []),
    ...(slips
      ? [
          {
            key: "right",
            label: en.run.right,
            ink: "pinned-now" as const,
            request: rehearsal(machine, properLearning),
          },
        ]
      : []),
  ];
  return show<FlightState>(flightView, {
    id: "learning-run",
    title: en.run.title,
    lanes: ["head-speed", "duty", "voltage", "collective"],
    seconds: Math.max(10, ...runs.map(({ request }) => sizeOf(request)?.seconds ?? 0)),
    runs,
    drawing: null,
    asks: false,
    go: hasGuessed(machine, answers),
    wait: en.run.wait,
    long: false,
    options: [],
  });
}
