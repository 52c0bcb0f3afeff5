/** Looks through what a cell shows for anything that could never be put before a reader. */

/** Words that stand for a figure that isn't there. */
export const emptyWord = /\b(NaN|Infinity|undefined|null)\b|\[object \w+\]/;

/** The places in plain data (objects, lists, columns of numbers) that hold no proper value, in words. */
export function blemishes(value: unknown, at = "state"): string[] {
  if (value === undefined) return [`${at} is undefined`];
  if (typeof value === "number") return Number.isFinite(value) ? [] : [`${at} is ${value}`];
  if (typeof value === "string") return emptyWord.test(value) ? [`${at} says '${value}'`] : [];
  if (typeof value === "function") return [`${at} is a function`];
  if (Array.isArray(value) || ArrayBuffer.isView(value)) {
    return Array.from(value as ArrayLike<unknown>).flatMap((item, i) => blemishes(item, `${at}[${i}]`));
  }
  // An instance of a class, such as the figures of a machine, has checks of its own.
  if (typeof value !== "object" || value === null || Object.getPrototypeOf(value) !== Object.prototype) return [];
  return Object.entries(value).flatMap(([key, item]) => blemishes(item, `${at}.${key}`));
}
