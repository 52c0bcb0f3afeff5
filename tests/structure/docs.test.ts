import { describe, expect, it } from "vitest";
import { type Documented, exportedFunctions, filesBelow, parse, place } from "../support/source.ts";

/** A unit, or the words that say there is none. */
const unit =
  /(?<![\w])(rpm|rad(\/s²?)?|rad\/s|m\/s²?|m²|m³|m|mm|kg(\/m³|\s?m²|\/m)?|g|N\s?m(\/A|\s?s)?|N|J|W|V(\s?s(\/rad)?)?|A|ohm|Ω|mΩ|K|°C|Pa|Hz|s|min|deg|degrees?|per cent|%|percent|ratio|fraction|dimensionless|no unit|unitless|1|SI|[Uu]nits?:)(?![\w])/;
const source = /\bsources?:\s*\S|\bby definition\b|\bdefinition\b|\bcommon practice\b|\bfrom memory\b/i;

/** What a docstring lacks, in words; in the model it names units and where the relation comes from. */
function lacks(path: string, { doc }: Documented): string | null {
  const words = doc.replace(/[*\s]+/g, " ").trim();
  if (words.length < 20) return "has no docstring";
  if (!path.startsWith("src/model/")) return null;
  if (!unit.test(words)) return "names no unit";
  return source.test(words) ? null : "names no source (nor 'definition', 'common practice' or 'from memory')";
}

describe("exported functions are documented", () => {
  it.each(["src/model", "src/machine", "src/figures"])("in %s", (folder) => {
    const sources = filesBelow(folder, ".ts").map((path) => parse(path));
    expect(sources.length).toBeGreaterThan(0);
    const short = sources.flatMap((file) =>
      exportedFunctions(file).flatMap((f) => {
        const lack = lacks(file.path, f);
        return lack ? [`${place(file, f.start)} ${f.name} ${lack}`] : [];
      }),
    );
    expect(short).toEqual([]);
  });

  const check = (text: string) => {
    const file = parse("src/model/planted.ts", text);
    return exportedFunctions(file).map((f) => lacks(file.path, f));
  };

  it("notices a docstring that is missing, thin, without unit or without source", () => {
    expect(check("export function f() {}")).toEqual(["has no docstring"]);
    expect(check("/** Tip speed. */\nexport const f = () => 1;")).toEqual(["has no docstring"]);
    expect(check("/** Tip speed of the blade. Source: definition. */\nexport const f = () => 1;")).toEqual([
      "names no unit",
    ]);
    expect(check("/** Tip speed of the blade, m/s. */\nexport function f() {}")).toEqual([
      "names no source (nor 'definition', 'common practice' or 'from memory')",
    ]);
  });

  it("takes the docstring right above, not one further up", () => {
    const good = "/** Tip speed of the blade, m/s. Source: definition. */";
    expect(check(`${good}\nexport function f() {}`)).toEqual([null]);
    expect(check(`${good}\nconst a = 1;\nexport function f() { return a; }`)).toEqual(["has no docstring"]);
  });
});
