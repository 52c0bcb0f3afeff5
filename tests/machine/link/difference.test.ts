import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { clubTrainer } from "#machine/demos";
import { applyDifference, type Item, writeDifference } from "#machine/link/difference";
import { withValue } from "#machine/paths";
import { anyMachine } from "../arbitrary.ts";

const items = (written: string): Item[] =>
  [...written.matchAll(/([A-Z]{2})([^A-Z]*)/g)].map(([, code = "", value = ""]) => ({ code, written: value }));

describe("the difference of two machines", () => {
  it("is nothing for equal ones", () => {
    expect(writeDifference(clubTrainer, structuredClone(clubTrainer))).toBe("");
  });

  it("tells each field that differs by its code", () => {
    const next = withValue(withValue(clubTrainer, "gears.pinionTeeth", 14), "modes.2.collectiveMinDeg", -12.5);
    expect(writeDifference(clubTrainer, next)).toBe("GP14VL2n12.5");
    expect(writeDifference(next, clubTrainer)).toBe("GP13VL2n11");
  });

  it("tells groups that come and go, and modes that are more or fewer", () => {
    const staged = withValue(clubTrainer, "gears.secondStage", { driverTeeth: 20, drivenTeeth: 44 });
    expect(writeDifference(clubTrainer, staged)).toBe("GSyGB44");
    expect(writeDifference(staged, clubTrainer)).toBe("GSx");
    expect(writeDifference(clubTrainer, { ...clubTrainer, modes: clubTrainer.modes.slice(0, 1) })).toBe("VN1");
  });

  it("makes the second machine of the first", () => {
    fc.assert(
      fc.property(anyMachine, anyMachine, (from, to) => {
        expect(applyDifference(from, items(writeDifference(from, to)))).toEqual({ record: to, problems: [] });
      }),
    );
  });

  it.each(["QQ1", "ZC1", "GA20", "VN12", "VNx", "VHx", "VH9", "VH31850", "GSq"])(
    "leaves out %s, which has no place",
    (written) => {
      const { record, problems } = applyDifference(clubTrainer, items(`GP14${written}`));
      expect(problems).toHaveLength(1);
      expect(record).toEqual(withValue(clubTrainer, "gears.pinionTeeth", 14));
    },
  );

  it("leaves the machine that it starts from alone", () => {
    const before = structuredClone(clubTrainer);
    applyDifference(clubTrainer, items("GP14VH01900GSyGB30VN6NAx"));
    expect(clubTrainer).toEqual(before);
  });
});
