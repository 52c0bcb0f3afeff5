import { describe, expect, it } from "vitest";
import { fields, shapeAt } from "#machine/fields";
import { codes, marks, pathOfCode } from "#machine/link/codes";

describe("codes of a link", () => {
  it("are two capitals for every field, each once", () => {
    const all = [...Object.values(codes), ...Object.values(marks)];
    expect(new Set(all).size).toBe(all.length);
    for (const code of all) expect(code).toMatch(/^[A-Z]{2}$/);
    expect(fields.filter((field) => !(field.path in codes))).toEqual([]);
  });

  it("stand for what is in a machine, and for nothing else", () => {
    expect(Object.keys(codes).filter((path) => shapeAt(path) === null)).toEqual([]);
    for (const [path, code] of Object.entries(codes)) expect(pathOfCode(code)).toBe(path);
    expect(pathOfCode("QQ")).toBeNull();
    expect(pathOfCode(marks.check)).toBeNull();
  });
});
