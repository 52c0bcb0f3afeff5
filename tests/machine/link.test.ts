import { readFileSync } from "node:fs";
import fc from "fast-check";
import * as v from "valibot";
import { describe, expect, it } from "vitest";
import { clubTrainer, demos } from "#machine/demos";
import { type Extras, readLink, writeLink } from "#machine/link";
import { fittedNow, type Machine, machineSchema } from "#machine/machine";
import { withValue } from "#machine/paths";
import { brokenRules } from "#machine/rules";
import { anyMachine } from "./arbitrary.ts";

/** Links as they were sent once, each with all that it must give for good. Entries are added, never changed. */
interface OldLink {
  readonly link: string;
  readonly now: Machine;
  readonly whatIf: Machine | null;
  readonly extras: Extras;
}
const old: OldLink[] = JSON.parse(readFileSync(new URL("../fixtures/links.json", import.meta.url), "utf8"));

const whole = (link: string) => {
  const reading = readLink(link);
  expect(reading?.problems).toEqual([]);
  return reading;
};

describe("the link", () => {
  it("gives any machines and extras back as they were", () => {
    const extras = fc.dictionary(fc.string({ maxLength: 8 }), fc.jsonValue({ maxDepth: 2 }), { maxKeys: 3 });
    fc.assert(
      fc.property(anyMachine, fc.option(anyMachine), extras, (now, whatIf, given) => {
        const link = writeLink({ now, whatIf, extras: given as Extras });
        expect(link).toMatch(/^m=[0-9A-Za-z.-]*[0-9a-z]$/);
        const reading = whole(`https://example.org/page.html#${link}`);
        expect(reading?.now).toEqual(now);
        expect(reading?.whatIf).toEqual(whatIf);
        expect(JSON.stringify(reading?.extras)).toBe(JSON.stringify(given));
      }),
    );
  });

  it.each(old)("reads $link for good", ({ link, now, whatIf, extras }) => {
    expect(readLink(link)).toEqual({ now, whatIf, extras, problems: [] });
  });

  it("tells a second stage while it learned from none, and none from one that nobody knows of", () => {
    const known = { ...clubTrainer.controller.learned, motorRpm: 13_500, fittedWith: fittedNow(clubTrainer) };
    for (const secondStage of [null, undefined, { driverTeeth: 20, drivenTeeth: 24 }]) {
      const learned = { ...known, fittedWith: { ...known.fittedWith, secondStage } };
      const now = withValue(clubTrainer, "controller.learned", learned);
      for (const [from, to] of [
        [clubTrainer, now],
        [withValue(clubTrainer, "controller.learned", known), now],
        [now, withValue(clubTrainer, "controller.learned", known)],
      ] as const) {
        const reading = whole(writeLink({ now: from, whatIf: to }));
        expect(reading?.whatIf?.controller.learned.fittedWith).toEqual(to.controller.learned.fittedWith);
      }
    }
  });

  it("is short", () => {
    for (const demo of demos) expect(writeLink({ now: demo }).length).toBeLessThan(20);
    const own = [
      ["name", "My first machine"],
      ["pack.cells", 4],
      ["pack.capacityMah", 2650],
      ["motor.kvRpmPerVolt", 1780],
      ["motor.resistanceMilliohm", 21.5],
      ["motor.poles", 8],
      ["gears.pinionTeeth", 12],
      ["gears.mainTeeth", 134],
      ["mainRotor.diameterMm", 808],
      ["mainRotor.bladeCentreMm", 212],
      ["airframe.massG", 1420],
      ["place.elevationM", 420],
      ["controller.learned.motorRpm", 13150],
      ["modes.0.headRpm", 1900],
      ["modes.1.headRpm", 2200],
    ] as const;
    const machine = own.reduce((made: Machine, [path, value]) => withValue(made, path, value), clubTrainer);
    expect(writeLink({ now: machine }).length).toBeLessThan(150);
  });

  it("stays under 400 characters when a machine differs in most of its numbers", () => {
    const lengths = fc.sample(anyMachine, { numRuns: 1, seed: 1 }).length;
    expect(lengths).toBe(1);
    const tenth = (value: unknown): unknown => {
      if (typeof value === "number")
        return Number.isInteger(value) && value < 200 ? value : Math.round(value * 10.7) / 10;
      if (Array.isArray(value)) return value.map(tenth);
      if (typeof value === "object" && value !== null)
        return Object.fromEntries(Object.entries(value).map(([k, x]) => [k, tenth(x)]));
      return value;
    };
    const changed = { ...(tenth(demos[2]) as Machine), version: 1 as const };
    expect(writeLink({ now: changed }).length).toBeLessThan(400);
  });

  const machine = withValue(withValue(clubTrainer, "gears.pinionTeeth", 14), "name", "Ole's – 4 °C, 100 %");
  const link = writeLink({ now: machine, extras: { seed: 7 } });

  it.each([
    ["alone", link],
    ["as a fragment", `#${link}`],
    ["with a blank at either end", `  #${link}\n`],
    ["wrapped by a mail", `https://example.org/#${link.slice(0, 30)}\r\n ${link.slice(30)}`],
    ["with a full stop behind it", `https://example.org/#${link}.`],
    ["in brackets", `https://example.org/#${link})>`],
    ["with percent signs for letters", `https://example.org/#${link.replace("=", "%3D").replaceAll(".", "%2E")}`],
    ["with percent signs twice", `#${encodeURIComponent(encodeURIComponent(link))}`],
    ["with invisible signs in it", `#${link.slice(0, 12)}\u200B${link.slice(12, 20)}\u00AD${link.slice(20)}`],
    ["as a question", `https://example.org/?x=1&${link}`],
  ])("survives being sent: %s", (_, sent) => {
    const reading = whole(sent);
    expect(reading?.now).toEqual(machine);
    expect(reading?.extras).toEqual({ seed: 7 });
  });

  it("that was cut gives what is left of it, and says so", () => {
    for (let length = 4; length < link.length; length++) {
      const reading = readLink(link.slice(0, length));
      expect(reading?.problems.length, String(length)).toBeGreaterThan(0);
      if (reading?.now) expect([13, 14]).toContain(reading.now.gears.pinionTeeth);
    }
    const numbers = writeLink({ now: withValue(machine, "motor.kvRpmPerVolt", 1450) });
    const cut = readLink(numbers.slice(0, numbers.indexOf("GP")));
    expect(cut?.now?.name).toBe(machine.name);
    expect(cut?.now?.motor.kvRpmPerVolt).toBe(clubTrainer.motor.kvRpmPerVolt);
    expect(cut?.problems[0]?.words).toContain("cut on its way");
  });

  it("that was changed on its way is read with a warning", () => {
    const changed = readLink(link.replace("GP14", "GP15"));
    expect(changed?.now?.gears.pinionTeeth).toBe(15);
    expect(changed?.problems[0]?.words).toContain("changed on its way");
  });

  it("with a bad value names it and keeps the rest", () => {
    const bad = readLink(link.replace("GP14", "GP14.5"));
    expect(bad?.problems.map((problem) => problem.path)).toContain("gears.pinionTeeth");
    expect(bad?.now).toEqual(withValue(machine, "gears.pinionTeeth", 13));
  });

  it("with a part of a later kind keeps the rest", () => {
    const later = readLink(link.replace("GP14", "GP14QQ5"));
    expect(later?.problems.map((problem) => problem.words).join()).toContain("One part of this link");
    expect(later?.now).toEqual(machine);
  });

  it.each([
    ["m=", "not one of this workbook's"],
    ["m=hello", "not one of this workbook's"],
    ["#m=1zZC0000000", "not one of this workbook's"],
    ["#m=0a", "not one of this workbook's"],
    ["#m=2aGP14", "newer workbook"],
    [`#m=1a${"GP14".repeat(50_000)}`, "too long"],
  ])("%s is refused in words", (text, words) => {
    const reading = readLink(text);
    expect(reading).toMatchObject({ now: null, whatIf: null, extras: {} });
    expect(reading?.problems.map((problem) => problem.words).join()).toContain(words);
  });

  it.each(["", "#", "#learn-it-again", "https://example.org/", "#zoom=1", "a name"])("%j holds none", (text) => {
    expect(readLink(text)).toBeNull();
  });

  it("takes no state of a page that is no group of values", () => {
    const reading = readLink(link.replace(/ZX.*ZC/, "ZX.5b1.5dZC"));
    expect(reading?.extras).toEqual({});
    expect(reading?.problems.map((problem) => problem.words).join()).toContain("state of the page");
  });

  it("of any text is read without a throw, and any machine in it is valid", () => {
    const body = fc.string({ unit: fc.constantFrom(..."ABCDGHLMNPQRSTVXZabx0159.-ny%"), maxLength: 60 });
    const damaged = fc.tuple(anyMachine, fc.nat(), fc.string({ maxLength: 3 })).map(([now, at, put]) => {
      const good = writeLink({ now, whatIf: clubTrainer });
      return good.slice(0, at % good.length) + put + good.slice((at % good.length) + 1);
    });
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          body.map((text) => `#m=1a${text}`),
          damaged,
        ),
        (text) => {
          const reading = readLink(text);
          for (const each of [reading?.now, reading?.whatIf]) {
            if (!each) continue;
            expect(v.is(machineSchema, each)).toBe(true);
            expect(brokenRules(each)).toEqual([]);
          }
        },
      ),
    );
  });
});
