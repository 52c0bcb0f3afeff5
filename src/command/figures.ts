/**
 * `npm run -s figures -- FILE`: reads a machine file (`-`: standard input) and prints every figure with its band, and every
 * warning, as one JSON object. A bad file: exit 2, each bad field on standard error, nothing on standard output.
 */
import { readFileSync } from "node:fs";
import { bandOf } from "#figures/bands";
import { catalogue } from "#figures/catalogue";
import { everyQuantity, type Figures, figuresOf } from "#figures/figures";
import { whyNone } from "#figures/why";
import { parseMachineFile } from "#machine/file";

/** Figures without a value, each with the reason: they go among the warnings. */
function gaps(figures: Figures): object[] {
  return everyQuantity(figures)
    .filter(({ name, mode }) => figures.value(name, mode ?? 0) === null)
    .map(({ name, mode }) => ({
      name: "no-headroom",
      quantity: name,
      ...(mode === null ? {} : { mode }),
      value: null,
      limit: null,
      unit: catalogue[name].unit,
      words: `${catalogue[name].title}: ${whyNone(figures, name, mode ?? 0)}`,
    }));
}

/** The object that the command prints for a machine. */
function report(figures: Figures): object {
  const quantities = everyQuantity(figures).map(({ name, mode }) => {
    const band = bandOf(figures, name, mode ?? 0);
    return {
      name,
      ...(mode === null ? {} : { mode }),
      value: figures.value(name, mode ?? 0),
      unit: catalogue[name].unit,
      low: band?.low ?? null,
      high: band?.high ?? null,
    };
  });
  const warnings = figures.warnings.map(({ mode, ...warning }) => ({ ...warning, ...(mode === null ? {} : { mode }) }));
  return { quantities, warnings: [...warnings, ...gaps(figures)] };
}

function main(file: string | undefined): number {
  if (file === undefined) {
    console.error("Name a machine file, or - for standard input: npm run -s figures -- FILE");
    return 2;
  }
  let text: string;
  try {
    text = readFileSync(file === "-" ? 0 : file, "utf8");
  } catch (error) {
    console.error(`${file} can't be read: ${error instanceof Error ? error.message : String(error)}`);
    return 2;
  }
  const parsed = parseMachineFile(text);
  if (!parsed.ok) {
    for (const { path, words } of parsed.problems) console.error(path ? `${path}: ${words}` : words);
    return 2;
  }
  for (const { path, words } of parsed.notes) console.error(path ? `${path}: ${words}` : words);
  console.log(JSON.stringify(report(figuresOf(parsed.machine)), null, 1));
  return 0;
}

process.exitCode = main(process.argv[2]);
