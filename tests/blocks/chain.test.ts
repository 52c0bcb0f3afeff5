import { beforeEach, describe, expect, it } from "vitest";
import { mountChain } from "#blocks/chain";
import { lightsFor, parts } from "#blocks/chain-links";
import { mountParts } from "#blocks/parts-panel";
import { createBench } from "#machine/bench";
import { fields } from "#machine/fields";

const lit = (light: string): string[] =>
  [...document.querySelectorAll<HTMLElement>(`.chain [data-light="${light}"]`)].map((item) => item.dataset.part ?? "");

describe("what follows from what", () => {
  it.each([
    // The poles never change how fast the rotor turns: only what the controller counts.
    ["motor.poles", "motor", ["controller"]],
    // At the same throttle the motor holds its learned speed, so another pinion changes the rotor.
    ["gears.pinionTeeth", "gears", ["controller", "rotor", "tail", "pack"]],
    ["gears.tailRatio", "gears", ["tail"]],
    ["pack.capacityMah", "pack", []],
    ["modes.1.headRpm", "throttle", ["governor", "controller", "motor", "gears", "rotor", "tail", "pack"]],
    ["modes.1.collectiveMinDeg", "rotor", []],
    ["controller.learned.fittedWith.cells", "governor", ["controller", "motor", "gears", "rotor", "tail", "pack"]],
    ["controller.usableLowPercent", "governor", ["throttle"]],
  ])("%s belongs to the %s", (path, touched, follow) => {
    const lights = lightsFor([path]);
    expect(parts.filter((part) => lights[part] === "touched")).toEqual([touched]);
    expect(parts.filter((part) => lights[part] === "follows")).toEqual(follow);
  });

  it("knows a part for every field but names", () => {
    const dark = fields.filter(({ path }) => !Object.values(lightsFor([path.replace("*", "0")])).includes("touched"));
    expect(dark.map(({ path }) => path)).toEqual(["name", "modes.*.name"]);
  });

  it("lets touched win over following", () => {
    expect(lightsFor(["modes.0.headRpm", "gears.pinionTeeth"]).gears).toBe("touched");
  });
});

describe("the chain on a page", () => {
  const host = document.createElement("div");
  beforeEach(() => document.body.replaceChildren(host));

  it("is a list of buttons, dark at first", () => {
    mountChain(host, createBench());
    expect([...host.querySelectorAll("ol > li > button")].map((button) => button.textContent)).toEqual([...parts]);
    expect(lit("touched")).toEqual([]);
  });

  it("lights what is touched and what follows, and says so to those who read it", () => {
    const bench = createBench();
    mountChain(host, bench);
    bench.set("motor.poles", 12);
    expect([lit("touched"), lit("follows")]).toEqual([["motor"], ["controller"]]);
    expect(host.querySelector('[data-part="motor"] button')?.textContent).toBe("motor, changed last");
    bench.set("gears.tailRatio", 4.5);
    expect([lit("touched"), lit("follows")]).toEqual([["gears"], ["tail"]]);
    expect(host.querySelector('[data-part="motor"] button')?.textContent).toBe("motor");
  });

  it("never speaks by itself", () => {
    mountChain(host, createBench());
    expect(host.querySelector("[aria-live], [role=status], [role=alert]")).toBeNull();
  });

  it("opens a part's section of the panel", () => {
    const bench = createBench();
    const panel = document.createElement("div");
    document.body.append(panel);
    mountParts(panel, bench);
    mountChain(host, bench);
    host.querySelector<HTMLButtonElement>('[data-part="governor"] button')?.click();
    expect(panel.querySelector<HTMLDetailsElement>('[data-section="learned"]')?.open).toBe(true);
    expect(panel.querySelector(".parts-bar")?.getAttribute("aria-expanded")).toBe("true");
  });
});
