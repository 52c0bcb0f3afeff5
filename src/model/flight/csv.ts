/** A flight as a table of text that other programs read, and a log reader too. */
import { rpm } from "../constants.ts";
import type { Trace } from "./trace.ts";

/** A column of a flight's table: its header (the unit is part of it), and how the SI value becomes the column's. */
export interface LogColumn {
  readonly header: string;
  readonly quantity: "time" | "rotorSpeed" | "duty" | "packVoltage" | "packCurrent" | "charge" | "collective";
  /** SI value = value in the table x this. */
  readonly unit: number;
  /** Digits after the point. */
  readonly digits: number;
}

/** The columns, in order: also those that a log is read by. */
export const logColumns: readonly LogColumn[] = [
  { header: "time_s", quantity: "time", unit: 1, digits: 4 },
  { header: "head_speed_rpm", quantity: "rotorSpeed", unit: rpm, digits: 1 },
  { header: "duty_percent", quantity: "duty", unit: 0.01, digits: 2 },
  { header: "voltage_V", quantity: "packVoltage", unit: 1, digits: 3 },
  { header: "current_A", quantity: "packCurrent", unit: 1, digits: 2 },
  { header: "charge_percent", quantity: "charge", unit: 0.01, digits: 3 },
  { header: "collective_deg", quantity: "collective", unit: Math.PI / 180, digits: 2 },
];

/**
 * A flight's trace as CSV (RFC 4180, lines end with CR LF): a header, then a row for each sample, in the units that the
 * headers name (s, rpm, %, V, A, %, deg). Numbers have a point and no separators, so no cell needs quotes. Source: definition.
 */
export function flightCsv(trace: Trace): string {
  const rows = [logColumns.map((column) => column.header).join(",")];
  for (let i = 0; i < trace.time.length; i++) {
    rows.push(logColumns.map((c) => (trace[c.quantity][i]! / c.unit).toFixed(c.digits)).join(","));
  }
  return `${rows.join("\r\n")}\r\n`;
}
