/** What is said in the reader's units beside figures: sentences, messages, warnings, questions. */
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { estimate } from "#blocks/guess";
import { warningWords } from "#figures/words";
import { boxText, unitBeside } from "#inputs/typed";
import { createBench } from "#machine/bench";
import { fieldAt } from "#machine/fields";
import { defaultMachine } from "#machine/machine";
import { formatValue, inReadersUnits, unitText } from "#view/format";
import { chooseUnits } from "#view/units";

const plain = (text = "") => text.replaceAll("\u00a0", " ");

describe("in imperial units", () => {
  beforeEach(() => chooseUnits("imperial"));
  afterEach(() => chooseUnits("metric"));

  it("a sentence has its measures converted, and differences of temperature without the zero", () => {
    expect(plain(inReadersUnits("At 25 °C, 30 cm of lead, 10 m away, 2 mΩ each."))).toBe(
      "At 77 °F, 12 in of lead, 33 ft away, 2 mΩ each.",
    );
    expect(plain(inReadersUnits("some 10 °C hotter still"))).toBe("some 18 °F hotter still");
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
    expect(estimate({ ...question, sameForAll: true, answers: {} }).state).toMatchObject({ unit: "kg", high: 800 });
  });
});
