/**
 * Lets the site pages open without a network: what they are made of is put by at the first visit, under names that tell
 * their content. The program of a new build waits until the pages of the old one are closed, so no page mixes the two.
 */

/** Written in by the build: the paths of the pages' files, and a name for this set of them. */
declare const SITE_FILES: readonly string[];
declare const SITE_BUILD: string;

interface Waits extends Event {
  waitUntil(work: Promise<unknown>): void;
}
interface Fetches extends Event {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}
const worker = self as unknown as {
  readonly clients: { claim(): Promise<void> };
  addEventListener(type: "install" | "activate", hear: (event: Waits) => void): void;
  addEventListener(type: "fetch", hear: (event: Fetches) => void): void;
};

const PREFIX = "outerleaf-site-";
const OWN = PREFIX + SITE_BUILD;

worker.addEventListener("install", (event) => {
  // Past the browser's own store, so that a set is whole and of one build.
  const requests = SITE_FILES.map((path) => new Request(path, { cache: "reload" }));
  event.waitUntil(caches.open(OWN).then((cache) => cache.addAll(requests)));
});

worker.addEventListener("activate", (event) => {
  const clean = async (): Promise<void> => {
    const names = await caches.keys();
    const old = names.filter((name) => name.startsWith(PREFIX) && name !== OWN);
    await Promise.all(old.map((name) => caches.delete(name)));
    await worker.clients.claim();
  };
  event.waitUntil(clean());
});

worker.addEventListener("fetch", (event) => {
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  if (request.method !== "GET" || origin !== location.origin || !SITE_FILES.includes(pathname)) return;
  event.respondWith(
    caches
      .open(OWN)
      .then((cache) => cache.match(pathname))
      .then((held) => held ?? fetch(request)),
  );
});
