/**
 * `npm run -s validate`: the rotor model on every published rotor, row by row, with its errors and the bounds asked for.
 * Exit code 1 where a set is beyond a bound.
 */
import { bounds, type CheckedRow, checkSet, leastThrust, type Spread } from "#validation/check";
import { testSets } from "#validation/published";

const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;
const signed = (share: number): string => `${share < 0 ? "" : "+"}${(100 * share).toFixed(1)} %`;

function line(row: CheckedRow): string {
  const pitch = row.collectiveDeg === null ? "   -" : String(row.collectiveDeg).padStart(4);
  const cells = [
    pitch,
    row.tipSpeed.toFixed(1).padStart(6),
    row.thrustCoefficient.toFixed(6),
    row.what.padEnd(24),
    row.measured.toFixed(7),
    row.model.toFixed(7),
    signed(row.error).padStart(8),
    row.judged ? "" : "(thrust too small to judge)",
  ];
  return cells.join("  ").trimEnd();
}

const summary = (name: string, s: Spread): string =>
  [
    name.padEnd(17),
    s.what.padEnd(24),
    `${s.count} rows`.padStart(8),
    `median ${percent(s.median)} (bound ${percent(bounds.median)})`,
    `90th percentile ${percent(s.ninetieth)} (bound ${percent(bounds.ninetieth)})`,
    `worst ${percent(s.worst)}`,
    `mean ${signed(s.bias)}`,
    s.within ? "within" : "BEYOND",
  ].join("  ");

const checked = testSets.map(checkSet);
for (const { set, rows } of checked) {
  console.log(`${set.name}: ${set.source}\n${set.note}`);
  console.log("pitch  tip m/s  CT        figure                    measured   model        error");
  for (const row of rows) console.log(line(row));
  console.log("");
}
console.log(`Rows with CT above ${leastThrust} count.`);
for (const { set, spreads } of checked) for (const s of spreads) console.log(summary(set.name, s));
if (checked.some(({ spreads }) => spreads.some((s) => !s.within))) process.exitCode = 1;
