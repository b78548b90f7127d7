import { families } from './plan/families.ts';
import { frame } from './plan/frame.ts';
import { target } from './plan/target.ts';

/** The texts of Plan, by the part of the screen that says them. */
export const plan = {
  en: { frame: frame.en, families: families.en, target: target.en },
  es: { frame: frame.es, families: families.es, target: target.es },
};
