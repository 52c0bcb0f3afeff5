import { describe, expect, it } from "vitest";
import { helpWords, warningWords } from "#figures/words";

describe("what would help, in words", () => {
  it("is a list of ways", () => {
    const words = helpWords({ charge: null, slower: 2480, pinion: 14, cells: 7 });
    expect(words).toMatch(
      /^What would help: ask for 2,480\srpm or less; or fit a pinion of 14 teeth .*; or fly 7 cells/,
    );
  });

  it("names only ways that there are", () => {
    expect(helpWords({ charge: null, slower: null, pinion: 14, cells: null })).toBe(
      "What would help: fit a pinion of 14 teeth and learn again.",
    );
    expect(helpWords({ charge: null, slower: null, pinion: null, cells: null })).toMatch(/^Neither .* would help/);
  });
});

describe("warnings in words", () => {
  it("name the mode, the figure, the limit and the reason", () => {
    expect(warningWords.aboveBand("fast", 93.94, 90)).toMatch(
      /^"fast" asks for 93\.9\s% .* ends at 90\s%\. .*governor/,
    );
    expect(warningWords.belowBand("slow", 51.2, 60)).toMatch(
      /^"slow" asks for 51\.2\s% .* begins at 60\s%\. .*more current/,
    );
    expect(warningWords.short("fast", "in hover", 2500, 2410.4, "Help.")).toMatch(
      /it asks for 2,500\srpm, and with full duty there is 2,410\srpm\. It is 90\srpm short\. Help\.$/,
    );
    expect(warningWords.noHold("slow", "in hover", "blades stall", "Help.")).toBe(
      `"slow" can't be held in hover: at this speed the blades would stall before they carry the machine. Help.`,
    );
    expect(warningWords.bladeSpeed("fast", 2900, 2800)).toMatch(/2,900\srpm.*2,800\srpm/);
    expect(warningWords.packCurrent("fast", 120.4, 115.5, 35)).toMatch(/120\sA.*35 times.*\(116\sA\)/);
  });

  it("tell a figure from its limit, however near it is", () => {
    expect(warningWords.aboveBand("fast", 90.004, 90)).toMatch(/asks for 90\.004\s% .* ends at 90\s%/);
    expect(warningWords.bladeSpeed("fast", 2800.3, 2800)).toMatch(/2,800\.3\srpm.*2,800\srpm/);
    expect(warningWords.tailThrust("slow", 0.058, 0.051)).toMatch(/0\.06\sN.*0\.05\sN/);
  });

  it("say that no transmitter asks for more than all, only where that is asked", () => {
    expect(warningWords.aboveBand("fast", 122, 90)).toMatch(/No transmitter asks for more than 100\s%/);
    expect(warningWords.aboveBand("fast", 99, 90)).not.toContain("transmitter");
  });

  it("tell more from less head speed, and neither", () => {
    expect(warningWords.stale(["pinion"], 8.333)).toMatch(/\(pinion\).*8\.3\s% more head speed/);
    expect(warningWords.stale(["main gear"], -0.83)).toMatch(/0\.8\s% less head speed/);
    expect(warningWords.stale(["cells"], 0)).toContain("The head speeds stay");
  });
});
