import Papa from "papaparse";
import { describe, expect, it } from "vitest";
import { flightCsv, logColumns } from "#model/flight/csv";
import { fly } from "#model/flight/run";
import { hover } from "#model/flight/scenarios";
import { sample } from "./sample.ts";

describe("a flight as CSV", () => {
  const { trace } = fly({ ...hover({ machine: sample, setSpeed: 220 }, 0.5), samples: 20 });
  // Read back by an independent parser.
  const read = Papa.parse<Record<string, number>>(flightCsv(trace).trimEnd(), { header: true, dynamicTyping: true });

  it("has a header with units and a row for each sample", () => {
    expect(read.errors).toEqual([]);
    expect(read.meta.fields).toEqual([
      "time_s",
      "head_speed_rpm",
      "duty_percent",
      "voltage_V",
      "current_A",
      "charge_percent",
      "collective_deg",
    ]);
    expect(read.meta.linebreak).toBe("\r\n");
    expect(read.data.length).toBe(trace.time.length);
  });

  it("has the trace's figures, in its units, to the digits it gives", () => {
    const units = [1, Math.PI / 30, 0.01, 1, 1, 0.01, Math.PI / 180];
    for (const [n, column] of logColumns.entries()) {
      for (const [i, row] of read.data.entries()) {
        const value = trace[column.quantity][i]! / units[n]!;
        expect(Math.abs(row[column.header]! - value)).toBeLessThanOrEqual(0.5001 * 10 ** -column.digits);
      }
    }
  });
});
