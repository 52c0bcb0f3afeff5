/** Serves a folder on the loopback as a careful host would: compressed, and with a strict content security policy. */
import { existsSync, readFileSync, statSync } from "node:fs";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { extname, join, resolve, sep } from "node:path";
import { brotliCompressSync, constants } from "node:zlib";

/** What a page may do: its own scripts and styles only, nothing inline, nothing evaluated, no other host. */
const policy = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data:",
  "font-src 'self'",
  "connect-src 'self'",
  "worker-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
].join("; ");

const types: Record<string, string> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".ico": "image/x-icon",
  ".woff2": "font/woff2",
  ".webmanifest": "application/manifest+json",
};
const packed = new Set([".woff2", ".png", ".ico"]);

export interface Server {
  readonly origin: string;
  readonly close: () => Promise<void>;
}

/** The file that a host would answer with: the path itself, the folder's index, or the page of that name. */
function fileFor(root: string, path: string): string | null {
  const plain = resolve(join(root, decodeURIComponent(path)));
  if (plain !== root && !plain.startsWith(root + sep)) return null;
  const candidates = [plain, join(plain, "index.html"), `${plain}.html`];
  return candidates.find((file) => existsSync(file) && statSync(file).isFile()) ?? null;
}

/** Serves the folder; `quality` is brotli's, 11 for what a host packs once, less where only the way matters. */
export async function serve(folder: string, quality = 11): Promise<Server> {
  const root = resolve(folder);
  const compressed = new Map<string, Buffer>();
  const server = createServer((request, response) => {
    const file = fileFor(root, new URL(request.url ?? "/", "http://localhost").pathname);
    if (!file) {
      response.writeHead(404, { "content-type": "text/plain" }).end("There is no such page.");
      return;
    }
    const kind = extname(file);
    const head: Record<string, string> = {
      "content-type": types[kind] ?? "application/octet-stream",
      "content-security-policy": policy,
      "x-content-type-options": "nosniff",
    };
    let body: Buffer = readFileSync(file);
    if (!packed.has(kind) && /\bbr\b/.test(String(request.headers["accept-encoding"]))) {
      const small =
        compressed.get(file) ?? brotliCompressSync(body, { params: { [constants.BROTLI_PARAM_QUALITY]: quality } });
      compressed.set(file, small);
      body = small;
      head["content-encoding"] = "br";
    }
    response.writeHead(200, { ...head, "content-length": body.length }).end(body);
  });
  await new Promise<void>((done) => server.listen(0, "127.0.0.1", done));
  return {
    origin: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    close: () =>
      new Promise((done) => {
        server.close(() => done());
        server.closeAllConnections();
      }),
  };
}
