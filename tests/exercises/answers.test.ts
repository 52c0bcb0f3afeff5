/**
 * Every answer worked out a second time, by hand formulas of trade units, from nothing but the numbers that stand in the
 * question: so a question says all that its answer needs, and the answer is the right one. Formulas: textbook
 * definitions, written without the model.
 */
import { describe, expect, it } from "vitest";
import { drawExercise } from "#exercises/draw";
import type { Recipe } from "#exercises/exercise";
import { recipes } from "#exercises/pages";
import { demos } from "#machine/demos";

const omega = (rpm: number): number => (rpm * 2 * Math.PI) / 60;
const common = (a: number, b: number): number => (b === 0 ? a : common(b, a % b));

/** By id: the answer from the numbers of the question, in their order. A number that plays no part has no name. */
const byHand: Readonly<Record<string, (n: readonly number[]) => number>> = {
  "head-speed-asked": ([reference, , ratio, throttle]) => (reference! * throttle!) / 100 / ratio!,
  "throttle-wanted": ([reference, ratio, head]) => (100 * head! * ratio!) / reference!,
  "rounded-throttle": ([, full, wanted]) => (Math.round((100 * wanted!) / full!) * full!) / 100,
  "gear-ratio": ([pinion, main]) => main! / pinion!,
  "kv-to-head-speed": ([kv, , volts, ratio, amps, milliohm]) => (kv! * (volts! - (amps! * milliohm!) / 1000)) / ratio!,
  "one-tooth-more": ([, before]) => 100 / before!,
  "one-cell-more": ([, , cell, kv, ratio]) => (kv! * cell!) / ratio!,
  "electrical-speed": ([poles, rpm]) => (rpm! * poles!) / 2,
  "fastest-motor": ([limit, poles]) => (2 * limit!) / poles!,
  "wrong-display": ([rpm, , , poles, told]) => (rpm! * poles!) / told!,
  "centre-distance": ([pinion, main, module]) => (module! * (pinion! + main!)) / 2,
  "same-teeth-again": ([pinion, main]) => pinion! / common(pinion!, main!),
  "tail-speed": ([head, tail]) => head! * tail!,
  // v = pi d n, with d in metres and n in turns a second.
  "pitch-line-speed": ([teeth, module, rpm]) => (Math.PI * ((teeth! * module!) / 1000) * rpm!) / 60,
  "pack-resistance": ([cells, each, , leads]) => cells! * each! + leads!,
  "cold-pack": ([cells, each, , leads, , factor]) => cells! * each! * factor! + leads!,
  sag: ([rest, milliohm, amps]) => rest! - (milliohm! * amps!) / 1000,
  "heat-of-current": ([slow, heat, fast]) => (heat! * fast! * fast!) / (slow! * slow!),
  "disc-area": ([diameter]) => (Math.PI / 4) * (diameter! / 1000) ** 2,
  // P = T vi with vi = sqrt(T / (2 rho A)).
  "least-power": ([mass, density, area]) => (mass! * 9.80665) ** 1.5 / Math.sqrt(2 * density! * area!),
  "own-drag": ([slow, power, fast]) => power! * (fast! / slow!) ** 3,
  "figure-of-merit": ([ideal, real]) => ideal! / real!,
  "room-in-percent": ([set, ceiling]) => (100 * (ceiling! - set!)) / set!,
  "ceiling-under-load": ([kv, amps, volts, milliohm, ratio]) => (kv! * (volts! - (amps! * milliohm!) / 1000)) / ratio!,
  "short-at-ninety": ([, full, throttle, ceiling]) => (full! * throttle!) / 100 - ceiling!,
  // E = J n²/2: what is left goes with the square of the speed.
  "paid-from-spin": ([from, stored, to]) => (stored! * (from! * from! - to! * to!)) / (from! * from!),
  "seconds-on-spin": ([power, stored, from, to]) => (stored! * (from! * from! - to! * to!)) / (from! * from!) / power!,
  "runs-over": ([from, stored, time, power]) => from! * Math.sqrt((stored! + power! * time!) / stored!),
  "two-currents": ([duty, amps]) => (duty! * amps!) / 100,
  "controller-heat": ([, amps, milliohm]) => (amps! * amps! * milliohm!) / 1000,
  "stored-at-low-speed": ([, energy, share]) => energy! * (share! / 100) ** 2,
  "lowest-speed": ([reference, ratio, throttle]) => (reference! * throttle!) / 100 / ratio!,
  "one-duty-step": ([steps, full]) => full! / steps!,
  // f = n p / 120.
  "one-electrical-turn": ([poles, rpm]) => (1e6 * 120) / (rpm! * poles!),
  "wind-up": ([gain, error, from, to]) => (to! - from!) / (gain! * error!),
  "corrections-per-turn": ([hertz, rpm]) => (hertz! * 60) / rpm!,
  "stored-reference": ([throttle, rpm]) => (100 * rpm!) / throttle!,
  "after-learning": ([learnt, rpm, throttle]) => (rpm! * throttle!) / learnt!,
  "tired-pack": ([full, , tired]) => 100 * (1 - tired! / full!),
  "stale-speed": ([reference, , now, main, throttle]) => (reference! * throttle! * now!) / main! / 100,
  "old-speed-back": ([reference, , now, main, head]) => (100 * head! * main!) / now! / reference!,
  "pull-afterwards": ([before, after]) => 100 * ((after! / before!) ** 2 - 1),
  "tip-speed": ([diameter, rpm]) => (Math.PI * (diameter! / 1000) * rpm!) / 60,
  "tip-mach": ([tips, flight, sound]) => (tips! + flight!) / sound!,
  "blade-pull": ([grams, mm, rpm]) => (grams! / 1000) * (mm! / 1000) * omega(rpm!) ** 2,
  "stored-energy": ([, energy, from, to]) => energy! * (to! / from!) ** 2,
  "motor-moves": ([large, small, module]) => (module! * (large! - small!)) / 2,
  // k = 60 / (2 pi Kv).
  "current-with-pinion": ([torque, ratio, efficiency, kv, own]) =>
    (torque! / ratio! / (efficiency! / 100)) * ((2 * Math.PI * kv!) / 60) + own!,
  "two-stages": ([pinion, main, driver, driven]) => (main! * driven!) / (pinion! * driver!),
  "more-cells-less-current": ([, , , volts, watts, milliohm]) => ((watts! / volts!) ** 2 * milliohm!) / 1000,
  "heavier-pack": ([before, after, power]) => 100 * ((after! / before!) ** power! - 1),
  "two-doubts": ([one, other]) => Math.sqrt(one! * one! + other! * other!),
  "land-at-twenty": ([mah, amps]) => (60 * 0.8 * mah!) / 1000 / amps!,
  "charge-left": ([mah, amps, minutes]) => 100 - (100 * amps! * (minutes! / 60)) / (mah! / 1000),
  "gentler-mode": ([slow, fast, used, mah]) => ((60 * used!) / 100) * (mah! / 1000) * (1 / slow! - 1 / fast!),
  "poles-miscounted": ([poles, told]) => 100 * (poles! / told! - 1),
  "which-pinion": ([teeth, expected, measured]) => Math.round((teeth! * measured!) / expected!),
  "cell-missing": ([cells]) => 100 / cells!,
  "card-throttle": ([head, reference, ratio]) => Math.round((100 * head! * ratio!) / reference!),
  "one-percent": ([reference, ratio]) => reference! / ratio! / 100,
  "error-of-model": ([model, stand]) => (100 * (model! - stand!)) / stand!,
  "low-end-of-band": ([, low, , set]) => low! - set!,
  "one-doubt-measured": ([, other, now]) => Math.sqrt(now! * now! + other! * other!),
  "throttle-or-duty": ([, throttle, reference, ratio]) => (throttle! / 100) * (reference! / ratio!),
  "three-speeds": ([, motor, magnets]) => (motor! * magnets!) / 2,
  "headroom-or-droop": ([set, , ceiling]) => ceiling! - set!,
  "against-the-card": ([card, measured]) => 100 * (measured! / card! - 1),
};

const numbersIn = (text: string): number[] =>
  (text.match(/\d[\d,]*(?:\.\d+)?/g) ?? []).map((figure) => Number(figure.replaceAll(",", "")));

const all = Object.values(recipes).flat() as Recipe[];

describe("answers from the question's own numbers", () => {
  it("are worked out for every exercise", () => {
    expect(Object.keys(byHand).sort()).toEqual(all.map(({ id }) => id).sort());
  });

  it.each(all.map((recipe) => [recipe.id, recipe] as const))("%s", (id, recipe) => {
    for (const machine of demos) {
      for (let seed = 1; seed <= 30; seed++) {
        const exercise = drawExercise(recipe, machine, seed);
        const answer = byHand[id]!(numbersIn(exercise!.question));
        const gap = Math.abs(exercise!.target.value - answer);
        expect(gap, exercise!.question).toBeLessThanOrEqual(1e-9 * Math.abs(answer));
      }
    }
  });
});
