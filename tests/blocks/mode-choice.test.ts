import { beforeEach, describe, expect, it } from "vitest";
import { modeChoice, modeChosen } from "#blocks/mode-choice";
import { defaultMachine } from "#machine/machine";
import { answer, answersNow } from "#view/answers";
import { machineWith } from "../figures/machines.ts";
import { leavesElements, mounted, wordsOf } from "./mounted.ts";

beforeEach(() => answer("mode", null));

describe("the mode looked at", () => {
  it.each([
    [{}, 2],
    [{ mode: 0 }, 0],
    [{ mode: 1 }, 1],
    [{ mode: 7 }, 2],
    [{ mode: -1 }, 2],
    [{ mode: 0.5 }, 2],
    [{ mode: "fast" }, 2],
  ])("with the answers %o is %i of three: the last where nothing fits", (answers, place) => {
    expect(modeChosen(defaultMachine, answers)).toBe(place);
  });

  it("is chosen from the modes' names", () => {
    const { one, all } = mounted(modeChoice(defaultMachine, { mode: 1 }));
    expect(all("option").map((option) => option.textContent)).toEqual(["gentle", "club", "sporty"]);
    expect(one<HTMLSelectElement>("select").selectedIndex).toBe(1);
    expect(one("label").textContent).toContain("Flight mode looked at");
  });

  it("is an answer, no part of the machine", () => {
    const { one } = mounted(modeChoice(defaultMachine, {}));
    const select = one<HTMLSelectElement>("select");
    select.selectedIndex = 0;
    select.dispatchEvent(new Event("change"));
    expect(answersNow().mode).toBe(0);
  });

  it("follows modes that come and go", () => {
    const { all, one, update } = mounted(modeChoice(defaultMachine, {}));
    const first = all("option")[0];
    update(modeChoice(machineWith({ modes: [defaultMachine.modes[0]] }), {}));
    expect(all("option")).toEqual([first]);
    update(modeChoice(machineWith({ "modes.1.name": "" }), { mode: 1 }));
    expect(all("option").map((option) => option.textContent)).toEqual(["gentle", "2", "sporty"]);
    expect(one<HTMLSelectElement>("select").selectedIndex).toBe(1);
  });

  it("builds nothing anew when another is chosen", () => {
    const { host, update } = mounted(modeChoice(defaultMachine, {}));
    expect(leavesElements(host, () => update(modeChoice(defaultMachine, { mode: 0 })))).toBe(true);
  });

  it("is read out", () => {
    expect(wordsOf(modeChoice(defaultMachine, {}))).toBe("Flight mode looked at: sporty.");
  });
});
