import { onCleanup, onMount } from 'solid-js';
import { createChosenHere } from '../chosen-here.ts';

/** Whether single keys act on this device. Who dictates or leans on keys can put them away: every key has a button. */
const single = createChosenHere('keys', ['on', 'off'] as const, null);
export const keysAct = (): boolean => single.chosen() !== 'off';
export const letKeysAct = (act: boolean): void => single.choose(act ? null : 'off');

/** The key that shows the list of keys, always. */
export const LIST_KEY = '?';
const ARROWS = /^Arrow|^Home$|^End$|^Page/;

/** Whether what has the focus needs a key for itself: words are being typed, or arrows move it. */
function takesKey(element: Element | null, key: string): boolean {
  if (!(element instanceof HTMLElement)) return false;
  if (element.isContentEditable || element.matches('textarea, select')) return true;
  if (element.closest('[role="slider"]') !== null) return ARROWS.test(key);
  if (!(element instanceof HTMLInputElement)) return false;
  return /^(checkbox|radio|range)$/.test(element.type) ? ARROWS.test(key) && element.type !== 'checkbox' : true;
}

/**
 * Hands the keys of a screen to it for as long as the component lives: none while somebody types (but Escape), none with Ctrl, Alt or
 * Meta, none that is held down, none under an open dialog.
 * @param take does what the key is for; tells whether it was for anything
 */
export function listenForKeys(take: (key: string) => boolean): void {
  const listen = (event: KeyboardEvent): void => {
    const { key } = event;
    if (event.ctrlKey || event.metaKey || event.altKey || event.repeat || event.defaultPrevented) return;
    if (document.querySelector('dialog:modal') !== null || (key !== 'Escape' && takesKey(document.activeElement, key))) return;
    if (!keysAct() && key !== LIST_KEY && key !== 'Escape') return;
    if (take(key)) event.preventDefault();
  };
  onMount(() => {
    addEventListener('keydown', listen);
    onCleanup(() => removeEventListener('keydown', listen));
  });
}
