/**
 * Keeps the app's own files on this device, whole or not at all, each build beside the others. A later build waits
 * until she asks for it, and the files of the one before stay, so that tabs which run it go on.
 */
declare const self: ServiceWorkerGlobalScope;
/**
 * Written by the build: what this build is called, and its files, addressed from where this script lies. Those of
 * `later` are large, and it works without them.
 */
declare const __SHELL__: {
  readonly build: string;
  readonly files: readonly string[];
  readonly later: readonly string[];
};

const { build, files, later } = __SHELL__;
const prefix = "verso-";
const ours = prefix + build;
// The folder stands for its page: some places send whoever asks for index.html there, and what was sent on is refused.
const thePage = "./";

self.addEventListener("install", (event) => event.waitUntil(fetchAll()));
self.addEventListener("activate", (event) => event.waitUntil(takeOver()));
self.addEventListener("message", (event) => {
  if (event.data === "take-over") event.waitUntil(self.skipWaiting());
  if (event.data === "what-is-missing") event.waitUntil(tellMissing(event.ports[0]));
  if (event.data === "fetch-later") event.waitUntil(fetchLater());
  if (event.data === "let-go") lettingGo.abort();
});
self.addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method !== "GET" || new URL(request.url).origin !== self.location.origin) return;
  event.respondWith(request.mode === "navigate" ? page(request) : file(request));
});

// A later build takes over only once nothing is under way here, which for large files may be minutes. Once she has asked
// for it, what is being fetched is let go, and nothing more is begun.
const lettingGo = new AbortController();

/** All files or none: one that can't be fetched lets the whole installation fail, and the earlier build stays. */
async function fetchAll(): Promise<void> {
  const cache = await caches.open(ours);
  await cache.addAll(files.map((name) => new Request(addressOf(nameFor(name)), { cache: "no-cache" })));
}

/** Says how many files are not here (the browser may have cleared some away), and then fetches them. */
async function tellMissing(port: MessagePort | undefined): Promise<void> {
  const cache = await caches.open(ours);
  const kept = new Set((await cache.keys()).map(({ url }) => url));
  const missing = [...files, ...later]
    .map((name) => addressOf(nameFor(name)))
    .filter((address) => !kept.has(address));
  port?.postMessage(missing.length);
  // Asked again while it is under way, it isn't begun a second time.
  mending ??= fetchMissing(cache, missing).finally(() => {
    mending = null;
  });
  await mending;
}

let mending: Promise<void> | null = null;

/** Without a network it fails, and is tried again when next asked; so does what is let go, of which nothing is kept. */
async function fetchMissing(cache: Cache, missing: readonly string[]): Promise<void> {
  for (const address of missing) {
    if ((await cache.match(address)) !== undefined) continue;
    try {
      lettingGo.signal.throwIfAborted();
      await keepFile(cache, address);
    } catch {
      return;
    }
  }
}

/** While the page has nothing to do; what can't be fetched now is tried again another time. */
async function fetchLater(): Promise<void> {
  const cache = await caches.open(ours);
  mending ??= fetchMissing(cache, later.map(addressOf)).finally(() => {
    mending = null;
  });
  await mending;
}

// What carries a hash of its content in its name is the same as an earlier build's.
async function keepFile(cache: Cache, address: string): Promise<void> {
  const known = address.includes("/assets/") ? await caches.match(address) : undefined;
  await (known === undefined
    ? cache.add(new Request(address, { cache: "no-cache", signal: lettingGo.signal }))
    : cache.put(address, known));
}

async function takeOver(): Promise<void> {
  await clearAway();
  await self.clients.claim();
}

// A tab that was open before goes on with the build before this one. Older ones would only take up room.
async function clearAway(): Promise<void> {
  const earlier = (await caches.keys()).filter((name) => name.startsWith(prefix) && name !== ours);
  await Promise.all(earlier.slice(0, -1).map((name) => caches.delete(name)));
}

/** The page itself, of this build: with a network or without, what she opens is one build through and through. */
async function page(request: Request): Promise<Response> {
  const { pathname } = new URL(request.url);
  const own = [thePage, "index.html"].map((name) => new URL(addressOf(name)).pathname);
  const kept = own.includes(pathname) ? await cached(addressOf(thePage), ours) : undefined;
  return kept ?? fetch(request);
}

async function file(request: Request): Promise<Response> {
  return (await cached(request.url, ours)) ?? (await caches.match(request.url)) ?? fetch(request);
}

function nameFor(file: string): string {
  return file === "index.html" ? thePage : file;
}

async function cached(address: string, name: string): Promise<Response | undefined> {
  return (await caches.open(name)).match(address);
}

function addressOf(name: string): string {
  return new URL(name, self.location.href).href;
}

// A module of its own, so that its names are no one else's.
export {};
