/**
 * The service worker: keeps the whole workbook in the browser, so that it opens at a field without a network. The build
 * puts the list of files and the name of the edition in front of it; it stands alone, without imports.
 */
declare const files: readonly string[];
declare const edition: string;

interface Lifetime extends Event {
  waitUntil(work: Promise<unknown>): void;
}

interface Asked extends Lifetime {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}

interface Scope {
  readonly registration: { readonly scope: string };
  readonly clients: { claim(): Promise<void> };
  skipWaiting(): Promise<void>;
  addEventListener(type: "install" | "activate", listener: (event: Lifetime) => void): void;
  addEventListener(type: "fetch", listener: (event: Asked) => void): void;
}

const scope = globalThis as unknown as Scope;
const shelf = `workbook ${edition}`;

/** A network that takes longer than this for a page is as good as none: ms. */
const PATIENCE = 3000;

scope.addEventListener("install", (event) => {
  event.waitUntil(
    (async () => {
      const cache = await caches.open(shelf);
      await cache.addAll(files.map((file) => new URL(file, scope.registration.scope).href));
      await scope.skipWaiting();
    })(),
  );
});

scope.addEventListener("activate", (event) => {
  event.waitUntil(
    (async () => {
      const old = (await caches.keys()).filter((name) => name.startsWith("workbook ") && name !== shelf);
      await Promise.all(old.map((name) => caches.delete(name)));
      await scope.clients.claim();
    })(),
  );
});

/** What is kept of an address; a folder means its first page. */
function kept(address: string): Promise<Response | undefined> {
  const url = new URL(address);
  if (url.pathname.endsWith("/")) url.pathname += "index.html";
  return caches.match(url.href, { ignoreSearch: true, ignoreVary: true });
}

/** The newest page if the network gives it in time, else the kept one. */
async function pageFor(request: Request): Promise<Response> {
  const online = fetch(request);
  const late = new Promise<undefined>((resolve) => setTimeout(resolve, PATIENCE));
  const first = await Promise.race([online.catch(() => undefined), late]);
  return first ?? (await kept(request.url)) ?? online;
}

scope.addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method !== "GET" || !request.url.startsWith(scope.registration.scope)) return;
  event.respondWith(
    request.mode === "navigate" ? pageFor(request) : kept(request.url).then((found) => found ?? fetch(request)),
  );
});
