import { describe, expect, it } from "vitest";
import { evenly, writeCubics } from "#model/flight/cubics";

describe("curves in tables", () => {
  it("pass through a parabola from uneven points to even ones, exactly, and hold their ends", () => {
    const xs = Float64Array.of(-1, -0.7, -0.1, 0, 0.4, 0.5, 1.1, 1.5);
    const f = (x: number) => 2 - x + 3 * x * x;
    const even = evenly(xs, xs.map(f), -2, 0.25, 20);
    for (const [i, y] of even.entries()) {
      const x = -2 + 0.25 * i;
      // The first and the last cell have a flat end.
      if (x >= -0.7 && x <= 1.1) expect(y).toBeCloseTo(f(x), 12);
      if (x <= -1) expect(y).toBe(f(-1));
      if (x >= 1.5) expect(y).toBe(f(1.5));
    }
  });

  it("are read as cubics of their cells, value and slope without a jump", () => {
    const values = [0, 1, 4, 9, 16, 25];
    const into = new Float64Array(3 + 5 * 6);
    writeCubics(values, into, 3, 6);
    for (let i = 1; i < 4; i++) {
      const [a, b, c, d] = [into[3 + 6 * i]!, into[4 + 6 * i]!, into[5 + 6 * i]!, into[6 + 6 * i]!];
      for (const t of [0, 0.3, 1]) expect(a + t * (b + t * (c + t * d))).toBeCloseTo((i + t) ** 2, 12);
    }
    expect([into[7], into[8]]).toEqual([0, 0]);
  });
});
