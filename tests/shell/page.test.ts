import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { demos } from "#machine/demos";
import { writeLink } from "#machine/link";
import { withValue } from "#machine/paths";
import { STORE_KEY } from "#machine/store";
import type { CellRecord } from "#notebook/record";
import { slider } from "../inputs/hand.ts";

const trainer = demos[0]!;
const garden = demos[1]!;

/** A notebook of one cell that notes what the bench gives. */
const seen: { pinionTeeth: number; ratio: unknown; whatIf: boolean }[] = [];
const noting: CellRecord = {
  id: "cell-1",
  line: 1,
  needs: ["machine", "whatIf", "figures"],
  gives: [],
  shows: true,
  run(machine: typeof trainer, whatIf: typeof trainer | null, figures: { value(name: string): unknown }) {
    const { pinionTeeth } = machine.gears;
    seen.push({ pinionTeeth, ratio: figures.value("gear-ratio"), whatIf: whatIf !== null });
    return [`${pinionTeeth} teeth`];
  },
} as CellRecord;

let close = () => {};

/** A page that is loaded anew has lost what listened to the one before. */
function forgetListeners(): void {
  for (const stop of listening.splice(0)) stop();
}
const listening: (() => void)[] = [];
for (const target of [globalThis, document]) {
  const add = target.addEventListener.bind(target);
  target.addEventListener = (name: string, listener: EventListener) => {
    add(name, listener);
    listening.push(() => target.removeEventListener(name, listener));
  };
}

/** Opens the page anew, as the browser does when it is loaded. */
async function load(hash = ""): Promise<void> {
  close();
  forgetListeners();
  vi.resetModules();
  seen.length = 0;
  history.replaceState(null, "", `/page.html${hash}`);
  const places = ["shell-header", "shell-messages", "shell-chain", "shell-parts", "cell-1"];
  document.body.replaceChildren(...places.map((id) => Object.assign(document.createElement("div"), { className: id })));
  for (const id of places) document.querySelector<HTMLElement>(`.${id}`)!.dataset.cell = id;
  const { shell } = await import("#shell/page");
  const page = shell.open([noting]);
  close = () => page.dispose();
  await settled();
}

const settled = () => new Promise((done) => setTimeout(done, 60));
const told = (): string[] => [...document.querySelectorAll(".message > p")].map(({ textContent }) => textContent ?? "");
const pinionRange = (): HTMLInputElement => slider(document.querySelector('[data-input="gears.pinionTeeth"]')!);

async function slide(value: number): Promise<void> {
  pinionRange().value = String(value);
  pinionRange().dispatchEvent(new Event("input", { bubbles: true }));
  pinionRange().dispatchEvent(new Event("change", { bubbles: true }));
  await settled();
}

const leave = () => window.dispatchEvent(new Event("pagehide"));

beforeEach(() => {
  localStorage.clear();
  sessionStorage.clear();
});
afterEach(() => {
  vi.unstubAllGlobals();
  close();
  close = () => {};
});

describe("a page", () => {
  it("gives its cells the machine, its figures and the what-if, and again after each change", async () => {
    await load();
    expect(seen.at(-1)).toMatchObject({ pinionTeeth: 13, whatIf: false });
    await slide(15);
    expect(seen.at(-1)?.pinionTeeth).toBe(15);
    // Motor turns per rotor turn, by definition.
    expect(seen.at(-1)?.ratio).toBeCloseTo(120 / 15, 9);
    expect(document.querySelector(".cell-1")?.textContent).toBe("15 teeth");
  });

  it("solves ahead what its rotors may be asked for, once nothing moves", async () => {
    await load();
    // From the modules that this page was opened with.
    const [{ figuresOf }, { clubTrainer }] = await Promise.all([import("#figures/figures"), import("#machine/demos")]);
    const solve = vi.spyOn(figuresOf(withValue(clubTrainer, "motor.poles", 8)).rig.main, "torqueForThrust");
    await vi.waitFor(() => expect(solve.mock.calls.length).toBeGreaterThan(50), 5000);
    solve.mockRestore();
  });

  it("has the same machine, and its undo, when it is loaded again", async () => {
    await load();
    await slide(15);
    leave();
    await load();
    expect(seen.at(-1)?.pinionTeeth).toBe(15);
    [...document.querySelectorAll("button")].find(({ textContent }) => textContent === "undo")?.click();
    await settled();
    expect(seen.at(-1)?.pinionTeeth).toBe(13);
  });

  it("takes a link's machine, clears the address, and keeps what is changed since", async () => {
    await load(`#${writeLink({ now: withValue(garden, "gears.pinionTeeth", 12) })}`);
    expect(seen.at(-1)?.pinionTeeth).toBe(12);
    expect(location.hash).toBe("");
    await slide(10);
    leave();
    await load();
    expect(seen.at(-1)?.pinionTeeth).toBe(10);
  });

  it("takes a link that is opened in the same tab", async () => {
    await load();
    history.replaceState(null, "", `#${writeLink({ now: garden })}`);
    window.dispatchEvent(new Event("hashchange"));
    await settled();
    expect(seen.at(-1)?.pinionTeeth).toBe(garden.gears.pinionTeeth);
    expect(told()).toHaveLength(1);
  });

  it("says once that nothing can be kept, and sends the machine along to the next page", async () => {
    await load();
    const full = (): never => {
      throw new Error("full");
    };
    vi.stubGlobal("localStorage", { getItem: () => null, setItem: full });
    await slide(15);
    leave();
    await slide(16);
    leave();
    expect(told().filter((words) => /no room left/.test(words))).toHaveLength(1);
    const next = Object.assign(document.createElement("a"), { href: `${location.origin}/other.html` });
    next.addEventListener("click", (event) => event.preventDefault());
    document.body.append(next);
    next.click();
    expect(next.hash).toMatch(/^#m=/);
  });

  it("leaves the links to other pages alone while everything is kept", async () => {
    await load();
    const next = Object.assign(document.createElement("a"), { href: `${location.origin}/other.html` });
    next.addEventListener("click", (event) => event.preventDefault());
    document.body.append(next);
    await slide(15);
    next.click();
    expect(next.hash).toBe("");
    expect(localStorage.getItem(STORE_KEY)).toContain('"pinionTeeth":15');
  });

  it("rests at the demo machine, for pages that are set when the site is built", async () => {
    await load();
    const { shell } = await import("#shell/page");
    expect(shell.atRest().given.machine).toEqual(trainer);
    expect(shell.parts.map(({ id }) => id)).toEqual(["shell-header", "shell-messages", "shell-chain", "shell-parts"]);
  });
});
