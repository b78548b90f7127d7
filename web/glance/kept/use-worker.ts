import { createEffect, onCleanup, type Accessor } from 'solid-js';

const WORKER = '/glance-worker.js';
const SCOPE = '/glance/';

/**
 * Has the browser keep this page for a time without a network, where it can: over an encrypted connection, or on this machine. A page
 * that came from the phone asks for a newer one as soon as the server is heard, and loads itself anew when its own parts are gone.
 */
export function keepPage(heard: Accessor<boolean>): void {
  const workers = (navigator as Partial<Navigator>).serviceWorker;
  if (workers === undefined) return;
  const registered = workers.register(WORKER, { scope: SCOPE, updateViaCache: 'none' }).catch(() => null);
  createEffect(() => {
    if (heard()) void registered.then((registration) => registration?.update().catch(() => {}));
  });
  const replaced = (): void => void isKept().then((kept) => void (kept || location.reload()));
  workers.addEventListener('controllerchange', replaced);
  onCleanup(() => workers.removeEventListener('controllerchange', replaced));
}

/** Whether this very build is what the phone keeps now. When a new worker takes over, the parts of the old one may still be there, before its own. */
async function isKept(): Promise<boolean> {
  const newest = (await caches.keys()).at(-1);
  return newest !== undefined && (await (await caches.open(newest)).match(new URL(import.meta.url).pathname)) !== undefined;
}
