import { beforeEach, describe, expect, it } from "vitest";
import { type Bench, createBench } from "#machine/bench";
import { demos } from "#machine/demos";
import { writeLink } from "#machine/link";
import { withValue } from "#machine/paths";
import { openStore, STORE_KEY, type StorageLike } from "#machine/store";
import { messages, settle } from "#shell/messages";
import { openBench, takeLink } from "#shell/opening";

const [trainer, garden] = demos as [(typeof demos)[number], (typeof demos)[number]];

let bench: Bench;
let host: HTMLElement;
const told = (kind: string): string => host.querySelector(`.is-${kind}`)?.textContent ?? "";
const noPlace = () => false;

beforeEach(() => {
  host = document.createElement("div");
  document.body.replaceChildren(host);
  const { view } = messages();
  for (const subject of ["link", "store"]) settle(subject);
  view.mount(host, createBench());
  bench = createBench();
});

function storage(text: string | null): StorageLike & { held: Map<string, string> } {
  const held = new Map(text === null ? [] : [[STORE_KEY, text]]);
  return { held, getItem: (key) => held.get(key) ?? null, setItem: (key, value) => void held.set(key, value) };
}
const forbidden = (): StorageLike => {
  throw new Error("forbidden");
};

describe("a page opened with a link", () => {
  const link = `#${writeLink({ now: withValue(garden, "gears.pinionTeeth", 12) })}`;

  it("puts the link's machine on the bench, and the reader's own is one press away", () => {
    bench.set("motor.kvRpmPerVolt", 999);
    expect(takeLink(bench, link, noPlace)).toBe(true);
    expect(bench.now.gears.pinionTeeth).toBe(12);
    expect(told("result")).toMatch(/3-cell garden machine came with the link/);
    const back = [...host.querySelectorAll("button")].find(
      (each) => each.textContent === "go back to your own machine",
    );
    back?.click();
    expect([bench.now.name, bench.now.motor.kvRpmPerVolt]).toEqual([trainer.name, 999]);
    expect(told("result")).toMatch(/6-cell club trainer is on the bench again/);
  });

  it("can be undone", () => {
    takeLink(bench, link, noPlace);
    bench.undo();
    expect(bench.now).toEqual(trainer);
  });

  it("carries the what-if machine too", () => {
    const whatIf = withValue(garden, "gears.pinionTeeth", 9);
    takeLink(bench, `#${writeLink({ now: garden, whatIf })}`, noPlace);
    expect(bench.whatIf?.gears.pinionTeeth).toBe(9);
  });

  it("says nothing when it carries what is on the bench already", () => {
    takeLink(bench, `#${writeLink({ now: trainer })}`, noPlace);
    expect(host.querySelector(".message")).toBeNull();
  });

  it("keeps the good parts of a link that was cut off, and says so", () => {
    const whole = writeLink({ now: withValue(withValue(garden, "gears.pinionTeeth", 12), "place.elevationM", 777) });
    expect(takeLink(bench, `#${whole.slice(0, -9)}`, noPlace)).toBe(true);
    expect(bench.now.gears.pinionTeeth).toBe(12);
    expect(told("problem")).toMatch(/cut on its way/);
    expect(host.querySelector("[role=alert] .message")).not.toBeNull();
  });

  it.each(["#m=zzzz", "#m=", "#something-else", "#m=9a", "#%%%"])("takes nothing from %s, and says so", (alien) => {
    expect(takeLink(bench, alien, noPlace)).toBe(true);
    expect(bench.now).toEqual(trainer);
    expect(bench.canUndo).toBe(false);
    expect(told("problem")).toMatch(/Your machine is as it was/);
  });

  it("leaves the places of the page itself alone", () => {
    expect(takeLink(bench, "#text", (id) => id === "text")).toBe(false);
    expect(takeLink(bench, "", noPlace)).toBe(false);
    expect(host.querySelector(".message")).toBeNull();
  });
});

describe("a page opened without one", () => {
  const open = (local: () => StorageLike) => openBench(openStore(local, () => storage(null)));

  it("puts the demo machine on the bench when nothing is stored", () => {
    expect(open(() => storage(null)).now).toEqual(trainer);
    expect(host.querySelector(".message")).toBeNull();
  });

  it("puts the stored machine there", () => {
    const text = JSON.stringify({ now: garden, whatIf: null });
    expect(open(() => storage(text)).now).toEqual(garden);
  });

  it.each([
    ["forbidden", forbidden, /keeps nothing/],
    ["spoilt", () => storage("{{{"), /put aside/],
  ])("says so when the store is %s, and works on", (_, local, words) => {
    expect(open(local).now).toEqual(trainer);
    expect(told("problem")).toMatch(words);
    expect(host.querySelectorAll(".message")).toHaveLength(1);
  });
});
