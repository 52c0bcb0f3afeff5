import { dirname, join } from "node:path/posix";
import { describe, expect, it } from "vitest";
import { filesBelow, type Node, nodes, parse, type Source } from "../support/source.ts";

/** What no page, flight or command asks for, and why it is in the model all the same. */
const asked: Readonly<Record<string, string>> = {
  "src/model/motor.ts landmarks": "a motor is known by them; checked against published ones",
  "src/model/air.ts standardAir": "what the air at a place departs from; checked against printed tables",
  "src/model/rotor/bemt.ts hover": "the rotor in one call; all else asks a rotor that is kept",
  "src/model/rotor/solve.ts speedForPower": "the same rotor asked the other way round; checked against a hover",
};

const list = (node: Node, key: string): Node[] => (Array.isArray(node[key]) ? (node[key] as Node[]) : []);
const nameIn = (value: unknown): string => String((value as Node | null)?.name ?? "");

/** The values that a file exports by a declaration: functions, constants, classes. */
function exportsOf({ tree }: Source): { name: string; number: boolean }[] {
  return (tree.program.body as unknown as Node[])
    .filter((statement) => statement.type === "ExportNamedDeclaration" && statement.exportKind !== "type")
    .flatMap((statement) => {
      const made = statement.declaration as Node | null;
      if (!made || /^TS/.test(made.type)) return [];
      if (made.type !== "VariableDeclaration") return [{ name: nameIn(made.id), number: false }];
      return list(made, "declarations").map((each) => {
        const value = each.init as Node | null;
        return { name: nameIn(each.id), number: value?.type === "Literal" && typeof value.value === "number" };
      });
    });
}

/** What a file takes from files of the model: `file name`, or `file *` where it takes all of one. */
function takenFrom(source: Source): string[] {
  return [...nodes(source)].flatMap((node) => {
    if (!/^(Import|ExportNamed)Declaration$/.test(node.type) || !node.source) return [];
    const from = String((node.source as Node).value);
    const file = from.startsWith("#model/")
      ? `src/${from.slice(1)}.ts`
      : from.startsWith(".")
        ? join(dirname(source.path), from)
        : "";
    return list(node, "specifiers").map((each) => {
      const name = nameIn(each.type === "ExportSpecifier" ? each.local : each.imported);
      return `${file} ${each.type === "ImportNamespaceSpecifier" ? "*" : name}`;
    });
  });
}

const model = filesBelow("src/model", ".ts").map((path) => parse(path));

describe("the model", () => {
  const taken = new Set(filesBelow("src", ".ts").flatMap((path) => takenFrom(parse(path))));

  /** Exported names that nothing in src takes, nor the file itself. */
  const idle = (source: Source): string[] => {
    const words = [...nodes(source)].filter(({ type }) => type === "Identifier").map(({ name }) => name);
    return exportsOf(source)
      .filter(({ name }) => !taken.has(`${source.path} ${name}`) && !taken.has(`${source.path} *`))
      .filter(({ name }) => words.filter((word) => word === name).length < 2)
      .map(({ name }) => `${source.path} ${name}`);
  };

  it("holds nothing that only its tests ask for, unless a reason is given", () => {
    expect(model.flatMap(idle).filter((name) => !(name in asked))).toEqual([]);
  });

  it("notices what nothing takes", () => {
    const text = "export const lone = () => 1; export function own() {} export type T = 1; own();";
    expect(idle(parse("src/model/planted.ts", text))).toEqual(["src/model/planted.ts lone"]);
  });

  it("gives a number one name in one file", () => {
    // The places in a state's own table aside, which `state.ts` and the two that keep such tables call alike.
    const names = model.flatMap((source) => exportsOf(source).filter(({ number }) => number));
    const seen = names.map(({ name }) => name).filter((name) => name !== name.toUpperCase());
    expect(seen.filter((name, i) => seen.indexOf(name) !== i)).toEqual([]);
  });
});
