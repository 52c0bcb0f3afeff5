/**
 * What the reader has answered on these pages: guesses, choices, the mode looked at. One store, kept for the visit and
 * across pages, so that a guess can be compared with the model later. It is no part of the machine and of no link.
 */
export type Answer = number | string;
export type Answers = Readonly<Record<string, Answer>>;

const KEY = "workbook.answers.1";
const TEXT_LIMIT = 200;
let current: Answers = {};
const listeners = new Set<() => void>();

export function answersNow(): Answers {
  return current;
}

/** Sets one answer, or takes it back with `null`. */
export function answer(id: string, value: Answer | null): void {
  if (value === null ? !(id in current) : current[id] === value) return;
  const { [id]: _, ...rest } = current;
  current = value === null ? rest : { ...rest, [id]: value };
  keep();
  for (const listener of listeners) listener();
}

export function onAnswer(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/** Takes up what an earlier page of this visit left. Anything but numbers and short texts is left out. */
export function recallAnswers(): void {
  try {
    const stored: unknown = JSON.parse(sessionStorage.getItem(KEY) ?? "{}");
    if (typeof stored !== "object" || stored === null || Array.isArray(stored)) return;
    current = Object.fromEntries(Object.entries(stored).filter((pair): pair is [string, Answer] => isAnswer(pair[1])));
  } catch {
    // Storage may be forbidden or spoilt: guesses then last as long as the page.
  }
}

function isAnswer(value: unknown): value is Answer {
  return typeof value === "string" ? value.length <= TEXT_LIMIT : typeof value === "number" && Number.isFinite(value);
}

function keep(): void {
  try {
    sessionStorage.setItem(KEY, JSON.stringify(current));
  } catch {
    // As above.
  }
}
