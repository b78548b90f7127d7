import type { Athlete } from '../../core/facts/coach.ts';
import type { Words } from './words.ts';
import { WORDS, type Language } from './language.ts';

export type Units = Athlete['units'];

/** How measures are said to one viewer. */
export interface Speech {
  readonly language: Language;
  readonly units: Units;
  readonly words: Words;
}

export function speechIn(language: Language, units: Units): Speech {
  return { language, units, words: WORDS[language] };
}
