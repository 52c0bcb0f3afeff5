/** What is said in the reader's units beside figures: sentences, messages, warnings, questions. */
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { estimate } from "#blocks/guess";
import { pageNumber } from "#blocks/page-number";
import { warningWords } from "#figures/words";
import { boxText, unitBeside } from "#inputs/typed";
import { createBench } from "#machine/bench";
import { fieldAt } from "#machine/fields";
import { defaultMachine } from "#machine/machine";
import { answersNow } from "#view/answers";
import { formatValue, inReadersUnits, unitText } from "#view/format";
import { chooseUnits } from "#view/units";
import { mounted } from "../blocks/mounted.ts";

const plain = (text = "") => text.replaceAll("\u00a0", " ");

describe("in imperial units", () => {
  beforeEach(() => chooseUnits("imperial"));
  afterEach(() => chooseUnits("metric"));

  it("a sentence has its measures converted, and differences of temperature without the zero", () => {
    expect(plain(inReadersUnits("At 25 °C, 30 cm of lead, 10 m away, 2 mΩ each."))).toBe(
      "At 77 °F, 12 in of lead, 33 ft away, 2 mΩ each.",
    );
    expect(plain(inReadersUnits("some 10 °C hotter still"))).toBe("some 18 °F hotter still");
    expect(plain(inReadersUnits("up to 1,500 m"))).toBe("up to 4,921 ft");
    // NIST SP 811 (2008), appendix B.8: a difference of 1 °C is one of 1.8 °F.
    expect(plain(formatValue(10, "°C", { signed: true }))).toBe("+18 °F");
    chooseUnits("metric");
    expect(inReadersUnits("At 25 °C")).toBe("At 25 °C");
  });

  it("a refused value is answered in inches, a module in millimetres", () => {
    const bench = createBench(defaultMachine);
    expect(plain(bench.set("mainRotor.diameterMm", 1e6)?.words)).toMatch(/ in\.$/);
    expect(plain(bench.set("gears.moduleMm", 1000)?.words)).toContain(
      "holds 1,000 mm. Allowed: a number from 0.1 to 5 mm.",
    );
  });

  it("a warning says pounds of force", () => {
    // NIST SP 811 (2008), appendix B.8: 1 lbf = 4.448222 N.
    expect(warningWords.tailThrust("fast", 44.48222, 22.24111)).toContain("10 lbf");
  });

  it("gears keep their millimetres in the box and beside it", () => {
    const module = fieldAt("gears.moduleMm");
    expect([boxText(0.7, module), unitBeside(module)]).toEqual(["0.7", "mm"]);
    expect(unitText("kg/m3")).toBe("lb/ft³");
  });

  it("a distance that belongs to a page is in feet, a gap between gears in millimetres", () => {
    const number = { id: "away", label: "Away", low: 0, high: 100, step: 1, start: 30 };
    const shown = (unit: string) => plain(mounted(pageNumber({ ...number, unit }, {}).input).one("output").textContent);
    expect([shown("m"), shown("mm")]).toEqual(["98 ft", "30 mm"]);
  });

  it("a question has a round scale in pounds, and its guess is kept in kilograms", () => {
    const question = {
      id: "hangs",
      ask: "?",
      unit: "kg",
      low: 0,
      high: 800,
      step: 5,
      answer: 453.59237,
      within: 45.359237,
      reply: "",
    };
    const { state } = estimate({ ...question, answers: { hangs: 45.359237 } });
    expect(state).toMatchObject({
      unit: "lb",
      kept: "kg",
      low: 0,
      high: 1780,
      step: 20,
      answer: 1000,
      within: 100,
      given: 100,
    });
    const { one } = mounted(estimate({ ...question, answers: {} }));
    one<HTMLInputElement>(".exact").value = "1000";
    one(".exact").dispatchEvent(new Event("change"));
    one("button").click();
    expect(answersNow().hangs).toBeCloseTo(453.59237, 4);
    expect(estimate({ ...question, sameForAll: true, answers: {} }).state).toMatchObject({ unit: "kg", high: 800 });
  });
});
