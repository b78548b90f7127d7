import { en, type Words } from './en.ts';
import { es } from './es.ts';

export type Language = 'en' | 'es';
export const WORDS: Readonly<Record<Language, Words>> = { en, es };

/** The tag under which numbers and times are written: Spanish as the game speaks it, with a decimal point. */
export const LOCALE: Readonly<Record<Language, string>> = { en: 'en-US', es: 'es-US' };

/** First what the address asks for, then what the athlete speaks, then what the browser prefers, then English. */
export function chooseLanguage(asked: Language | null, athletes: Language | null, browser: readonly string[]): Language {
  if (asked !== null) return asked;
  if (athletes !== null) return athletes;
  for (const tag of browser) {
    const main = tag.toLowerCase().split('-')[0];
    if (main === 'en' || main === 'es') return main;
  }
  return 'en';
}
