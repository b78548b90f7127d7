import type { NextDaySet } from '../../core/facts/advice-view.ts';
import type { CoachSays } from '../../core/facts/coach.ts';
import { wilsonInterval } from '../../core/statistics/wilson.ts';
import { isoDayText } from '../words/moments.ts';
import { shareText } from '../words/numbers.ts';
import type { Speech } from '../words/speech.ts';

type Offered = Extract<NextDaySet, { kind: 'offered' }>;
type Thrown = Extract<NextDaySet, { kind: 'thrown' }>;

/** Why this trial, and what such a set is for. */
export function offerWords({ because, before }: Offered, { words: { bench: { way: { set } } }, language }: Speech): string {
  const date = isoDayText(before.day, language);
  return `${(because === 'found-better' ? set.found : set.near)(before.letter, date)} ${set.why}`;
}

/** How the set goes beside how practice went, and what that means: a description, no verdict. */
export function thrownWords({ letter, throws, hits, judged, before }: Thrown, speech: Speech): string[] {
  const { words: { bench: { way: { set } }, trade }, language } = speech;
  if (throws === 0) return [set.none];
  const practised = before.judged === 0 ? [] : [set.before(isoDayText(before.day, language), before.hits, before.judged)];
  const interval = judged === 0 ? null : wilsonInterval(hits, judged);
  return [
    interval === null ? set.unjudged(letter, trade.throws(throws)) : set.result(letter, hits, judged, shareText(interval.low, speech), shareText(interval.high, speech)),
    ...practised,
    set.means,
  ];
}

/** What one tap says: feedback off, then the trial begun anew or gone on with. */
export function startingSet(session: string, { trial, resume }: Offered): CoachSays[] {
  return [
    { kind: 'feedback-set', session, mode: { kind: 'none' }, askFirst: false },
    resume === null ? { kind: 'trial-begun', session, ...trial } : { kind: 'trial-resumed', session, trial: resume },
  ];
}
