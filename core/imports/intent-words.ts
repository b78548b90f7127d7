import type { Intent } from '../facts/vocabulary.ts';
import { wordsOf } from './header-words.ts';

/** Plain words for what is thrown, in English and Spanish; the first line that fits holds. No codes of anybody's. */
const SAID: readonly (readonly [Intent, readonly string[]])[] = [
  ['changeup', ['changeup', 'change up', 'change', 'cambio']],
  ['split', ['split', 'splitter', 'split finger', 'tenedor']],
  ['cutter', ['cutter', 'cut', 'cortada']],
  ['sinker', ['sinker', 'two seam', '2 seam', 'dos costuras', 'hundida']],
  ['four-seam', ['four seam', '4 seam', 'fastball', 'cuatro costuras', 'recta']],
  ['curve', ['curve', 'curveball', 'curva']],
  ['slider', ['slider', 'sweeper', 'deslizador']],
  ['other', ['other', 'otro', 'otra']],
];

/** What a word of the trade means; null for one that is not known here. */
export function intentOf(text: string): Intent | null {
  const words = wordsOf(text);
  return SAID.find(([, lines]) => lines.some((line) => line.split(' ').every((word) => words.includes(word))))?.[0] ?? null;
}
