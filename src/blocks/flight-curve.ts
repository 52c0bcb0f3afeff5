/** A curve drawn by hand: values at even times, kept as a short text among the reader's answers. */

/** Points of a drawn curve. With at most five signs for each, the text stays short enough to be kept. */
export const POINTS = 26;

/** The time (s) of a point. */
export const timeOf = (index: number, seconds: number, count = POINTS): number => (index * seconds) / (count - 1);

/** The nearest point to a time (s). */
const pointAt = (time: number, seconds: number, count = POINTS): number =>
  Math.min(count - 1, Math.max(0, Math.round((time / seconds) * (count - 1))));

/** As a text: the values in whole steps, so that a thousand rpm or ten degrees take few signs. */
export const written = (values: readonly number[], step: number): string =>
  values.map((value) => String(Math.round(value / step))).join(",");

/** From a text, kept between its limits; null for anything that is no such curve. */
export function read(text: unknown, step: number, low: number, high: number, count = POINTS): number[] | null {
  if (typeof text !== "string") return null;
  const parts = text.split(",");
  if (parts.length !== count || !parts.every((part) => /^-?\d{1,6}$/.test(part))) return null;
  return parts.map((part) => Math.min(high, Math.max(low, Number(part) * step)));
}

/** A stroke from one place to the next: every point that it passes takes the value of the stroke there. */
export function stroke(
  values: readonly number[],
  seconds: number,
  from: { readonly time: number; readonly value: number },
  to: { readonly time: number; readonly value: number },
): number[] {
  const next = [...values];
  const [a, b] = [pointAt(from.time, seconds, values.length), pointAt(to.time, seconds, values.length)];
  const steps = Math.abs(b - a);
  for (let k = 0; k <= steps; k++) {
    const share = steps === 0 ? 1 : k / steps;
    next[a + Math.sign(b - a) * k] = from.value + share * (to.value - from.value);
  }
  return next;
}
