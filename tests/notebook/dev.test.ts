import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { createServer, type HotPayload, type ViteDevServer } from "vite";
import { afterAll, beforeAll, beforeEach, describe, expect, it, vi } from "vitest";
import { configFor, copySite } from "./site.ts";

let root: string;
let removeSite = () => {};
let server: ViteDevServer;
let origin: string;
const sent: HotPayload[] = [];
const file = () => join(root, "notebooks/01-first-steps.md");
let original: string;

const get = async (path: string, accept = "text/html") => {
  const response = await fetch(origin + path, { headers: { accept } });
  return { status: response.status, text: await response.text() };
};
const edit = (from: string, to: string) => writeFileSync(file(), original.replace(from, to));
const told = (type: string) => vi.waitFor(() => expect(sent.map((payload) => payload.type)).toContain(type), 5000);
const cells = "/notebooks/01-first-steps.md?import&cells&lang.ts";

beforeAll(async () => {
  root = copySite((remove) => (removeSite = remove));
  original = readFileSync(file(), "utf8");
  // Polling: what watches the files must not depend on the machine.
  const watch = { usePolling: true, interval: 20 };
  server = await createServer({ ...(await configFor(root)), server: { host: "127.0.0.1", port: 0, watch } });
  const { hot } = server.environments.client;
  const send = hot.send.bind(hot);
  hot.send = (...args: unknown[]) => {
    if (typeof args[0] === "object") sent.push(args[0] as HotPayload);
    return (send as (...args: unknown[]) => void)(...args);
  };
  await server.listen();
  origin = server.resolvedUrls?.local[0]?.replace(/\/$/, "") ?? "";
});
afterAll(async () => {
  await server.close();
  removeSite();
});
beforeEach(async () => {
  edit("", "");
  await get("/");
  await get("/@page/first-steps.js", "*/*");
  await get(cells, "*/*");
  await new Promise((done) => setTimeout(done, 100));
  sent.length = 0;
});

describe("the dev server", () => {
  it("makes each page on request, with or without its ending, and no others", async () => {
    expect((await get("/")).text).toContain("<title>First steps</title>");
    expect((await get("/second-look.html")).text).toContain("<title>Second look</title>");
    expect((await get("/second-look")).text).toContain('src="/@page/second-look.js"');
    expect((await get("/third")).status).toBe(404);
  });

  it("gives the page's cells as a module whose map leads to the notebook", async () => {
    const { text } = await get(cells, "*/*");
    expect(text).toContain("tripled = 3 * machine");
    const map = JSON.parse(Buffer.from(text.split("base64,").at(-1) ?? "", "base64").toString());
    expect(map.sourcesContent[0]).toBe(original);
  });

  it("sends new cells and prose to an open page, which needs no reload", async () => {
    edit("3 * machine", "4 * machine");
    await told("update");
    expect(sent.map(({ type }) => type)).not.toContain("full-reload");
    expect((await get(cells, "*/*")).text).toContain("tripled = 4 * machine");
  });

  it("loads pages anew when a head has changed, since that stands on all of them", async () => {
    edit("title: First steps", "title: The first");
    await told("full-reload");
    expect((await get("/second-look")).text).toContain(">The first</a>");
  });

  it("answers with the fault and its place, and with the page again once it's mended", async () => {
    edit("{= tripled }", "{= nowhere }");
    await told("update");
    const { status, text } = await get("/");
    expect(status).toBe(500);
    expect(text).toMatch(/notebooks\/01-first-steps\.md:\d+:17: 'nowhere' is declared nowhere/);
    expect((await get(cells, "*/*")).status).toBe(500);
    edit("", "");
    await vi.waitFor(async () => expect((await get(cells, "*/*")).status).toBe(200), 5000);
    expect((await get("/")).status).toBe(200);
  });
});
