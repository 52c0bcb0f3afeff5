/** Open-circuit voltage of one cell against its charge, per chemistry. Volts, and charge as 0 (empty) to 1 (full). */
import { type MonotoneCurve, monotoneCurve } from "./monotone.ts";

export type Chemistry = "lipo" | "lihv" | "life";

const charges = [0, 0.02, 0.05, 0.1, 0.15, 0.2, 0.25, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 1];

/** What is known of a chemistry's curve. */
export interface CellCurve {
  readonly curve: MonotoneCurve;
  /** One standard deviation between cells of the kind from 10 to 95 % charge, V. */
  readonly spread: number;
  readonly confidence: "measured" | "derived" | "low";
  readonly source: string;
}

/**
 * lipo and lihv: equilibrium of a cobalt-oxide and graphite pouch cell, worked out from its electrode data, full at 4.20
 * and 4.35 V. The 4.35 V curve needs the cobalt-oxide data carried on from 4.39 to 4.44 V against lithium: trust its
 * shape, allow 0.05 V. life: mean of a slow charge and a slow discharge (C/32, 25 °C) of an iron-phosphate cell.
 */
export const cellCurves: Readonly<Record<Chemistry, CellCurve>> = {
  lipo: {
    curve: monotoneCurve(
      charges,
      [
        3, 3.3385, 3.5353, 3.6391, 3.6654, 3.6953, 3.7167, 3.7331, 3.7622, 3.7925, 3.8365, 3.9089, 3.9944, 4.0879,
        4.1384, 4.2,
      ],
    ),
    spread: 0.012,
    confidence: "derived",
    source: "Ai et al., J. Electrochem. Soc. 167 (2020) 013512; Rieger et al., J. Electrochem. Soc. 163 (2016) A1566",
  },
  lihv: {
    curve: monotoneCurve(
      charges,
      [
        3, 3.3561, 3.5549, 3.6435, 3.6755, 3.7046, 3.724, 3.7413, 3.7723, 3.8102, 3.8711, 3.9631, 4.0618, 4.1722,
        4.2597, 4.35,
      ],
    ),
    spread: 0.05,
    confidence: "low",
    source: "as for 4.20 V, carried on to 4.35 V: low confidence, no published table of such a cell was found",
  },
  life: {
    curve: monotoneCurve(
      [0, 0.0033, 0.0117, 0.0267, 0.0534, 0.0885, 0.2972, 0.9833, 0.995, 1],
      [2.0102, 2.4177, 2.7405, 2.9299, 3.0872, 3.1942, 3.2772, 3.3511, 3.418, 3.5981],
    ),
    spread: 0.03,
    confidence: "measured",
    source: "Sunil, Pattipati, Balasingam, IEEE Trans. Instrum. Meas. (2025)",
  },
};

/**
 * Open-circuit voltage U(c) of a rested cell, V, at a charge of 0 to 1; null for a charge outside that.
 * Error: `spread` of the chemistry. Source: that of the chemistry's curve; between its points Fritsch and Butland (1984).
 */
export const openCellVoltage = (chemistry: Chemistry, charge: number): number | null =>
  cellCurves[chemistry].curve.at(charge);

/** A charge read from a voltage, or which way the voltage lies outside the cell's range, with the end that it passed. */
export type ChargeAnswer =
  | { readonly ok: true; readonly charge: number }
  | { readonly ok: false; readonly why: "above full" | "below empty"; readonly limit: number };

/**
 * Charge (0 to 1) of a rested cell from its voltage, the inverse of `openCellVoltage`.
 * Error: in the flat middle 0.01 V is 3 to 5 % of charge for lipo and lihv, and 10 % for life.
 * Source: that of the chemistry's curve.
 *
 * @param volts resting voltage of one cell, V
 */
export function chargeAtCellVoltage(chemistry: Chemistry, volts: number): ChargeAnswer {
  const { curve } = cellCurves[chemistry];
  const charge = curve.inverse(volts);
  if (charge !== null) return { ok: true, charge };
  const empty = curve.ys[0]!;
  if (volts < empty) return { ok: false, why: "below empty", limit: empty };
  return { ok: false, why: "above full", limit: fullCellVoltage(chemistry) };
}

/** Voltage of a full rested cell, V: 4.20, 4.35 or 3.60. Source: that of the chemistry's curve. */
export const fullCellVoltage = (chemistry: Chemistry): number => cellCurves[chemistry].curve.ys.at(-1)!;
