import { against } from './playback/against.ts';
import { beside } from './playback/beside.ts';
import { deck } from './playback/deck.ts';
import { keys } from './playback/keys.ts';
import { notes } from './playback/notes.ts';
import { search } from './playback/search.ts';
import { video } from './playback/video.ts';

/** The texts of Playback, by the part of the screen that says them. */
export const playback = {
  en: { ...deck.en, against: against.en, besideAnother: beside.en, keys: keys.en, notes: notes.en, search: search.en, video: video.en },
  es: { ...deck.es, against: against.es, besideAnother: beside.es, keys: keys.es, notes: notes.es, search: search.es, video: video.es },
};
