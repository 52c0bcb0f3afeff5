import { describe, expect, it } from "vitest";
import { bandFacts, sparesMore } from "#blocks/band-tables";
import { holds, holdsText } from "#blocks/holds";
import { matchedCurrent } from "#blocks/matched";
import { slowerFacts } from "#blocks/slower-tables";
import { figuresOf } from "#figures/figures";
import { defaultMachine } from "#machine/machine";
import { withValue } from "#machine/paths";
import { mounted } from "./mounted.ts";

describe("a claim", () => {
  it("says what holds, and what holds otherwise", () => {
    const block = mounted(holds(true, "it rises", "it falls"));
    expect(block.host.textContent).toBe("it rises");
    expect(block.one(".claim").dataset.fails).toBeUndefined();
    block.update(holds(false, "it rises", "it falls"));
    expect(block.host.textContent).toBe("it falls");
    expect(block.one(".claim").dataset.fails).toBe("it rises");
    block.update(holds(true, "it rises", "it falls"));
    expect(block.one(".claim").dataset.fails).toBeUndefined();
    expect(holds(false, "it rises", "it falls").view.words(holds(false, "a", "b").state)).toBe("b");
    expect([holdsText(true, "a", "b"), holdsText(false, "a", "b")]).toEqual(["a", "b"]);
  });
});

describe("what claims on the pages stand on", () => {
  const figures = figuresOf(defaultMachine);

  it("twice the head speed takes the ratio of both powers, which words repeat", () => {
    const { flatTimes, fullTimes, hoverTimes, flatWords } = slowerFacts(figures, 2);
    // Drag of blades goes with the cube of speed, less a little for the larger Reynolds number; hover carries a weight as well.
    expect(flatTimes).toBeGreaterThan(5);
    expect(flatTimes).toBeLessThan(8);
    expect(fullTimes).toBeGreaterThan(flatTimes ?? 0);
    expect(hoverTimes ?? 0).toBeLessThan(flatTimes ?? 0);
    expect(flatWords).toBe(`${flatTimes?.toFixed(1)} times`);
  });

  it("a place lower in the band spares the motor more, unless its iron takes next to nothing", () => {
    expect(bandFacts(figures, 0).motor).toBeGreaterThan(0);
    expect(sparesMore(figures, 0)).toBe(true);
    const free = figuresOf(withValue(defaultMachine, "motor.noLoadCurrentA", 0.05));
    expect(sparesMore(free, 0)).toBe(false);
  });

  it("other cells of the same weight last as long in hover", () => {
    expect(matchedCurrent(defaultMachine, 1).lasts).toBeCloseTo(1, 1);
  });
});
