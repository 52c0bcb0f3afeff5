/**
 * Makes the fonts that the pages serve: the installed families cut down to the letters and signs that the workbook uses.
 * An author runs it by hand (`npx tsx src/look/subset-fonts.ts`) after a change of the families; its output is kept.
 * Both families are under the SIL Open Font License; the licences are copied beside the fonts.
 */
import { copyFileSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import subsetFont from "subset-font";

const here = new URL("./fonts/", import.meta.url);
const modules = new URL("../../node_modules/", import.meta.url);
const serif = "@fontsource-variable/source-serif-4/files/source-serif-4-latin-wght";
const label = "@fontsource/barlow-semi-condensed/files/barlow-semi-condensed-latin";

const ascii = Array.from({ length: 0x7f - 0x20 }, (_, i) => String.fromCharCode(0x20 + i)).join("");
const signs = "\u00a0×−·°…‘’“”–—±²³½µ′″";

/** Each font served: its name, where it comes from, and the weight that a variable one is held at. */
const cuts: readonly { readonly name: string; readonly from: string; readonly weight?: number }[] = [
  { name: "serif-400", from: `${serif}-normal.woff2`, weight: 400 },
  { name: "serif-600", from: `${serif}-normal.woff2`, weight: 600 },
  { name: "label-400", from: `${label}-400-normal.woff2` },
  { name: "label-600", from: `${label}-600-normal.woff2` },
];

mkdirSync(here, { recursive: true });
let total = 0;
for (const { name, from, weight } of cuts) {
  const whole = readFileSync(new URL(from, modules));
  const cut = await subsetFont(whole, ascii + signs, {
    targetFormat: "woff2",
    keepFeatures: ["kern", "tnum", "lnum"],
    noHinting: true,
    ...(weight === undefined ? {} : { variationAxes: { wght: weight } }),
  });
  writeFileSync(new URL(`${name}.woff2`, here), cut);
  total += cut.length;
  console.log(`${name}.woff2 ${cut.length} bytes`);
}
copyFileSync(new URL("@fontsource-variable/source-serif-4/LICENSE", modules), new URL("serif-LICENSE.txt", here));
copyFileSync(new URL("@fontsource/barlow-semi-condensed/LICENSE", modules), new URL("label-LICENSE.txt", here));
console.log(`in all ${total} bytes`);
