import { describe, expect, it } from "vitest";
import { filesBelow, fixedText, type Node, nodes, parse, place, read, type Source } from "../support/source.ts";

/**
 * Files that may turn markup into elements, with the reason. Only markup that was made when the site was built, or by a
 * library from text of our own, may pass there: never text from a link, a file or a log.
 */
const markup: Record<string, string> = {};

/** Files that write programs, whose words no reader sees. */
const writesCode = ["src/notebook/emit.ts"];

const called = (node: Node): string => {
  const callee = node.callee as Node | undefined;
  if (callee?.type === "Identifier") return String(callee.name);
  return callee?.type === "MemberExpression" ? `.${String((callee.property as Node).name ?? "")}` : "";
};

/** A call's `object.method`, where the object is a plain name. */
const written = (node: Node): string => {
  const callee = node.callee as Node & { object?: Node };
  return `${String(callee.object?.name ?? "")}${called(node)}`;
};

/** What one node does that a strict content security policy or plain caution forbids, in words, or null. */
function offence(node: Node): string | null {
  const args = (node.arguments ?? []) as Node[];
  if (node.type === "CallExpression") {
    const name = called(node);
    if (name === "eval" || name === "Function") return "evaluates text";
    if (/^\.?set(Timeout|Interval)$/.test(name) && fixedText(args[0]) !== null) return "evaluates text later";
    if (name === ".setAttribute" && fixedText(args[0]) === "style") return "writes a style attribute";
    if (name === ".insertAdjacentHTML" || name === ".createContextualFragment" || name === ".parseFromString") {
      return "makes elements from text";
    }
    if (name === ".setHTMLUnsafe" || /^document\.write(ln)?$/.test(written(node))) return "makes elements from text";
  }
  if (node.type === "NewExpression" && called(node) === "Function") return "evaluates text";
  if (node.type === "AssignmentExpression") {
    const name = String(((node.left as Node).property as Node | undefined)?.name ?? "");
    if ((name === "innerHTML" || name === "outerHTML") && fixedText(node.right) === null) {
      return "makes elements from text";
    }
  }
  const text = fixedText(node) ?? (node.type === "TemplateElement" ? (node.value as { raw: string }).raw : "");
  if (/<[a-z][^>]*\s(style|on[a-z]+)\s*=/i.test(text)) return "holds markup with a style or a handler inside";
  return null;
}

/** Words that a reader must never see in place of a figure. */
function unshown(node: Node): string | null {
  const text = node.type === "TemplateElement" ? (node.value as { cooked: string }).cooked : fixedText(node);
  const word = /\b(NaN|Infinity|undefined)\b/.exec(text ?? "")?.[1];
  return word ? `shows the word ${word}` : null;
}

const offences = (source: Source, rules: readonly ((node: Node) => string | null)[]): string[] =>
  [...nodes(source)].flatMap((node) =>
    rules.flatMap((rule) => {
      const found = rule(node);
      const listed = found === "makes elements from text" && source.path in markup;
      // `typeof x === "undefined"` asks and shows nothing.
      return found && !listed && !asked(source, node) ? [`${place(source, node.start)} ${found}`] : [];
    }),
  );

const asked = (source: Source, node: Node): boolean =>
  /typeof\s+[\w.]+\s*[!=]==?\s*$/.test(source.text.slice(0, node.start)) && fixedText(node) === "undefined";

/** Scripts, styles and handlers that stand in a page's own markup. */
const inline = (html: string): string[] =>
  html.match(/<script(?![^>]*\bsrc=)[^>]*>|<style\b[^>]*>|<[a-z][^>]*\s(?:style|on[a-z]+)\s*=[^>]*>/gi) ?? [];

describe("the source is safe", () => {
  const sources = filesBelow("src", ".ts").map((path) => parse(path));

  it("evaluates no text and makes no elements from it", () => {
    expect(sources.length).toBeGreaterThan(0);
    expect(sources.flatMap((source) => offences(source, [offence]))).toEqual([]);
  });

  it("has no words for a figure that is not there", () => {
    const spoken = sources.filter((source) => !writesCode.includes(source.path));
    expect(spoken.flatMap((source) => offences(source, [unshown]))).toEqual([]);
  });

  it("lists no file in vain", () => {
    const paths = sources.map((source) => source.path);
    expect([...Object.keys(markup), ...writesCode].filter((path) => !paths.includes(path))).toEqual([]);
  });

  it("keeps scripts and styles out of the markup of pages", () => {
    const pages = ["index.html", ...filesBelow("notebooks", ".md"), ...filesBelow("src", ".html")];
    expect(pages.flatMap((path) => inline(read(path)).map((found) => `${path}: ${found}`))).toEqual([]);
  });

  it.each([
    'eval("1")',
    'new Function("return 1")',
    'Function("return 1")',
    'setTimeout("f()", 1)',
    'el.setAttribute("style", "color: red")',
    "el.innerHTML = text",
    "el.innerHTML = `<b>${text}</b>`",
    "el.outerHTML += text",
    'el.insertAdjacentHTML("beforeend", text)',
    "document.write(text)",
    "const html = `<p style='color: red'>${text}</p>`",
    "const html = '<b onclick=\"f()\">'",
  ])("notices %s", (text) => {
    expect(offences(parse("src/view/planted.ts", text), [offence])).toHaveLength(1);
  });

  it.each(['el.innerHTML = "<b>fixed</b>"', "el.style.width = w", "setTimeout(f, 1)", 'el.setAttribute("class", c)'])(
    "lets %s pass",
    (text) => {
      expect(offences(parse("src/view/planted.ts", text), [offence, unshown])).toEqual([]);
    },
  );

  it("notices words for a missing figure, but not the question for it", () => {
    const found = (text: string) => offences(parse("src/view/planted.ts", text), [unshown]).length;
    expect(found("const a = 'NaN'")).toBe(1);
    expect(found("const a = `${b} is Infinity`")).toBe(1);
    expect(found('const a = typeof b === "undefined"')).toBe(0);
  });

  it("notices scripts, styles and handlers in markup", () => {
    const bad = '<script>1</script><style>a{}</style><p style="a">x</p><b onclick="f()">y</b>';
    expect(inline(bad)).toHaveLength(4);
    expect(inline('<script type="module" src="/a.ts"></script><link rel="stylesheet" href="a.css">')).toEqual([]);
  });
});
