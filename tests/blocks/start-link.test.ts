import jsQR from "jsqr";
import { beforeEach, describe, expect, it } from "vitest";
import { exercises } from "#blocks/exercise";
import { seedNow, startFrom, turnOn } from "#blocks/exercise-progress";
import { qrCode, quietZone } from "#blocks/qr";
import { isNear, startAddress } from "#blocks/start-link";
import { startingPoint } from "#blocks/starting-point";
import { createBench } from "#machine/bench";
import { clubTrainer, demos } from "#machine/demos";
import { readLink } from "#machine/link";
import { takeLink } from "#shell/opening";
import { answer, answersNow } from "#view/answers";
import { mounted, wordsOf } from "./mounted.ts";

const pages = [
  { href: "./", title: "First" },
  { href: "./the-card.html", title: "The card" },
];

beforeEach(() => {
  for (const id of Object.keys(answersNow())) answer(id, null);
});

/** Reads a drawn code as a camera would: the path as dark points on white, with its quiet zone. */
function decoded({ size, path }: { size: number; path: string }): string | null {
  const scale = 4;
  const side = (size + 2 * quietZone) * scale;
  const image = new Uint8ClampedArray(side * side * 4).fill(255);
  for (const [, x, y, run] of path.matchAll(/M(\d+),(\d+)h(\d+)v1h-\d+z/g)) {
    const left = (Number(x) + quietZone) * scale;
    const top = (Number(y) + quietZone) * scale;
    for (let row = top; row < top + scale; row++)
      for (let column = left; column < left + Number(run) * scale; column++)
        image.fill(0, (row * side + column) * 4, (row * side + column) * 4 + 3);
  }
  return jsQR(image, side, side)?.data ?? null;
}

describe("a QR code", () => {
  it.each(demos.map((demo, i) => [demo.name, demo, demos[(i + 1) % demos.length]!] as const))(
    "of a starting point with the %s is read back",
    (_, now, whatIf) => {
      const address = startAddress(
        "https://example.org/book/words.html?present=2#m=1a",
        "./the-card.html",
        { now, whatIf },
        7,
      );
      expect(address).toMatch(/^https:\/\/example\.org\/book\/the-card\.html#m=/);
      expect(decoded(qrCode(address!)!)).toBe(address);
    },
  );

  it("is none for a text that is too long", () => {
    expect(qrCode("x".repeat(4000))).toBeNull();
  });
});

describe("a starting link", () => {
  it("carries machine, what-if and seed", () => {
    const address = startAddress("https://example.org/", "./", { now: clubTrainer, whatIf: demos[1]! }, 42);
    expect(readLink(address!)).toEqual({ now: clubTrainer, whatIf: demos[1], extras: { seed: 42 }, problems: [] });
    expect(startAddress("about:blank", "./", { now: clubTrainer, whatIf: null }, 1)).toBeNull();
  });

  it("gives whoever opens it the same exercises, whatever they had turned before", () => {
    const questions = () =>
      exercises("two-gears", clubTrainer, answersNow()).state.items.map((i) => i.exercise.question);
    const first = questions();
    startFrom(42);
    const room = questions();
    expect(room).not.toEqual(first);
    for (const id of Object.keys(answersNow())) answer(id, null);
    turnOn(exercises("two-gears", clubTrainer, {}).state.items[0]!.exercise.id, 3, 1);
    const link = startAddress("https://example.org/", "./", { now: clubTrainer, whatIf: null }, 42)!;
    expect(takeLink(createBench(), new URL(link).hash, () => false)).toBe(true);
    expect(questions()).toEqual(room);
  });

  it.each([0, -1, 1.5, 1e6, "7", null])("takes no %j for a seed", (seed) => {
    answer("exercise seed", seed as number);
    expect(seedNow(answersNow())).toBe(1);
  });

  it.each([
    ["http://localhost:5173/#m", true],
    ["http://127.0.0.1/", true],
    ["http://[::1]:80/", true],
    ["file:///home/x/index.html", true],
    ["http://192.168.1.7:4173/", false],
    ["https://localhost.example.org/", false],
  ])("to %s is near: %s", (address, near) => {
    expect(isNear(address)).toBe(near);
  });
});

describe("the starting point on a page", () => {
  const shown = () => startingPoint(pages, clubTrainer, null, answersNow());

  it("shows link and code, follows page and numbers, and says when phones can't reach it", async () => {
    window.location.href = "http://localhost:3000/to-teach-with-this.html";
    const page = mounted(shown());
    const box = page.one<HTMLInputElement>(".copy");
    expect(box.value).toMatch(/^http:\/\/localhost:3000\/#m=/);
    expect(page.one(".start-note").textContent).toContain("phone can't reach it");
    const select = page.one<HTMLSelectElement>("select");
    select.value = "./the-card.html";
    select.dispatchEvent(new Event("change"));
    const seed = page.one<HTMLInputElement>("input[type=number]");
    seed.value = "12";
    seed.dispatchEvent(new Event("change"));
    expect(seedNow(answersNow())).toBe(12);
    expect(box.value).toContain("/the-card.html#m=");
    expect(readLink(box.value)?.extras).toEqual({ seed: 12 });
    await expect.poll(() => page.one(".qr").getAttribute("aria-label")).toContain(box.value);
    const drawn = { size: Number(page.one(".qr").getAttribute("viewBox")?.split(" ")[2]) - 2 * quietZone };
    expect(decoded({ ...drawn, path: page.one(".qr-dark").getAttribute("d") ?? "" })).toBe(box.value);
    seed.value = "0";
    seed.dispatchEvent(new Event("change"));
    expect([seedNow(answersNow()), page.one("[role=status]").textContent]).toEqual([12, "Numbers go from 1 to 9999."]);
  });

  it("says in words what it is", () => {
    expect(wordsOf(shown())).toBe("A link and a code that open First with this machine and the numbers 1.");
  });
});
