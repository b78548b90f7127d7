import { arm } from './arm.ts';
import { feedback } from './feedback.ts';
import { measures } from './measures.ts';
import { plane } from './plane.ts';
import { standing } from './standing.ts';
import { trade } from './trade.ts';
import type { BothWords, Words } from './words.ts';

export type Language = 'en' | 'es';
const learned: Record<Language, Partial<Words>> = { en: {}, es: {} };

/**
 * The texts that this page has loaded. Those that every screen needs are here from the first; a screen that needs more brings
 * them with it (`learn`), so that an athlete's phone does not load what only a coach's tablet says.
 */
export const WORDS = learned as Readonly<Record<Language, Words>>;

/** Adds the texts of some parts, in both languages at once. */
export function learn(parts: Partial<BothWords>): void {
  for (const [part, { en, es }] of Object.entries(parts)) {
    Object.assign(learned.en, { [part]: en });
    Object.assign(learned.es, { [part]: es });
  }
}

learn({ arm, feedback, measures, plane, standing, trade });

/** The tag under which numbers and times are written: Spanish as the game speaks it, with a decimal point. */
export const LOCALE: Readonly<Record<Language, string>> = { en: 'en-US', es: 'es-US' };

/** First what the viewer asked for, then what the athlete speaks, then what the browser prefers, then English. */
export function chooseLanguage(asked: Language | null, athletes: Language | null, browser: readonly string[]): Language {
  if (asked !== null) return asked;
  if (athletes !== null) return athletes;
  for (const tag of browser) {
    const main = tag.toLowerCase().split('-')[0];
    if (main === 'en' || main === 'es') return main;
  }
  return 'en';
}
