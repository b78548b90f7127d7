import { frame } from './throw-numbers/frame.ts';
import { names } from './throw-numbers/names.ts';
import { tells } from './throw-numbers/tells.ts';

/** The numbers of one throw: how they are framed, what each is called, and in one line what it tells. */
export const throwNumbers = {
  en: { ...frame.en, names: names.en, tells: tells.en },
  es: { ...frame.es, names: names.es, tells: tells.es },
};
