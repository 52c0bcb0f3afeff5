import { readdirSync, readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { slugOf } from "../../src/notebook/compile.ts";

const folder = new URL("../../notebooks/", import.meta.url);

it("a page shows the exercises that bear its own name", () => {
  const pairs = readdirSync(folder).flatMap((file) => {
    const asked = /^exercises\("([^"]+)"/m.exec(readFileSync(new URL(file, folder), "utf8"))?.[1];
    return asked === undefined ? [] : [[slugOf(file), asked] as const];
  });
  expect(pairs.length).toBeGreaterThan(10);
  expect(pairs.filter(([page, asked]) => page !== asked)).toEqual([]);
});
