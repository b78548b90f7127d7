import { createEffect, on, onCleanup, type Accessor } from 'solid-js';

/** As long as a new mark takes to arrive on the pictures. */
const GLIDE_MS = 170;

/**
 * Lets a list grow from its top without anything moving under a finger or an eye: the lines stand where they stood when the new
 * one comes, then glide down together; while a finger is on the list they wait until it is lifted, so that a tap meets the line
 * that it began on. For who wants less motion they step down in one move.
 * @param first names the line at the top; a new one has come when it is another and the old one is still there
 * @param followers what stands below the list and goes with it
 */
export function makeRoom(list: HTMLElement, first: Accessor<number | null>, followers: () => readonly HTMLElement[]): void {
  let gliding: Animation[] = [];
  let held = false;
  const hold = (): void => {
    held = true;
    for (const one of gliding) one.pause();
  };
  const release = (): void => {
    held = false;
    for (const one of gliding) one.play();
  };
  list.addEventListener('pointerdown', hold);
  for (const end of ['pointerup', 'pointercancel'] as const) addEventListener(end, release);
  onCleanup(() => {
    for (const end of ['pointerup', 'pointercancel'] as const) removeEventListener(end, release);
  });
  const topOf = (element: HTMLElement | null | undefined): number => element?.offsetTop ?? 0;
  let top = list.firstElementChild as HTMLElement | null;
  let stood = new Map<HTMLElement, number>();
  createEffect(on(first, () => {
    const before = top;
    top = list.firstElementChild as HTMLElement | null;
    const grownPx = before !== null && before !== top && before.parentElement === list ? topOf(before) - topOf(top) : 0;
    const moved = grownPx === 0 ? [] : [list, ...followers().filter((one) => topOf(one) !== (stood.get(one) ?? topOf(one)))];
    stood = new Map(followers().map((one) => [one, topOf(one)]));
    for (const element of moved) gliding.push(glide(element, grownPx));
    gliding = gliding.filter(({ playState }) => playState !== 'finished');
    if (held) hold();
  }));
}

function glide(element: HTMLElement, px: number): Animation {
  const calm = matchMedia('(prefers-reduced-motion: reduce)').matches;
  return element.animate([{ transform: `translateY(${-px}px)` }, { transform: 'none' }], { duration: GLIDE_MS, easing: calm ? 'step-end' : 'ease-out', composite: 'accumulate' });
}
