/** What a reader does on a page: reaches an input, types, presses keys, drags. */
import type { Locator, Page } from "playwright-core";
import { settled } from "./page.ts";

/** The input of a field among the parts (elsewhere, if it isn't there), shown: folds around it are opened first. */
export async function reach(page: Page, path: string): Promise<Locator> {
  const part = page.locator(`.parts [data-input="${path}"]`);
  if ((await part.count()) === 0) await openSection(page, path);
  const input = ((await part.count()) > 0 ? part : page.locator(`[data-input="${path}"]`)).first();
  await input.waitFor({ state: "attached" });
  await unfold(input);
  await input.scrollIntoViewIfNeeded();
  return input;
}

/** Opens the section of the parts that holds a field; its inputs are built then. */
async function openSection(page: Page, path: string): Promise<void> {
  const name = path.startsWith("controller.learned.") ? "learned" : path.split(".")[0];
  const section = page.locator(`.parts details[data-section="${name}"]`);
  await section.evaluate((fold) => ((fold as HTMLDetailsElement).open = true));
  await section.locator("[data-input]").first().waitFor();
}

/** Opens every fold around an element. */
export async function unfold(locator: Locator): Promise<void> {
  await locator.evaluate((element) => {
    for (let fold = element.closest("details"); fold; fold = fold.parentElement?.closest("details") ?? null) {
      fold.open = true;
    }
  });
}

/** Its slider, and the box for typing. */
export const slider = (input: Locator): Locator => input.locator("input[type=range]");
export const box = (input: Locator): Locator => input.locator("input:not([type=range])");

/** Types into the box of a field and leaves it. */
export async function type(page: Page, path: string, text: string): Promise<void> {
  const field = box(await reach(page, path));
  await field.fill(text);
  await field.press("Enter");
  await settled(page);
}

/** What the box of a field holds, without its thousands' commas and its unit. */
export async function typed(page: Page, path: string): Promise<number> {
  return Number.parseFloat((await box(await reach(page, path)).inputValue()).replaceAll(",", ""));
}

/** The words that stand at a box which holds something it can't take; "" when it takes it. */
export async function complaint(page: Page, path: string): Promise<string> {
  return box(await reach(page, path)).evaluate((element) => {
    if (element.getAttribute("aria-invalid") !== "true") return "";
    const ids = `${element.getAttribute("aria-errormessage") ?? ""} ${element.getAttribute("aria-describedby") ?? ""}`;
    return ids
      .split(/\s+/)
      .map((id) => (id ? (document.getElementById(id)?.textContent ?? "") : ""))
      .join(" ")
      .trim();
  });
}

/** Drags with the mouse from the middle of an element by so many pixels. */
export async function drag(page: Page, mark: Locator, right: number, down: number): Promise<void> {
  await mark.scrollIntoViewIfNeeded();
  const at = await mark.boundingBox();
  if (!at) throw new Error("What should be dragged is not on the screen.");
  const [x, y] = [at.x + at.width / 2, at.y + at.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let i = 1; i <= 8; i++) await page.mouse.move(x + (right * i) / 8, y + (down * i) / 8);
  await page.mouse.up();
  await settled(page);
}
