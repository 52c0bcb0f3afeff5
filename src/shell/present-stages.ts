/** Cuts a page into what is shown one at a time: the question, each guess, each plot, a few sentences, the summary. */

/** What stands on the screen together, in the order of the page. */
export type Stage = readonly HTMLElement[];

/** About so many words are read from a screen in one go. */
const MOST_WORDS = 55;

const words = (element: Element): number => (element.textContent ?? "").trim().split(/\s+/).length;

/**
 * A teacher's own notes, folds for readers, and exercises are not for the screen; nor is a glossary with its finder, which
 * is looked up and not gone through; nor a place that shows nothing.
 */
function isLeftOut(element: HTMLElement): boolean {
  if (element.matches("details, .worked, .word")) return true;
  const notForScreen = "[data-exercise], .exercises, .exercises-later, .word-finder";
  return (
    element.matches("[data-cell]") && (element.childElementCount === 0 || element.querySelector(notForScreen) !== null)
  );
}

const isHeading = (element: Element): boolean => /^H[2-6]$/.test(element.tagName);

/** Fills a screen by itself: a guess, a plot, a picture, a table. */
const isLarge = (element: HTMLElement): boolean =>
  element.matches("figure, table, .caution") ||
  (element.matches("[data-cell]") && element.querySelector("figure, table, fieldset, svg") !== null);

/** The stages of a page as it stands. */
export function stagesOf(page: HTMLElement): Stage[] {
  const stages: HTMLElement[][] = [];
  let gathered: HTMLElement[] = [];
  let count = 0;
  /** Headings, and inputs such as the choice of a mode: they go with what comes after them. */
  let leading: HTMLElement[] = [];
  const close = () => {
    if (gathered.length > 0) stages.push(gathered);
    gathered = [];
    count = 0;
  };
  const title = [...page.querySelectorAll<HTMLElement>(":scope > .kicker, :scope > h1")];
  if (title.length > 0) stages.push(title);
  for (const element of page.querySelectorAll<HTMLElement>(":scope > .prose > *")) {
    if (isLeftOut(element)) continue;
    if (isHeading(element)) {
      close();
      // One that nothing followed, because that is not for the screen, gives way to the next of its rank.
      leading = leading.filter((before) => !isHeading(before) || before.tagName < element.tagName);
      leading.push(element);
    } else if (isLarge(element)) {
      close();
      stages.push([...leading, element]);
      leading = [];
    } else if (element.matches("[data-cell]") && (element.querySelector("input, select") || gathered.length === 0)) {
      leading.push(element);
    } else {
      // What a cell says stays with the sentences before it.
      if (count > 0 && count + words(element) > MOST_WORDS && !element.matches("[data-cell]")) close();
      gathered.push(...leading, element);
      leading = [];
      count += words(element);
      // A list is a thing by itself, such as the summary in three lines.
      if (element.matches("ul, ol")) close();
    }
  }
  gathered.push(...leading);
  close();
  const turn = page.querySelector<HTMLElement>(":scope > .turn");
  if (turn?.querySelector("a[rel=next]")) stages.push([turn]);
  return stages;
}
