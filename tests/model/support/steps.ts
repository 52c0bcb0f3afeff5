/** Sum of `f` over equal steps from one number to another, each taken in its middle: the plain way to integrate. */
export function steps(count: number, from: number, to: number, f: (x: number) => number): number {
  const width = Math.abs(to - from) / count;
  let sum = 0;
  for (let i = 0; i < count; i++) sum += f(from + ((i + 0.5) * (to - from)) / count) * width;
  return sum;
}
