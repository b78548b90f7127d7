import { frame } from './trials/frame.ts';
import { pair } from './trials/pair.ts';
import { verdict } from './trials/verdict.ts';

/** Trials: the list, two of them side by side, and the verdict. */
export const trials = {
  en: { frame: frame.en, pair: pair.en, verdict: verdict.en },
  es: { frame: frame.es, pair: pair.es, verdict: verdict.es },
};
