/// <reference lib="webworker" />
// Keeps the screen on this device, so that it opens without a network.
//
// Every release has a cache of its own, filled when the worker is installed: each
// file by the hash of what is in it; those that have not changed are taken over from
// the caches before. A page that is open goes on with the release it began with. A new
// release waits until the user takes it, or until no page is open.

import { unfiltered } from "./planner/unfilter";

const worker = self as unknown as ServiceWorkerGlobalScope;

// A list of all built files, with hashes of what is in them, which the build puts in here.
declare const __KEPT__: [path: string, hash: string][];
const files = __KEPT__;

/**
 * What is only needed later, and is fetched when everything else is there: the printer,
 * the pictures of whoever installs the screen, designs that the sample does not hang, and
 * languages that are not spoken here.
 */
const late = /\/printer\.filtered$|\/icon-\w+\.png$|\/(ginkgo|quince)-[^/]*$|\/(de|fr)-[^/]*$/;
/** What is kept when somebody has wanted it, and not before. */
const wanted = /\/Solid-[^/]*$/;

const name = `firstdrop-${release(files)}`;
const isProgram = (url: string) => url.endsWith(".filtered");
const address = (path: string) => new URL(path, worker.registration.scope).href;
const known = new Map(files.map(([path, hash]) => [address(path), hash]));

/** One name for all that is in a release. */
function release(list: typeof files): string {
  let h = 0x811c9dc5;
  for (const c of list.flat().join()) h = Math.imul(h ^ c.charCodeAt(0), 0x01000193) >>> 0;
  return h.toString(16);
}

/** The key of a file in a cache: its address with its hash, so that caches can be compared. */
const key = (url: string) => `${url}?${known.get(url)}`;

/** Files that are being fetched: two who want one file wait for the same fetch. */
const coming = new Map<string, Promise<void>>();

function keep(url: string): Promise<void> {
  const going = coming.get(url) ?? fetched(url).finally(() => coming.delete(url));
  coming.set(url, going);
  return going;
}

async function fetched(url: string): Promise<void> {
  const cache = await caches.open(name);
  if (await cache.match(key(url))) return;
  const before = await caches.match(key(url)); // of an earlier release
  // What is large is not put into the browser's other cache as well.
  const response = before ?? (await fetch(url, { cache: isProgram(url) ? "no-store" : "no-cache", credentials: "same-origin" }));
  if (!response.ok) throw new Error(`${url}: ${response.status}`);
  // Programs are put back now, so that no later start has to.
  await cache.put(key(url), isProgram(url) ? await unfiltered(response) : response);
}

worker.addEventListener("install", (event) => {
  const now = [...known.keys()].filter((url) => !late.test(url) && !wanted.test(url));
  event.waitUntil(Promise.all(now.map(keep)));
});

worker.addEventListener("activate", (event) => {
  event.waitUntil(
    (async () => {
      // A page that is still open may want parts of the release before this one.
      const others = (await caches.keys()).filter((c) => c.startsWith("firstdrop-") && c !== name);
      for (const old of others.slice(0, -1)) await caches.delete(old);
      await worker.clients.claim();
    })(),
  );
});

worker.addEventListener("message", (event: ExtendableMessageEvent) => {
  if (event.data === "take over") void worker.skipWaiting();
  if (event.data === "fetch the rest") event.waitUntil(rest(event.source));
});

/** Fetches what is needed later, what is likely to be needed first, and says when all is there. */
async function rest(to: ExtendableMessageEvent["source"]): Promise<void> {
  const all = [...known.keys()].filter((url) => !wanted.test(url));
  for (const url of [...all.filter(isProgram), ...all.filter((url) => !isProgram(url))]) await keep(url);
  to?.postMessage("all is here");
}

worker.addEventListener("fetch", (event) => {
  const url = new URL(event.request.url);
  const scope = worker.registration.scope;
  if (event.request.method !== "GET" || !url.href.startsWith(scope) || url.href.startsWith(`${scope}api/`)) return;
  url.hash = url.search = "";
  if (event.request.mode === "navigate") url.href = address("index.html");
  if (known.has(url.href)) event.respondWith(answer(url.href, event.request));
  else if (url.href.startsWith(`${scope}assets/`)) event.respondWith(earlier(url.href, event.request));
});

/** A part of an earlier release, for a page that began with it. */
async function earlier(url: string, request: Request): Promise<Response> {
  return (await caches.match(url, { ignoreSearch: true })) ?? fetch(request);
}

/** From the cache; a file that is fetched late, or was cleared, from the server. */
async function answer(url: string, request: Request): Promise<Response> {
  const cache = await caches.open(name);
  const found = await cache.match(key(url));
  if (found) return found;
  try {
    await keep(url);
    return (await cache.match(key(url)))!;
  } catch {
    return fetch(request);
  }
}
