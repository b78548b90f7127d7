/**
 * Keeps the page of Glance and its parts on the phone, so that it opens without a network. It keeps nothing of any athlete: what
 * was thrown comes over the live line only, and the page itself keeps its last state. Every build has its own worker, since the list of
 * parts stands in it; the browser then fetches the new parts at once and throws the old ones away.
 */
interface Lasting extends Event {
  waitUntil(work: Promise<unknown>): void;
}
interface Asking extends Lasting {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}
interface Worker {
  skipWaiting(): Promise<void>;
  readonly clients: { claim(): Promise<void> };
}

/** The page, first, and its parts; the build writes them in. */
declare const GLANCE_PARTS: readonly string[];
declare const GLANCE_BUILD: string;

const KEPT = `glance-${GLANCE_BUILD}`;
/** A server that cannot be reached often answers nothing at all. */
const PAGE_WITHIN_MS = 3000;
const worker = self as unknown as Worker;

addEventListener('install', (event) => (event as Lasting).waitUntil(fill()));
addEventListener('activate', (event) => (event as Lasting).waitUntil(takeOver()));
addEventListener('fetch', (event) => {
  const { request } = event as Asking;
  const { origin, pathname } = new URL(request.url);
  if (request.method !== 'GET' || origin !== location.origin) return;
  if (request.mode === 'navigate') (event as Asking).respondWith(pageFor(request));
  else if (GLANCE_PARTS.includes(pathname)) (event as Asking).respondWith(partFor(request));
});

async function fill(): Promise<void> {
  const parts = await caches.open(KEPT);
  await parts.addAll(GLANCE_PARTS.map((part) => new Request(part, { cache: 'reload' })));
  await worker.skipWaiting();
}

async function takeOver(): Promise<void> {
  for (const name of await caches.keys()) if (name !== KEPT) await caches.delete(name);
  await worker.clients.claim();
}

/** The server's page wherever there is one, so that a new build and a lost right to see are never hidden by an old page. */
async function pageFor(request: Request): Promise<Response> {
  const late = new Promise<null>((resolve) => void setTimeout(() => resolve(null), PAGE_WITHIN_MS));
  const fresh = fetch(request).catch(() => null);
  return (await Promise.race([fresh, late])) ?? (await kept(GLANCE_PARTS[0]!)) ?? (await fresh) ?? Response.error();
}

async function partFor(request: Request): Promise<Response> {
  return (await kept(request)) ?? fetch(request);
}

async function kept(part: Request | string): Promise<Response | undefined> {
  return (await caches.open(KEPT)).match(part);
}
