import { beforeAll, expect, it } from "vitest";
import { setFormula } from "#view/formula";

beforeAll(() => {
  // The typesetter asks for a page with a doctype; this document has no such mode at all.
  Object.defineProperty(document, "compatMode", { value: "CSS1Compat", configurable: true });
});

it("sets TeX as MathML, without a copy of the TeX in it", async () => {
  const host = document.createElement("div");
  const set = setFormula(host, "v = \\frac{1}{2}");
  expect(host.textContent).toBe("v = \\frac{1}{2}");
  await set;
  expect(host.querySelector("math mfrac")).not.toBeNull();
  expect(host.querySelector("annotation")).toBeNull();
  expect(host.querySelector("[style]")).toBeNull();
});

it("lets the last of several stay", async () => {
  const host = document.createElement("div");
  await Promise.all([setFormula(host, "a + b"), setFormula(host, "c")]);
  expect(host.textContent).toBe("c");
});

it("shows a faulty formula rather than nothing", async () => {
  const host = document.createElement("div");
  await setFormula(host, "\\frac{");
  expect(host.textContent).toContain("\\frac{");
});
