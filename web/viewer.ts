import { createChosenHere } from './chosen-here.ts';
import { settingsIn } from './settings.ts';

const asked = settingsIn(location.search);

/** The language and the units that this viewer asked for, here or on an earlier visit; null leaves them to the athlete or the browser. */
export const language = createChosenHere('lang', ['en', 'es'], asked.language);
export const units = createChosenHere('units', ['imperial', 'metric'], asked.units);
