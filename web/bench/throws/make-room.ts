import { onCleanup } from 'solid-js';

/** As long as a new mark takes to arrive on the pictures. */
const GLIDE_MS = 170;

/** What stands above a list, the list in the room where new lines come from, and what follows below. */
interface Column {
  readonly above: HTMLElement;
  readonly room: HTMLElement;
  readonly list: HTMLElement;
  readonly followers: () => readonly HTMLElement[];
}

/**
 * Lets a list grow from its top, and what stands above it, without anything moving under a finger or an eye: the lines stand where
 * they stood when something new comes, then glide down together; while a finger is on them they wait until it is lifted, so that a
 * tap meets the line that it began on, and cover what has come until they have gone. Who has scrolled on sees nothing move at all. For
 * who wants less motion they step down in one move. What a person unfolds above the list is seen at once.
 */
export function makeRoom({ above, room, list, followers }: Column): void {
  const gliding = new Set<Animation>();
  let held = false;
  const hold = (): void => {
    held = true;
    for (const glide of gliding) glide.pause();
  };
  const release = (): void => {
    held = false;
    for (const glide of gliding) glide.play();
  };
  const glide = (element: HTMLElement, px: number): void => {
    if (px === 0) return;
    const glides = glideFrom(element, px);
    gliding.add(glides);
    void glides.finished.then(() => gliding.delete(glides), () => gliding.delete(glides));
    if (held) glides.pause();
  };
  const scroller = room.parentElement!;
  const seen = () => ({ first: list.firstElementChild as HTMLElement | null, tops: new Map([...(above.children as HTMLCollectionOf<HTMLElement>), room, ...followers()].map((one) => [one, one.offsetTop])) });
  /** Null while this column is out of sight: there nothing stands anywhere. */
  let stood: ReturnType<typeof seen> | null = null;
  const look = (): void => void (stood = room.offsetParent === null ? null : seen());
  const follow = (): void => {
    const before = stood;
    look();
    if (before === null || stood === null) return;
    const grownPx = before.first?.parentElement === list ? before.first.offsetTop - stood.first!.offsetTop : 0;
    const sunkPx = stood.tops.get(room)! - before.tops.get(room)!;
    if (grownPx === 0 && sunkPx === 0) return;
    if (scroller.scrollTop > 0) return void (scroller.scrollTop += grownPx + sunkPx);
    glide(list, -grownPx);
    for (const [one, top] of stood.tops) glide(one, (before.tops.get(one) ?? top) - top);
  };
  look();
  // What is said anew is followed before the next frame; what a person folds or turns is only looked at.
  const said = new MutationObserver(follow);
  said.observe(above, { childList: true, characterData: true, subtree: true });
  said.observe(list, { childList: true });
  const resized = new ResizeObserver(look);
  for (const one of [above, list]) resized.observe(one);
  scroller.addEventListener('pointerdown', hold);
  for (const end of ['pointerup', 'pointercancel'] as const) addEventListener(end, release);
  onCleanup(() => {
    said.disconnect();
    resized.disconnect();
    for (const end of ['pointerup', 'pointercancel'] as const) removeEventListener(end, release);
  });
}

/** Added to the glides that are still under way, so that lines in quick succession move on where they are seen. */
function glideFrom(element: HTMLElement, px: number): Animation {
  const calm = matchMedia('(prefers-reduced-motion: reduce)').matches;
  return element.animate([{ transform: `translateY(${px}px)` }, { transform: 'translateY(0px)' }], { duration: GLIDE_MS, easing: calm ? 'step-end' : 'ease-out', composite: 'add' });
}
