import { describe, expect, it } from "vitest";
import { fasterWords, helpWords, warningWords } from "#figures/words";

describe("what would help, in words", () => {
  const none = { charge: null, slower: null, pinion: null, cells: null };

  it("is a list of ways", () => {
    const words = helpWords({ ...none, slower: { to: 2480, lasts: "to the reserve" }, pinion: 14, cells: 7 }, true);
    expect(words).toMatch(
      /^What would help: ask for 2,480\srpm or less, and full pitch holds down to 20\s% of charge; or fit a pinion of 14 teeth, .*; or fly 7 cells, /,
    );
  });

  it("says for how long each of them holds", () => {
    const ways = { ...none, charge: { to: 75, lasts: 59.4 }, slower: { to: 2530, lasts: 12.2 } };
    expect(helpWords(ways, true)).toMatch(
      /charge the pack full, and full pitch holds for 59\ss, down to 75\s%; or ask for 2,530\srpm or less, and full pitch holds for 12\ss\.$/,
    );
    expect(helpWords({ ...none, slower: { to: 2200, lasts: "on this charge" } }, true)).toMatch(
      /full pitch holds on this charge\.$/,
    );
  });

  it("names only ways that there are", () => {
    expect(helpWords({ ...none, pinion: 14 }, true)).toBe(
      "What would help: fit a pinion of 14 teeth, learn again and enter the new throttle.",
    );
    expect(helpWords(none, true)).toMatch(/^Neither .* teeth more, nor two cells more would hold it/);
    expect(helpWords(none, false)).toMatch(/^No lower speed/);
    expect(helpWords(none, false)).not.toMatch(/teeth|cells/);
  });

  it("names more head speed only where that may be", () => {
    expect(fasterWords(true)).toContain("more head speed");
    expect(fasterWords(false)).toBe("What would help: less weight and pitch.");
  });
});

describe("warnings in words", () => {
  it("name the mode, the figure, the limit and the reason", () => {
    expect(warningWords.aboveBand("fast", 93.94, 90, true)).toMatch(
      /^"fast" asks for 93\.9\s% .* ends at 90\s%\. .*governor/,
    );
    expect(warningWords.belowBand("slow", 51.2, 60, { smaller: true, more: true })).toMatch(
      /^"slow" asks for 51\.2\s% .* begins at 60\s%\. .*more current/,
    );
    expect(warningWords.short("fast", "in hover", 2500, 2410.4, "Help.")).toMatch(
      /it asks for 2,500\srpm, and with full duty there is 2,410\srpm\. It is 90\srpm short\. Help\.$/,
    );
    // To tens, which are the last that the model knows, but where no ten is left.
    expect(warningWords.short("fast", "in hover", 2500, 2484.3, "")).toMatch(
      /there is 2,480\srpm\. It is 20\srpm short/,
    );
    expect(warningWords.short("fast", "in hover", 2500, 2496.2, "")).toMatch(
      /there is 2,496\srpm\. It is 4\srpm short/,
    );
    expect(warningWords.noHold("slow", "in hover", "blades stall", "Help.")).toBe(
      `"slow" can't be held in hover: at this speed the blades would stall before they carry the machine. Help.`,
    );
    expect(warningWords.bladeSpeed("fast", 2900, 2800)).toMatch(/2,900\srpm.*2,800\srpm/);
    const draws = { load: "hover", current: 120.4, fullDuty: false } as const;
    expect(warningWords.packCurrent("fast", draws, 115.5, 35)).toMatch(
      /^Hover in "fast" draws 120\sA\. .* 35 C \(116\sA\)/,
    );
    expect(warningWords.packCurrent("fast", { ...draws, fullDuty: true }, 115.5, 35)).toContain("at full duty.");
  });

  it("tell a figure from its limit, however near it is", () => {
    expect(warningWords.aboveBand("fast", 90.004, 90, true)).toMatch(/asks for 90\.004\s% .* ends at 90\s%/);
    expect(warningWords.bladeSpeed("fast", 2800.3, 2800)).toMatch(/2,800\.3\srpm.*2,800\srpm/);
    expect(warningWords.tailThrust("slow", 0.058, 0.051)).toMatch(/0\.058\sN.*0\.051\sN/);
    expect(warningWords.tailThrust("slow", 0.31, 0.0412)).toMatch(/0\.31\sN.*0\.041\sN/);
    expect(warningWords.tailThrust("slow", 12.34, 7.31)).toMatch(/12\.3\sN.*7\.3\sN/);
    expect(warningWords.hoverLost("slow", 20.3, 20)).toMatch(/20\.3\s% of charge.*20\s%/);
  });

  it("name a way into the band only where there is one", () => {
    const above = (pinion: boolean) => warningWords.aboveBand("fast", 95, 90, pinion);
    expect(above(true)).toMatch(/Ask for less, or fit a bigger pinion, learn again and enter the new throttle\.$/);
    expect(above(false)).toMatch(/Ask for less\.$/);
    const below = (smaller: boolean, more: boolean) => warningWords.belowBand("slow", 50, 60, { smaller, more });
    expect(below(true, true)).toMatch(
      /Fit a smaller pinion, learn again and enter the new throttle, or ask for more\.$/,
    );
    expect(below(false, true)).toMatch(/less well\. Ask for more\.$/);
    expect(below(false, false)).toMatch(/less well\.$/);
  });

  it("say of a learning run what makes it slower", () => {
    expect(warningWords.learningRun("rotor", 2900, 2800)).toContain("Fit a smaller pinion, or learn at less throttle");
    // Without load a motor turns as fast with every pinion.
    expect(warningWords.learningRun("motor", 40_000, 36_000)).toContain("Fly fewer cells, or learn at less throttle");
  });

  it("say that no transmitter asks for more than all, only where that is asked", () => {
    expect(warningWords.aboveBand("fast", 122, 90, true)).toMatch(/No transmitter asks for more than 100\s%/);
    expect(warningWords.aboveBand("fast", 99, 90, true)).not.toContain("transmitter");
  });

  it("tell more from less head speed, and neither", () => {
    expect(warningWords.stale(["pinion"], 8.333)).toMatch(/\(pinion\).*8\.3\s% more head speed/);
    expect(warningWords.stale(["main gear"], -0.83)).toMatch(/0\.8\s% less head speed/);
    expect(warningWords.stale(["cells"], 0)).toContain("The head speeds stay");
  });
});
