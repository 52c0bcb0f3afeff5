import { describe, expect, it } from "vitest";
import * as at from "#model/flight/state";
import { columns, createRecorder, valueAt } from "#model/flight/trace";

describe("trace", () => {
  const recorder = createRecorder(3);
  for (let n = 0; n < 5; n++) {
    recorder.port.set([n, 200 + n]);
    recorder.keep(
      Float64Array.from({ length: at.SIZE }, (_, i) => 100 * n + i),
      Float64Array.from({ length: at.NOW }, (_, i) => 1000 * n + i),
      Int32Array.of(n % 2, 0),
    );
  }
  const trace = recorder.trace();

  it("keeps each quantity of each sample in its own column, as many as there is room for", () => {
    expect([...trace.time]).toEqual([0, 1, 2]);
    expect([...trace.setSpeed]).toEqual([200, 201, 202]);
    expect([...trace.engaged]).toEqual([0, 1, 0]);
    for (const [name, column] of Object.entries(columns)) {
      const step = column.from === "state" ? 100 : 1000;
      expect([...trace[name as keyof typeof columns]]).toEqual([0, 1, 2].map((n) => step * n + column.place));
    }
  });

  it("gives values between samples, and its ends beyond them", () => {
    expect(valueAt(trace, "rotorSpeed", 0.5)).toBe(51);
    expect(valueAt(trace, "rotorSpeed", -1)).toBe(1);
    expect(valueAt(trace, "rotorSpeed", 9)).toBe(201);
    expect(valueAt(createRecorder(0).trace(), "rotorSpeed", 1)).toBe(0);
  });
});
