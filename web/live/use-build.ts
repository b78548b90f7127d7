import { createEffect, onCleanup, type Accessor } from 'solid-js';

/** The build for which this page was loaded anew, kept over that. */
const RELOADED_FOR = 'offpace.reloaded-for';
const ASK_AGAIN_MS = 5000;

/**
 * Loads the page again when the server serves another build than the one that this screen was made from. For screens without a
 * keyboard: what is shown stays until the new page and its program have come whole, and nothing is loaded twice for one build,
 * however often the server names it.
 */
export function reloadOnNewBuild(build: Accessor<string | null>): void {
  createEffect(() => {
    const served = build();
    if (served === null || served === reloadedFor()) return;
    let over = false;
    let waiting: ReturnType<typeof setTimeout> | undefined;
    const look = async (): Promise<void> => {
      const found = await lookAtServed();
      if (over) return;
      if (found === 'another') loadAnew(served);
      else if (found === 'unreachable') waiting = setTimeout(() => void look(), ASK_AGAIN_MS);
    };
    onCleanup(() => {
      over = true;
      clearTimeout(waiting);
    });
    void look();
  });
}

/** Whether the page that the server has now is made of other files than this one; `another` once all of them have come. */
async function lookAtServed(): Promise<'same' | 'another' | 'unreachable'> {
  try {
    const page = await fetch(location.pathname, { headers: { accept: 'text/html' }, cache: 'no-cache' });
    if (!page.ok) return 'unreachable';
    const mine = new Set(filesOf(document));
    const fresh = filesOf(new DOMParser().parseFromString(await page.text(), 'text/html')).filter((file) => !mine.has(file));
    const came = await Promise.all(fresh.map(async (file) => (await fetch(file)).ok));
    if (fresh.length === 0) return 'same';
    return came.every(Boolean) ? 'another' : 'unreachable';
  } catch {
    return 'unreachable';
  }
}

/** Program and style sheets that a page names; each name carries a hash of what is in it. */
function filesOf(page: Document): string[] {
  return [...page.querySelectorAll('script[src], link[rel="stylesheet"]')].map((file) => file.getAttribute('src') ?? file.getAttribute('href') ?? '');
}

function reloadedFor(): string | null {
  try {
    return sessionStorage.getItem(RELOADED_FOR);
  } catch {
    return null;
  }
}

function loadAnew(build: string): void {
  try {
    sessionStorage.setItem(RELOADED_FOR, build);
  } catch {
    // Where nothing may be kept, the comparison of the files alone keeps the page from going round in circles.
  }
  location.reload();
}
