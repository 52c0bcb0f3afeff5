import { describe, expect, it } from "vitest";
import { offline } from "../../src/offline/plugin.ts";

type Bundle = Record<string, { type: "asset"; source: string } | { type: "chunk"; code: string }>;

async function written(bundle: Bundle): Promise<string> {
  const emitted: { fileName: string; source: string }[] = [];
  const { generateBundle } = offline() as unknown as {
    generateBundle(this: unknown, options: unknown, bundle: Bundle): Promise<void>;
  };
  await generateBundle.call(
    { emitFile: (file: { fileName: string; source: string }) => emitted.push(file) },
    {},
    bundle,
  );
  expect(emitted.map(({ fileName }) => fileName)).toEqual(["offline.js"]);
  return emitted[0]!.source;
}

const bundle: Bundle = {
  "index.html": { type: "asset", source: "<p>one</p>" },
  "assets/a.js": { type: "chunk", code: "let a = 1;" },
  "assets/a.js.map": { type: "asset", source: "{}" },
};
const edition = (text: string) => /edition = "(\w+)"/.exec(text)?.[1];

describe("the list of what is kept for the field", () => {
  it("has every file of the site but maps", async () => {
    const text = await written(bundle);
    expect(JSON.parse(/files = (\[.*\])/.exec(text)?.[1] ?? "")).toEqual(["assets/a.js", "icon.svg", "index.html"]);
  });

  it("is plain script: no types, no imports, nothing evaluated", async () => {
    const text = await written(bundle);
    expect(text).not.toMatch(/\b(interface|declare|import|export|eval)\b/);
    expect(text).toMatch(/addEventListener\("fetch"/);
  });

  it("is another edition when a file has changed, and the same one when none has", async () => {
    const first = edition(await written(bundle));
    expect(first).toMatch(/^\w{12}$/);
    expect(edition(await written(bundle))).toBe(first);
    expect(edition(await written({ ...bundle, "index.html": { type: "asset", source: "<p>two</p>" } }))).not.toBe(
      first,
    );
  });
});
