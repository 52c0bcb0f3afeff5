import { describe, expect, it } from "vitest";
import { defaultMachine } from "#machine/machine";
import { migrated } from "#machine/migrate";

const words = (record: Record<string, unknown>) => {
  const result = migrated(record);
  return result.ok ? null : result.problem.words;
};

describe("versions of the record", () => {
  it("take the present one as it is", () => {
    expect(migrated(defaultMachine)).toEqual({ ok: true, record: defaultMachine });
  });

  it.each([
    [{}, "Version of the record: missing. Allowed: 1."],
    [{ version: 0 }, "Version of the record: holds 0. Allowed: a whole number from 1 to 1."],
    [{ version: "1" }, "Version of the record: holds the text “1”. Allowed: a whole number from 1 to 1."],
    [{ version: 1.5 }, "Version of the record: holds 1.5. Allowed: a whole number from 1 to 1."],
  ])("refuse %j in words", (record, expected) => {
    expect(words(record)).toBe(expected);
  });

  it("say of a newer one that it needs the newer workbook", () => {
    expect(words({ version: 2 })).toContain("version 2");
    expect(words({ version: 2 })).toContain("newer");
  });

  it("bring an old one up to date step by step", () => {
    const chain = {
      1: (old: Readonly<Record<string, unknown>>) => ({ ...old, a: 1 }),
      2: (old: Readonly<Record<string, unknown>>) => ({ ...old, b: Number(old.a) + 1 }),
    };
    expect(migrated({ version: 1 }, 3, chain)).toEqual({ ok: true, record: { version: 3, a: 1, b: 2 } });
    expect(migrated({ version: 2, a: 5 }, 3, chain)).toEqual({ ok: true, record: { version: 3, a: 5, b: 6 } });
    expect(migrated({ version: 1 }, 4, chain).ok).toBe(false);
  });
});
