import { beforeEach, describe, expect, it } from "vitest";
import { createBench } from "#machine/bench";
import { messages, say, sayQuietly, settle } from "#shell/messages";

let host: HTMLElement;
const all = () => [...host.querySelectorAll(".message > p")].map(({ textContent }) => textContent);

beforeEach(() => {
  host = document.createElement("div");
  messages().view.mount(host, createBench());
});

describe("messages", () => {
  it("tell results quietly and problems at once", () => {
    say({ kind: "result", words: "Saved." });
    say({ kind: "problem", words: "Full." });
    expect(host.querySelector("[role=status] .message p")?.textContent).toBe("Saved.");
    expect(host.querySelector("[role=alert] .message p")?.textContent).toBe("Full.");
  });

  it("can be closed", () => {
    say({ kind: "result", words: "Saved." });
    host.querySelector<HTMLButtonElement>("[aria-label='close this message']")?.click();
    expect(all()).toEqual([]);
  });

  it("on one subject take each other's place", () => {
    say({ kind: "problem", words: "Lost.", subject: "file" });
    say({ kind: "result", words: "Opened.", subject: "file" });
    expect(all()).toEqual(["Opened."]);
    settle("file");
    expect(all()).toEqual([]);
  });

  it("are never more than three of a kind", () => {
    for (const words of ["1", "2", "3", "4"]) say({ kind: "result", words });
    expect(all()).toEqual(["2", "3", "4"]);
  });

  it("count points beyond the sixth", () => {
    say({ kind: "problem", words: "Bad.", points: ["a", "b", "c", "d", "e", "f", "g", "h"] });
    expect([...host.querySelectorAll("li")].map(({ textContent }) => textContent).slice(5)).toEqual([
      "f",
      "and 2 more",
    ]);
  });

  it("offer something to do, once", () => {
    let done = 0;
    say({ kind: "result", words: "Gone.", action: { words: "bring it back", run: () => (done += 1) } });
    const button = [...host.querySelectorAll("button")].find(({ textContent }) => textContent === "bring it back");
    button?.click();
    expect([done, all()]).toEqual([1, []]);
  });

  it("never become elements", () => {
    say({ kind: "problem", words: "<img src=x>", points: ["<b>b</b>"] });
    expect(host.querySelector("img, b")).toBeNull();
  });

  it("for listeners alone are not seen", () => {
    sayQuietly("Undone.");
    expect(host.querySelector(".heard[role=status]")?.textContent).toBe("Undone.");
    expect(all()).toEqual([]);
  });
});
