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
  const glides = new Map<HTMLElement, Animation>();
  let held = false;
  const hold = (): void => {
    held = true;
    for (const glide of glides.values()) glide.pause();
  };
  const release = (): void => {
    held = false;
    for (const glide of glides.values()) if (glide.playState === 'paused') glide.play();
  };
  list.addEventListener('pointerdown', hold);
  for (const end of ['pointerup', 'pointercancel'] as const) addEventListener(end, release);
  onCleanup(() => {
    for (const end of ['pointerup', 'pointercancel'] as const) removeEventListener(end, release);
  });
  let top = list.firstElementChild as HTMLElement | null;
  let stood = new Map<HTMLElement, number>();
  createEffect(on(first, () => {
    const before = top;
    top = list.firstElementChild as HTMLElement | null;
    const grownPx = before !== null && top !== null && before !== top && before.parentElement === list ? before.offsetTop - top.offsetTop : 0;
    const moved = grownPx === 0 ? [] : [list, ...followers().filter((one) => one.offsetTop !== (stood.get(one) ?? one.offsetTop))];
    stood = new Map(followers().map((one) => [one, one.offsetTop]));
    for (const element of moved) {
      // From where it is seen now, which is on its way where the last new line came just before.
      const glide = glideFrom(element, new DOMMatrix(getComputedStyle(element).transform).f - grownPx);
      glides.get(element)?.cancel();
      glides.set(element, glide);
      if (held) glide.pause();
    }
  }));
}

function glideFrom(element: HTMLElement, px: number): Animation {
  const calm = matchMedia('(prefers-reduced-motion: reduce)').matches;
  return element.animate([{ transform: `translateY(${px}px)` }, { transform: 'none' }], { duration: GLIDE_MS, easing: calm ? 'step-end' : 'ease-out' });
}
