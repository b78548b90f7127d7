import type { Box } from './place-label.ts';

/** More texts than one evening says. */
const MOST_KNOWN = 1000;

/** Boxes of texts that have been measured, about their own origin. */
const known = new Map<string, Box>();
let letters = 0;
let listening = false;
const waiting = new Set<() => void>();

/**
 * Which letters texts are measured in: another number once a face has come, or the theme is another. A text has the same box for
 * as long as this and its size are the same.
 */
export function lettersNow(): string {
  listen();
  return `${letters} ${document.documentElement.dataset['theme'] ?? ''}`;
}

/**
 * Tells each time that a face has come, in which texts that were drawn before take another room.
 * @returns the way to be told no more
 */
export function onLetters(tell: () => void): () => void {
  listen();
  waiting.add(tell);
  return () => void waiting.delete(tell);
}

function listen(): void {
  if (listening) return;
  listening = true;
  document.fonts.addEventListener('loadingdone', () => {
    letters += 1;
    known.clear();
    for (const tell of waiting) tell();
  });
}

/**
 * The box of a text element before it is moved anywhere, remembered by what it says, its class and its size: to measure makes the
 * browser lay out the whole page at once, in the middle of a drawing.
 * @param textPx size of the text
 */
export function textBox(text: SVGTextElement, textPx: number): Box {
  const said = text.childElementCount === 0 ? text.textContent : [...text.children].map(({ textContent }) => textContent).join('\n');
  const key = `${lettersNow()} ${text.getAttribute('class')} ${textPx} ${said}`;
  const before = known.get(key);
  if (before !== undefined) return before;
  const { x, y, width, height } = text.getBBox();
  const box = { x, y, width, height };
  // Where nothing is laid out there is nothing to remember.
  if (width === 0) return box;
  if (known.size >= MOST_KNOWN) known.clear();
  known.set(key, box);
  return box;
}
