import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { build } from "vite";
import { beforeAll, describe, expect, it } from "vitest";
import { configFor, copySite } from "./site.ts";

let root: string;
let removeSite = () => {};
const page = (name: string) => readFileSync(join(root, "dist", name), "utf8");
const scripts = () => readdirSync(join(root, "dist/assets")).filter((name) => name.endsWith(".js"));

beforeAll(async () => {
  root = copySite((remove) => (removeSite = remove));
  await build(await configFor(root));
  return () => removeSite();
});

describe("the built site", () => {
  it("has a page for each notebook, the first as its front", () => {
    expect(readdirSync(join(root, "dist")).toSorted()).toEqual(["assets", "index.html", "second-look.html"]);
  });

  it("has title, question and prose in the page itself, and the way to the others", () => {
    const html = page("index.html");
    expect(html).toContain("<title>First steps</title>");
    expect(html).toContain("<h1>Does &quot;it&quot; &lt;work&gt;?</h1>");
    expect(html).toContain("<p>Words stand first: ");
    expect(html).toContain('<a href="./" aria-current="page">First steps</a>');
    expect(html).toContain('<a rel="next" href="./second-look.html">Second look</a>');
    expect(page("second-look.html")).toContain('<a rel="prev" href="./">First steps</a>');
    expect(html).not.toMatch(/<!--/);
  });

  it("is drawn before its script: the cells' values, what inputs hold, the shell's own parts", () => {
    const html = page("index.html");
    expect(html).toContain('the speed is <span data-cell="value-1">100</span>');
    expect(html).toContain('<output data-value="300">300</output>');
    expect(html).toContain('<input type="range" max="1000" value="300">');
    expect(html).toContain('<path d="M0,0H300"></path>');
    expect(html).toContain('data-cell="shell-header">speed 100, 2 pages</div>');
    expect(page("second-look.html")).toContain('Over at <span data-cell="value-3">101</span>.');
  });

  it("states its policy and keeps to it: nothing inline, no style attributes, no other host", () => {
    for (const html of [page("index.html"), page("second-look.html")]) {
      expect(html).toMatch(
        /<meta charset="utf-8">\s*<meta http-equiv="Content-Security-Policy" content="default-src 'none'; script-src 'self';/,
      );
      expect(html).not.toMatch(/<script(?![^>]* src=)|<style|\sstyle=|\son\w+=/);
      // The fonts that the template names are files that this small site has none of: they stand as they are.
      const links = html.match(/(?:src|href)="(?!#)[^"]*"/g)?.filter((link) => !link.includes("/look/fonts/"));
      expect(links?.filter((link) => !/="\.\//.test(link))).toEqual([]);
    }
  });

  it("gives each page a script of its own and shares the rest", () => {
    const own = scripts().filter((name) => /^(?:index|second-look)-/.test(name));
    expect(own).toHaveLength(2);
    const [first, second] = own.map((name) => readFileSync(join(root, "dist/assets", name), "utf8"));
    for (const text of [first, second]) {
      expect(text?.length).toBeLessThan(1000);
      expect(text).not.toContain("Words stand first");
    }
    expect(first).toContain("tripled");
    expect(second).not.toContain("tripled");
  });

  it("lists its pages for the shell", () => {
    const text = scripts()
      .map((name) => readFileSync(join(root, "dist/assets", name), "utf8"))
      .join("");
    expect(text).toMatch(/title:.First steps.,question:.Does "it" <work>\?.,minutes:2,slug:.first-steps.,href:.\.\/./);
  });
});

describe("a build", () => {
  const broken = async (body: string): Promise<string> => {
    const site = copySite();
    writeFileSync(join(site, "notebooks/02-second-look.md"), `---\ntitle: T\nquestion: Q?\nminutes: 3\n---\n${body}`);
    return build(await configFor(site)).then(
      () => "built",
      (error: Error) => error.message,
    );
  };

  it("fails on a notebook with a fault, and says where", async () => {
    expect(await broken("Words {= nowhere }.")).toContain(
      "notebooks/02-second-look.md:6:10: 'nowhere' is declared nowhere",
    );
  });

  it("fails on a cell that stops at the bench as it is", async () => {
    const message = await broken("```ts\nif (machine === 100) throw new Error('not this one');\n```\n");
    expect(message).toContain("notebooks/02-second-look.md:6: This part has stopped: not this one");
  });

  it("fails on a claim that the numbers don't bear out, and takes one that they do", async () => {
    const claim = (most: number) =>
      `\n\`\`\`ts\nimport { holds } from "#kit";\n\`\`\`\n\nThe speed is {= holds(machine < ${most}, "less than ${most}", "${most} or more") }.\n`;
    expect(await broken(claim(90))).toContain(
      "notebooks/02-second-look.md:11: the model doesn't agree any more that: less than 90",
    );
    expect(await broken(claim(110))).toBe("built");
    const inText =
      '\n```ts\nimport { holdsText } from "#kit";\n\nholdsText(machine < 90, "it is slow", "it is fast");\n```\n';
    expect(await broken(inText)).toContain(
      "notebooks/02-second-look.md:10:25: the model doesn't agree any more that: it is slow",
    );
  });
});
