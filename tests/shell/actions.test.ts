import { beforeEach, describe, expect, it, vi } from "vitest";
import { type Bench, createBench } from "#machine/bench";
import { demos } from "#machine/demos";
import { machineToFileText } from "#machine/file";
import { readLink } from "#machine/link";
import { withValue } from "#machine/paths";
import { fileName, linkOf, openText, save, share, toDemo } from "#shell/actions";
import { messages } from "#shell/messages";

const trainer = demos[0]!;
const garden = demos[1]!;
let bench: Bench;
let host: HTMLElement;
const told = (kind: string): string => host.querySelector(`.is-${kind}`)?.textContent ?? "";

beforeEach(() => {
  host = document.createElement("div");
  document.body.replaceChildren(host);
  messages().view.mount(host, createBench());
  bench = createBench();
});

describe("sharing", () => {
  it("makes a link to this page that carries both machines", () => {
    bench.set("gears.pinionTeeth", 14);
    bench.startWhatIf();
    bench.set("gears.pinionTeeth", 15, { machine: "what-if" });
    const link = linkOf(bench, "https://example.org/the-card.html#old");
    expect(link.startsWith("https://example.org/the-card.html#m=")).toBe(true);
    const read = readLink(link);
    expect([read?.now?.gears.pinionTeeth, read?.whatIf?.gears.pinionTeeth]).toEqual([14, 15]);
  });

  it.each([
    ["copies it and says what it carries", () => Promise.resolve(), /copied.*carries your machine.*no guesses/],
    ["shows it where copying is forbidden", () => Promise.reject(new Error("no")), /Copy it yourself/],
  ])("%s", async (_, writeText, words) => {
    vi.spyOn(navigator.clipboard, "writeText").mockImplementation(writeText);
    await share(bench, document);
    expect(told("result")).toMatch(words);
    expect(readLink(host.querySelector<HTMLInputElement>("input.copy")?.value ?? "")?.now).toEqual(trainer);
  });
});

describe("files", () => {
  it.each([
    ["6-cell club trainer", "6-cell-club-trainer.json"],
    ["Flügel / ../ ☃", "flugel.json"],
    ["", "machine.json"],
  ])("of a machine named '%s' are called %s", (name, file) => {
    expect(fileName(name)).toBe(file);
  });

  it("carry the machine", async () => {
    let given: Blob | undefined;
    vi.spyOn(URL, "createObjectURL").mockImplementation((blob) => {
      given = blob as Blob;
      return "blob:a";
    });
    save(garden, document);
    expect(await given?.text()).toBe(machineToFileText(garden));
    expect(told("result")).toMatch(/3-cell-garden-machine\.json/);
  });

  it("put their machine on the bench", () => {
    openText(bench, machineToFileText(garden));
    expect(bench.now).toEqual(garden);
    expect(told("result")).toMatch(/3-cell garden machine is on the bench/);
    bench.undo();
    expect(bench.now).toEqual(trainer);
  });

  it("with a bad field keep the last good value, and name it", () => {
    const text = machineToFileText(withValue(garden, "gears.pinionTeeth", -3));
    openText(bench, text);
    expect([bench.now.name, bench.now.gears.pinionTeeth]).toEqual([garden.name, 13]);
    expect(told("problem")).toMatch(/Pinion.*-3|Pinion.*−3/);
  });

  it.each(["no machine", '{"version": 99}', "[]"])("that hold '%s' change nothing", (text) => {
    openText(bench, text);
    expect(bench.now).toEqual(trainer);
    expect(bench.canUndo).toBe(false);
    expect(told("problem")).toMatch(/Your machine is as it was/);
  });
});

describe("going back to a demo", () => {
  it("puts it there alone, and undo brings the reader's own back", () => {
    bench.set("gears.pinionTeeth", 14);
    bench.startWhatIf();
    toDemo(bench, garden);
    expect([bench.now, bench.whatIf]).toEqual([garden, null]);
    expect(told("result")).toContain(garden.name);
    bench.undo();
    expect(told("result")).toBe("");
    expect(bench.now.gears.pinionTeeth).toBe(14);
  });
});
