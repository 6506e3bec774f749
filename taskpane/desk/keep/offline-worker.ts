/**
 * Keeps every file of the desk in the browser. With the server there its files are taken, so that a new version shows at
 * once; without it, or when it does not answer, the stored ones. The build puts the list of files and its mark in.
 */
declare const DESK_FILES: readonly string[];
declare const DESK_MARK: string;

interface Extendable extends Event {
  waitUntil(work: Promise<unknown>): void;
}
interface Fetching extends Extendable {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}
interface WorkerScope {
  addEventListener(kind: "install" | "activate", run: (event: Extendable) => void): void;
  addEventListener(kind: "fetch", run: (event: Fetching) => void): void;
  skipWaiting(): Promise<void>;
  readonly clients: { claim(): Promise<void> };
  readonly registration: { readonly scope: string };
}
const scope = globalThis as unknown as WorkerScope;

const PREFIX = "tablefeed-desk ";
const OWN = PREFIX + DESK_MARK;
const PAGE = "desk.html";
/** A server that has not answered by then is taken for gone [ms]. */
const PATIENCE = 2500;

scope.addEventListener("install", (event) => {
  event.waitUntil(
    (async () => {
      const cache = await caches.open(OWN);
      await cache.addAll(DESK_FILES.map((file) => new Request(file, { cache: "no-cache" })));
      await scope.skipWaiting();
    })(),
  );
});

scope.addEventListener("activate", (event) => {
  event.waitUntil(
    (async () => {
      // The version before this one stays: a page that was loaded from it may still ask for its parts.
      const old = (await caches.keys()).filter((name) => name.startsWith(PREFIX) && name !== OWN);
      for (const name of old.slice(0, -1)) await caches.delete(name);
      await scope.clients.claim();
    })(),
  );
});

async function stored(request: Request): Promise<Response | undefined> {
  const own = await (await caches.open(OWN)).match(request, { ignoreSearch: true });
  if (own) return own;
  const any = await caches.match(request, { ignoreSearch: true });
  if (any) return any;
  return request.mode === "navigate" ? await (await caches.open(OWN)).match(PAGE) : undefined;
}

async function answer(request: Request): Promise<Response> {
  const asked = fetch(request);
  const late = new Promise<undefined>((resolve) => setTimeout(resolve, PATIENCE, undefined));
  try {
    const first = await Promise.race([asked, late]);
    if (first !== undefined && first.status < 500) return first;
  } catch {
    // the server is gone
  }
  return (await stored(request)) ?? asked;
}

scope.addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method !== "GET" || !request.url.startsWith(scope.registration.scope)) return;
  event.respondWith(answer(request));
});
