/** The project's own files as text and as syntax trees, for the tests that hold its structure. */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { type ParseResult, parseSync } from "vite";

export const root = new URL("../../", import.meta.url);

/** Every file below a folder of the project, as paths from the project's root, in order. */
export function filesBelow(folder: string, kind = ""): string[] {
  const at = new URL(`${folder}/`, root);
  if (!existsSync(at)) return [];
  return readdirSync(at, { withFileTypes: true })
    .flatMap((entry) => {
      const path = `${folder}/${entry.name}`;
      return entry.isDirectory() ? filesBelow(path, kind) : path.endsWith(kind) ? [path] : [];
    })
    .sort();
}

export const read = (path: string): string => readFileSync(new URL(path, root), "utf8");

/** A node of the tree: a type, a place, and whatever else its type has. */
export interface Node {
  readonly type: string;
  readonly start: number;
  readonly end: number;
  readonly [key: string]: unknown;
}

export interface Source {
  readonly path: string;
  readonly text: string;
  readonly tree: ParseResult;
}

export function parse(path: string, text: string = read(path)): Source {
  const tree = parseSync(path, text);
  if (tree.errors.length > 0) throw new Error(`${path} cannot be parsed: ${tree.errors[0]?.message}`);
  return { path, text, tree };
}

/** Where in a file a position stands, as `path:line`. */
export function place(source: Source, position: number): string {
  return `${source.path}:${source.text.slice(0, position).split("\n").length}`;
}

function isNode(value: unknown): value is Node {
  return typeof value === "object" && value !== null && "type" in value && typeof value.type === "string";
}

/** Every node of a file, in the order in which it stands there, parents before children. */
export function* nodes(source: Source): Generator<Node> {
  const open: unknown[] = [source.tree.program];
  while (open.length > 0) {
    const next = open.pop();
    if (Array.isArray(next)) open.push(...next.toReversed());
    else if (isNode(next)) {
      yield next;
      open.push(...Object.values(next).toReversed());
    }
  }
}

/** The fixed text that a node stands for, or null when it can change while the program runs. */
export function fixedText(node: unknown): string | null {
  if (!isNode(node)) return null;
  if (node.type === "Literal" && typeof node.value === "string") return node.value;
  if (node.type === "TemplateLiteral" && (node.expressions as unknown[]).length === 0) {
    return (node.quasis as { value: { cooked: string } }[])[0]?.value.cooked ?? "";
  }
  return null;
}

export interface Import {
  readonly from: string;
  readonly start: number;
  /** Imports nothing that exists when the program runs. */
  readonly typesOnly: boolean;
}

/** Whatever a file brings in: imports, re-exports, imports on demand, types and workers. */
export function importsOf(source: Source): Import[] {
  const found: Import[] = [];
  for (const node of nodes(source)) {
    const typesOnly = node.importKind === "type" || node.exportKind === "type" || node.type === "TSImportType";
    const brings = /^(Import(Declaration|Expression)|Export(Named|All)Declaration|TSImportType)$/.test(node.type);
    const from = brings ? fixedText(node.source) : workerOf(node);
    if (from !== null) found.push({ from, start: node.start, typesOnly });
  }
  return found;
}

/** The file of `new URL("./x.ts", import.meta.url)`. */
function workerOf(node: Node): string | null {
  if (node.type !== "NewExpression") return null;
  const [address, base] = node.arguments as unknown[];
  const ofThisFile = isNode(base) && isNode(base.object) && base.object.type === "MetaProperty";
  const file = ofThisFile && (node.callee as Node).name === "URL" ? fixedText(address) : null;
  return file && /\.[jt]s$/.test(file) ? file : null;
}

/** An exported function: its name, where it stands, and the docstring right above it ("" when there is none). */
export interface Documented {
  readonly name: string;
  readonly start: number;
  readonly doc: string;
}

export function exportedFunctions(source: Source): Documented[] {
  const found: Documented[] = [];
  for (const statement of source.tree.program.body as unknown as Node[]) {
    if (statement.type !== "ExportNamedDeclaration" && statement.type !== "ExportDefaultDeclaration") continue;
    const inner = statement.declaration;
    if (!isNode(inner)) continue;
    for (const name of functionNames(inner))
      found.push({ name, start: statement.start, doc: docAbove(source, statement) });
  }
  return found;
}

function functionNames(declaration: Node): string[] {
  const named = (node: Node): string => (isNode(node.id) ? String(node.id.name) : "default");
  if (/^(FunctionDeclaration|ArrowFunctionExpression|FunctionExpression)$/.test(declaration.type)) {
    return [named(declaration)];
  }
  if (declaration.type !== "VariableDeclaration") return [];
  return (declaration.declarations as Node[])
    .filter((d) => isNode(d.init) && /^(ArrowFunction|Function)Expression$/.test(d.init.type))
    .map(named);
}

function docAbove(source: Source, statement: Node): string {
  const above = source.tree.comments.filter((c) => c.end <= statement.start).at(-1);
  const next = above !== undefined && source.text.slice(above.end, statement.start).trim() === "";
  return next && above.type === "Block" && above.value.startsWith("*") ? above.value : "";
}

/** Whether a file has anything in it when the program runs: not only types. */
export function hasRuntime(source: Source): boolean {
  const still = new Set(["TSInterfaceDeclaration", "TSTypeAliasDeclaration", "ImportDeclaration"]);
  return (source.tree.program.body as unknown as Node[]).some((statement) => {
    const inner = isNode(statement.declaration) ? statement.declaration : statement;
    return statement.exportKind !== "type" && !still.has(inner.type);
  });
}
