/** What a page says to whoever teaches with it, and the evening that can be made of several. */

/** One page of the workbook as a teacher sees it. */
export interface Lesson {
  readonly number: number;
  readonly title: string;
  readonly question: string;
  readonly href: string;
  readonly purpose: string;
  readonly ideas: readonly string[];
  readonly short: string;
  readonly long: string;
  readonly ask: readonly string[];
}

/** One part of an evening. */
export interface PlanStep {
  readonly lesson: Lesson;
  readonly way: "short" | "long";
  readonly minutes: number;
}

const shortWay = 10;
const longWay = 45;

/** A wrong idea without what differs from page to page: case, stops, quotation marks. */
const ideaKey = (idea: string): string =>
  idea
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, " ")
    .trim();

/** All wrong ideas, each once, as the first page that meets it says it. */
export function ideasOf(lessons: readonly Lesson[]): { readonly key: string; readonly says: string }[] {
  const all = new Map<string, string>();
  for (const { ideas } of lessons) for (const idea of ideas) if (!all.has(ideaKey(idea))) all.set(ideaKey(idea), idea);
  return [...all].map(([key, says]) => ({ key, says }));
}

/**
 * An evening of so many minutes, in the order of the pages. With a wrong idea: the page that meets it, the long way if
 * there is time; then others that meet it too, then what comes before it, then what follows. Without one: the pages from
 * the first on. Empty when there is no time for a single page.
 */
export function planOf(lessons: readonly Lesson[], minutes: number, idea: string): PlanStep[] {
  const meets = ({ ideas }: Lesson): boolean => ideas.some((one) => ideaKey(one) === idea);
  const first = lessons.find(meets);
  const distance = ({ number }: Lesson): number => {
    const gap = number - (first?.number ?? 0);
    return gap < 0 ? -gap : 100 + gap;
  };
  const order = first
    ? lessons.toSorted((a, b) => Number(meets(b)) - Number(meets(a)) || distance(a) - distance(b))
    : [...lessons];
  const steps: PlanStep[] = [];
  let left = minutes;
  for (const lesson of order) {
    const way = lesson === first && left >= longWay ? "long" : "short";
    const takes = way === "long" ? longWay : shortWay;
    if (left < takes) break;
    left -= takes;
    steps.push({ lesson, way, minutes: takes });
  }
  return steps.sort((a, b) => a.lesson.number - b.lesson.number);
}
