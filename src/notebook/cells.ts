/** Finds in a notebook's cells what each one needs, what it gives to the others, and what it shows. */
import { analyze, type Reference, type Scope, type Variable } from "@typescript-eslint/scope-manager";
import { parseSync } from "vite";
import { blank } from "./blank.ts";
import type { Fault } from "./fault.ts";
import type { Piece, Split } from "./split.ts";

/** A name at a place in the notebook's text. */
export interface Name {
  readonly name: string;
  readonly at: number;
}

interface Range {
  readonly start: number;
  readonly end: number;
}

export interface Cell {
  readonly piece: Piece;
  /** The names that it declares for the whole notebook. */
  readonly gives: readonly Name[];
  /** The names that it uses and neither declares nor imports; each once, where it is used first. */
  readonly needs: readonly Name[];
  /** Its last statement, if that is a bare expression: the value that it shows. */
  readonly shows: Range | null;
  /** Whether it waits for something at its top level. */
  readonly waits: boolean;
  readonly imports: readonly Range[];
}

export interface Cells {
  readonly cells: readonly Cell[];
  readonly faults: readonly Fault[];
}

/** The parts of a syntax tree that are read here. */
interface Node extends Range {
  readonly type: string;
  readonly [key: string]: unknown;
}

const asModule = { astType: "ts", sourceType: "module" } as const;

export function readCells(split: Split): Cells {
  const pieces = split.pieces.filter(({ kind }) => kind === "cell" || kind === "value");
  // Each on its own first: an open brace of one is then not found at the end of another.
  const broken = pieces.flatMap((piece) => syntaxFaults(split.text, piece));
  if (broken.length > 0) return { cells: [], faults: broken };
  const { program } = parseSync("notebook.ts", blank(split), { ...asModule, range: true, preserveParens: false });
  const { scopes } = analyze(program as unknown as Parameters<typeof analyze>[0], { sourceType: "module", lib: [] });
  const module = scopes.find((scope) => scope.type === "module");
  if (!module) return { cells: [], faults: [] };
  const body = program.body as unknown as Node[];
  const faults = doubled(module).concat(exported(body));
  const references = scopes.flatMap((scope) => scope.references);
  const cells = pieces.map((piece): Cell => {
    const own = (at: number): boolean => at >= piece.start && at < piece.end;
    const statements = body.filter(({ type, start }) => own(start) && type !== "EmptyStatement");
    const last = statements.at(-1);
    return {
      piece,
      gives: declared(module).filter(({ at }) => own(at)),
      needs: needed(references, module, own),
      shows: last?.type === "ExpressionStatement" ? shown(piece, last) : null,
      waits: statements.some(waits),
      imports: statements.filter(({ type }) => type === "ImportDeclaration").map(({ start, end }) => ({ start, end })),
    };
  });
  return { cells, faults: faults.concat(changedElsewhere(references, module, pieces)) };
}

/** The statement within its cell: one without a semicolon of its own would take that of the fence. */
function shown({ kind, inner }: Piece, { start, end }: Range): Range {
  return kind === "value" ? inner : { start, end: Math.min(end, inner.end) };
}

function syntaxFaults(text: string, { kind, inner }: Piece): Fault[] {
  if (kind === "value") return [];
  const { errors } = parseSync("cell.ts", text.slice(inner.start, inner.end), asModule);
  return errors.map(({ message, labels }) => ({
    at: inner.start + (labels[0]?.start ?? 0),
    words: `This is not TypeScript: ${message}`,
  }));
}

const isImported = (variable: Variable): boolean => variable.defs.some(({ type }) => type === "ImportBinding");

/** The values that the notebook declares at the top of its cells; types and imports aside. */
function declared(module: Scope): Name[] {
  return module.variables
    .filter((variable) => variable.isValueVariable && !isImported(variable))
    .flatMap(({ name, identifiers }) => identifiers.slice(0, 1).map(({ range }) => ({ name, at: range[0] })));
}

function needed(references: readonly Reference[], module: Scope, own: (at: number) => boolean): Name[] {
  const found = new Map<string, number>();
  for (const { identifier, resolved, isValueReference } of references) {
    const at = identifier.range[0];
    if (!isValueReference || !own(at) || found.has(String(identifier.name))) continue;
    // Names of inner scopes are the cell's own business; so are imports and what the cell itself declares.
    const foreign = resolved === null || (resolved.scope === module && !isImported(resolved));
    if (foreign && !resolved?.identifiers.some(({ range }) => own(range[0]))) found.set(String(identifier.name), at);
  }
  return [...found].map(([name, at]) => ({ name, at }));
}

function doubled(module: Scope): Fault[] {
  return module.variables.flatMap(({ name, defs }) => {
    // A function may have several signatures, an interface several parts: one declaration carries the value.
    const places = defs
      .filter(({ type, node }) => type !== "Type" && node.type !== "TSDeclareFunction")
      .map((def) => def.name.range[0]);
    return places.slice(1).map((at) => ({ at, words: `'${name}' is declared a second time in this notebook.` }));
  });
}

function exported(body: readonly Node[]): Fault[] {
  return body
    .filter(({ type }) => type.startsWith("Export"))
    .map(({ start }) => ({ at: start, words: "A cell exports nothing: what it declares is there for all cells." }));
}

/** A cell gets the names of others as they are; setting one would change nothing elsewhere, so it is refused. */
function changedElsewhere(references: readonly Reference[], module: Scope, pieces: readonly Piece[]): Fault[] {
  const cellAt = (at: number): Piece | undefined => pieces.find(({ start, end }) => at >= start && at < end);
  return references.flatMap((reference) => {
    const { identifier, resolved } = reference;
    if (!reference.isWrite() || reference.init || (resolved && resolved.scope !== module)) return [];
    const at = identifier.range[0];
    const home = resolved?.identifiers[0];
    if (home && cellAt(home.range[0]) === cellAt(at)) return [];
    return [{ at, words: `'${String(identifier.name)}' belongs to another cell: this one can read it, not set it.` }];
  });
}

/** Whether a node waits outside any function of its own. */
function waits(node: unknown): boolean {
  if (Array.isArray(node)) return node.some(waits);
  if (typeof node !== "object" || node === null || !("type" in node)) return false;
  const { type, await: loops } = node as Node;
  if (type === "AwaitExpression" || (type === "ForOfStatement" && loops === true)) return true;
  if (/Function/.test(type) || type === "MethodDefinition") return false;
  return Object.values(node).some(waits);
}
