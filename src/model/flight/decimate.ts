/** Fewer points for a drawn line, none of its extremes lost. */

/**
 * Indices of the points that a line of so many buckets needs: in each bucket of equal count the first, the lowest, the
 * highest and the last, in order and without repeats, so that no extreme of the line is lost; at most 4 for each bucket. A line with
 * fewer points is kept whole. Units: those of the line. Source: definition (the usual min-max reduction of drawn lines).
 *
 * @param values of the line, at rising times
 * @param buckets about the width of the plot in pixels; at least 1
 */
export function decimate(values: ArrayLike<number>, buckets: number): Int32Array {
  const n = values.length;
  const count = Math.max(1, Math.floor(buckets));
  if (n <= 4 * count) return Int32Array.from({ length: n }, (_, i) => i);
  const kept = new Int32Array(4 * count);
  let m = 0;
  const add = (i: number): void => {
    if (m === 0 || kept[m - 1]! < i) kept[m++] = i;
  };
  for (let b = 0; b < count; b++) {
    const from = Math.floor((b * n) / count);
    const to = Math.floor(((b + 1) * n) / count) - 1;
    let low = from;
    let high = from;
    for (let i = from + 1; i <= to; i++) {
      if (values[i]! < values[low]!) low = i;
      if (values[i]! > values[high]!) high = i;
    }
    add(from);
    add(Math.min(low, high));
    add(Math.max(low, high));
    add(to);
  }
  return kept.slice(0, m);
}
