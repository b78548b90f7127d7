import type { SessionView } from '../../../core/facts/views.ts';
import type { Speech } from '../../words/speech.ts';
import { glanceWords } from '../said.ts';
import type { GlanceShows } from '../shows.ts';

/** What is read out, and of which throws, so that the same words about another throw are said again. */
export interface Aloud {
  readonly of: string;
  readonly text: string;
}

/**
 * What Glance reads out: what it shows and nothing that the coach's mode withholds. Silence that means good stays silence, and what
 * is said of an arm is nobody else's to hear.
 */
export function aloudOf(shows: GlanceShows, session: SessionView, showSpeed: boolean, speech: Speech): Aloud | null {
  const { glance } = speech.words;
  switch (shows.kind) {
    case 'throw': {
      const { lead, sentence } = glanceWords(shows.thrown, session, showSpeed, speech);
      return { of: `${shows.thrown.place}`, text: inFull([lead, sentence], speech) };
    }
    case 'ask-first': return { of: `asked ${shows.thrown.place}`, text: glance.wentAsk };
    case 'summary': {
      const leads = shows.throws.map((thrown) => glanceWords(thrown, session, showSpeed, speech).lead);
      return { of: shows.throws.map(({ place }) => place).join(' '), text: inFull([shows.judged > 0 ? glance.summary(shows.onTarget, shows.judged) : null, ...leads], speech) };
    }
    case 'pain':
    case 'ready':
    case 'quiet-good':
    case 'waits':
    case 'no-feedback': return null;
  }
}

/** Sentences one after the other, units in full: a voice reads "in" as the word it is. */
function inFull(said: readonly (string | null)[], { words: { glance } }: Speech): string {
  const sentences = said.filter((one) => one !== null).map((one) => (/[.!?]$/.test(one) ? one : `${one}.`));
  return sentences.join(' ').replaceAll('\u00a0', ' ').replace(/(\d) (in|cm|mph|km\/h)(?![\p{L}/])/gu, (_, digit: string, unit: string) => `${digit} ${glance.unitAloud[unit as keyof typeof glance.unitAloud]}`);
}
