/** How large a stage of the presenting view is shown. */
import type { Stage } from "./present-stages.ts";

/** The heights of plots, px, by the names that the style sheet gives them: the least and the most of each. */
const sizes = [
  ["--figure-short", 150, 220],
  ["--figure-regular", 190, 320],
  ["--figure-tall", 210, 400],
] as const;

/** The height of a picture that fills the screen, by the name that style sheets give it. */
const WHOLE = "--stage-height";

/** The room that a stage wants, in px of the page's own: sentences are read from afar, a plot needs width for its words. */
const [WIDE, WIDE_PLOT, HIGH] = [580, 740, 330];
const LARGEST = 3.2;
/** Above and below the stage, px of the screen. */
const MARGIN = 40;

/** Makes the stage as large as the screen allows; one that is too long gets smaller, and scrolls only at reading size. */
export function enlarge(page: HTMLElement, stage: Stage): void {
  const drawn = stage.some((part) => part.querySelector("svg"));
  const largest = Math.min(Math.max(Math.min(innerWidth / (drawn ? WIDE_PLOT : WIDE), innerHeight / HIGH), 1), LARGEST);
  const [first, last] = [stage[0], stage.at(-1)];
  const room = innerHeight - 2 * MARGIN;
  const put = (spare: number) => {
    for (const [size, least, most] of sizes)
      page.style.setProperty(size, `${Math.floor(Math.min(Math.max(least + spare, least), most))}px`);
  };
  for (let zoom = largest; first && last; zoom = Math.max(zoom * 0.94, 1)) {
    page.style.zoom = String(zoom);
    page.style.setProperty(WHOLE, `${Math.floor(room / zoom)}px`);
    put(0);
    const height = last.getBoundingClientRect().bottom - first.getBoundingClientRect().top;
    // Plots take the height that their words leave.
    put((room - height) / zoom);
    if ((height <= room && !stage.some(isTooWide)) || zoom <= 1) return;
  }
}

/** A table may be wider than its place. */
const isTooWide = (part: HTMLElement): boolean =>
  [...part.querySelectorAll("table")].some(
    (table) => table.getBoundingClientRect().width > part.getBoundingClientRect().width + 1,
  );

/** Gives the page its own size back. */
export function asItWas(page: HTMLElement): void {
  page.style.removeProperty("zoom");
  for (const size of [WHOLE, ...sizes.map(([name]) => name)]) page.style.removeProperty(size);
}
