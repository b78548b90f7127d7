import { onCleanup } from 'solid-js';
import { deedOf, type KeyGroup } from './key-table.ts';

/** Listens for as long as the component lives. A key held with another one, or needed by what has the focus, is left alone. */
export function listenForKeys(groups: () => readonly KeyGroup[]): void {
  const listen = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey || event.altKey || keepsKey(document.activeElement, event.key)) return;
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
  if (element.closest('dialog') !== null || element.matches('textarea, input:not([type=range], [type=checkbox])')) return true;
  if (element instanceof HTMLSelectElement) return key.startsWith('Arrow') || key === ' ' || key === 'Home' || key === 'End';
  return key === ' ' && element.matches('button, a, input[type=checkbox], summary');
}
