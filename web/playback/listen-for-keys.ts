import { onCleanup } from 'solid-js';
import { keysAct, LIST_KEY } from '../keys/listen.ts';
import { deedOf, type ActingKeys } from './key-table.ts';

/** Listens for as long as the component lives. Unlike on a coach's screen a key may be held down, Space plays, and arrows step from throw to throw on the scrubber too. A key held with another one, or needed by what has the focus, is left alone. */
export function listenForKeys(groups: () => readonly ActingKeys[]): void {
  const listen = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey || event.altKey || keepsKey(document.activeElement, event.key)) return;
    if (!keysAct() && event.key.length === 1 && event.key !== ' ' && event.key !== LIST_KEY) return;
    const deed = deedOf(event.key, groups());
    if (deed === null) return;
    event.preventDefault();
    deed();
  };
  document.addEventListener('keydown', listen);
  onCleanup(() => document.removeEventListener('keydown', listen));
}

/** A button that was pressed by a pointer does not take the keys from the playhead: the next Space plays. */
export function leaveFocus(event: MouseEvent): void {
  if (event.target instanceof Element && event.target.closest('button') !== null && event.target.closest('dialog') === null) event.preventDefault();
}

/** Whether the element under the focus needs this key for itself. */
function keepsKey(element: Element | null, key: string): boolean {
  if (!(element instanceof HTMLElement)) return false;
  if (document.querySelector('dialog:modal') !== null || element.matches('textarea, input:not([type=range], [type=checkbox])')) return true;
  if (element instanceof HTMLSelectElement) return key.startsWith('Arrow') || key === ' ' || key === 'Home' || key === 'End';
  return key === ' ' && element.matches('button, a, input[type=checkbox], summary');
}
