import { describe, expect, it } from "vitest";
import { hoverShare } from "#blocks/flow-rows";
import { flowChoice, flowChosen, powerFlow } from "#blocks/power-flow";
import { figuresOf } from "#figures/figures";
import { operatingOf } from "#figures/operating";
import type { Machine } from "#machine/machine";
import { machineWith } from "../figures/machines.ts";
import { leavesElements, mounted, plain, wordsOf } from "./mounted.ts";

const shown = (
  load: Parameters<typeof powerFlow>[2],
  machine: Machine = machineWith({}),
  whatIf: Machine | null = null,
) => powerFlow(figuresOf(machine), whatIf && figuresOf(whatIf), load, 1);

/** How thick each band of the drawing is, px, in order. */
const thickness = (bands: readonly Element[]): number[] =>
  bands.map((band) => Number(/H120v([\d.]+)h?H/.exec(band.getAttribute("d") ?? "")?.[1] ?? 0));

describe("the stream of the power", () => {
  it("draws every part as thick as it is strong, and they add up to the whole", () => {
    const { all } = mounted(shown("climb"));
    const found = operatingOf(figuresOf(machineWith({})).rig, "climb", 1);
    if (!found.ok) throw new Error("there is no climb");
    const bands = thickness(all(".flow-band"));
    expect(bands).toHaveLength(11);
    const { heat, rotors, source } = found.balance;
    const parts = [
      ...Object.values(heat),
      rotors.profile,
      rotors.induced,
      rotors.tail,
      rotors.airframe,
      rotors.raising,
    ];
    for (const [i, watts] of parts.entries()) {
      const exact = (92 * watts) / source;
      // Threads are drawn so that they are seen.
      expect(Math.abs((bands[i] ?? 0) - Math.max(exact, 0.7))).toBeLessThan(0.06);
    }
    expect(bands.reduce((sum, each) => sum + each, 0)).toBeCloseTo(92, -1);
  });

  it("says the figure that surprises first, another for each load", () => {
    const first = (load: Parameters<typeof powerFlow>[2]) =>
      plain(wordsOf(shown(load)))
        .split(". ")
        .slice(1, 2)[0];
    expect(first("hover")).toMatch(/^Of every 100 watts out of the cells, \d+ carry the machine$/);
    expect(first("flat")).toMatch(/^Flat on the ground it takes \d+ W and lifts nothing: \d+ % of a hover$/);
    expect(first("full-pitch")).toMatch(
      /^Full pitch takes \d\.\d times the power of a hover for \d\.\d times its thrust$/,
    );
    expect(first("climb")).toMatch(/^Of every 100 watts out of the cells, \d+ raise the machine, at \d\.\d m\/s$/);
    expect(first("forward")).toMatch(/^At 27 m\/s, \d+ of every 100 watts fight the airframe's drag/);
    // The climb takes less than the same pitch before it: momentum theory, Leishman ch. 2.
    const [, climb, full] = /it takes (\d+) W; before that, the same pitch took (\d+) W/.exec(
      plain(wordsOf(shown("climb"))),
    ) as unknown as [string, string, string];
    expect(Number(climb)).toBeLessThan(Number(full));
  });

  it("follows the machine without a new element, and its alternative text with it", () => {
    const { host, update, one } = mounted(shown("hover"));
    const before = one("svg").getAttribute("aria-label");
    expect(leavesElements(host, () => update(shown("hover", machineWith({ "airframe.massG": 2600 }))))).toBe(true);
    const after = one("svg").getAttribute("aria-label");
    expect(after).not.toBe(before);
    expect(after).toContain(one("figcaption b").textContent);
  });

  it("hatches what can't be had, and says what would work", () => {
    const { one, all, update } = mounted(shown("hover", machineWith({ "modes.1.headRpm": 500 })));
    expect(plain(one("figcaption").textContent)).toMatch(/^There is no hover here: .* they would carry it\.$/);
    expect(one(".flow-limit").getAttribute("d")).not.toBe("");
    expect(all(".flow-band").every((band) => band.getAttribute("d") === "")).toBe(true);
    update(shown("hover"));
    expect(one(".flow-limit").getAttribute("d")).toBe("");
  });

  it("has all of it in a table, filled when it is opened, the what-if beside it", () => {
    const { one, all } = mounted(shown("hover", machineWith({}), machineWith({ "airframe.massG": 2600 })));
    expect(all("tbody tr")).toHaveLength(0);
    const details = one<HTMLDetailsElement>("details");
    details.open = true;
    details.dispatchEvent(new Event("toggle"));
    const row = (title: string) =>
      [...(all("tbody tr").find((each) => each.children[0]?.textContent === title)?.children ?? [])].map((cell) =>
        plain(cell.textContent),
      );
    expect(row("out of the cells").slice(0, 3)).toEqual([
      "out of the cells",
      expect.stringMatching(/^2\d\d W$/),
      "100",
    ]);
    expect(Number.parseFloat(row("out of the cells")[3] ?? "0")).toBeGreaterThan(
      Number.parseFloat(row("out of the cells")[1] ?? ""),
    );
    expect(row("duty")[1]).toEqual(expect.stringMatching(/^\d\d\.\d %$/));
    expect(row("ceiling in this load")[1]).toMatch(/^2,9\d\d rpm$/);
    expect(wordsOf(shown("hover", machineWith({}), machineWith({ "airframe.massG": 2600 })))).toContain(
      "The what-if takes",
    );
  });

  it("sets the what-if's power beside it, and takes it away again", () => {
    const heavier = machineWith({ "airframe.massG": 2600 });
    const { one, update } = mounted(shown("hover", machineWith({}), heavier));
    const found = operatingOf(figuresOf(heavier).rig, "hover", 1);
    if (!found.ok) throw new Error("it can't hover");
    expect(plain(one(".flow-what-if").textContent)).toBe(`${Math.round(found.balance.source)} W`);
    update(shown("hover", machineWith({}), machineWith({ "modes.1.headRpm": 500 })));
    expect(one(".flow-what-if").textContent).toBe("can't be had");
    update(shown("hover"));
    expect(one(".flow-what-if").textContent).toBe("");
  });

  it("lets the reader choose a load, the hover first", () => {
    expect(flowChosen({})).toBe("hover");
    expect(flowChosen({ "power-flow-load": "climb" })).toBe("climb");
    expect(flowChosen({ "power-flow-load": 7 })).toBe("hover");
    const { all } = mounted(flowChoice({}));
    expect(all("input")).toHaveLength(5);
    expect(hoverShare(figuresOf(machineWith({ "modes.1.headRpm": 500 })), 1)).toBeNull();
  });
});
