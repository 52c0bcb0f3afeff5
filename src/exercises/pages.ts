/** Which exercises stand on which page, by the page's name in its address. */
import type { Recipe } from "./exercise.ts";
import { anotherPinion } from "./pages/another-pinion.ts";
import { beforeYouBuy } from "./pages/before-you-buy.ts";
import { bottomOfTheBand } from "./pages/bottom-of-the-band.ts";
import { fromKvToHeadSpeed } from "./pages/from-kv-to-head-speed.ts";
import { governorsHands } from "./pages/governors-hands.ts";
import { howFarToTrust } from "./pages/how-far-to-trust.ts";
import { itReadsWrong } from "./pages/it-reads-wrong.ts";
import { learnItAgain } from "./pages/learn-it-again.ts";
import { learningRun } from "./pages/learning-run.ts";
import { roomAtTheTop } from "./pages/room-at-the-top.ts";
import { roomAtTheTopInMotion } from "./pages/room-at-the-top-in-motion.ts";
import { theCard } from "./pages/the-card.ts";
import { tipOfTheBlade } from "./pages/the-tip-of-the-blade.ts";
import { twoGears } from "./pages/two-gears.ts";
import { whatAPackGives } from "./pages/what-a-pack-gives.ts";
import { whatTheMagnetsChange } from "./pages/what-the-magnets-change.ts";
import { whatTheRotorAsks } from "./pages/what-the-rotor-asks.ts";
import { whatTheThrottleAsksFor } from "./pages/what-the-throttle-asks-for.ts";
import { wholePack } from "./pages/whole-pack.ts";
import { theWords } from "./pages/words.ts";

export const recipes = {
  "what-the-throttle-asks-for": whatTheThrottleAsksFor,
  "from-kv-to-head-speed": fromKvToHeadSpeed,
  "what-the-magnets-change": whatTheMagnetsChange,
  "two-gears": twoGears,
  "what-a-pack-gives": whatAPackGives,
  "what-the-rotor-asks": whatTheRotorAsks,
  "room-at-the-top": roomAtTheTop,
  "room-at-the-top-in-motion": roomAtTheTopInMotion,
  "bottom-of-the-band": bottomOfTheBand,
  "governors-hands": governorsHands,
  "learning-run": learningRun,
  "learn-it-again": learnItAgain,
  "the-tip-of-the-blade": tipOfTheBlade,
  "another-pinion": anotherPinion,
  "before-you-buy": beforeYouBuy,
  "whole-pack": wholePack,
  "it-reads-wrong": itReadsWrong,
  "the-card": theCard,
  "how-far-to-trust": howFarToTrust,
  words: theWords,
} as const satisfies Readonly<Record<string, readonly Recipe[]>>;

/** A page that has exercises. */
export type ExercisePage = keyof typeof recipes;
