import { daysBetween } from '../../../core/coaching/calendar.ts';
import type { NextDay } from '../../../core/facts/care-view.ts';
import type { SessionView } from '../../../core/facts/views.ts';
import { isoDayText } from '../../words/moments.ts';
import { numberText } from '../../words/numbers.ts';
import type { Speech } from '../../words/speech.ts';
import type { ArmState } from './arm-state.ts';

/** What stands in the open however the rest is folded: the warnings, each a sentence. */
export function careWarnings({ care }: Pick<ArmState, 'care'>, { fatigue, armTalk }: Pick<SessionView, 'fatigue' | 'armTalk'>, speech: Speech): string[] {
  const { arm } = speech.words.bench;
  const slower = (change: number) => speech.words.measures.percent(numberText(-change * 100, 1, speech.language));
  const stands = care.kind === 'pain-reported';
  return [
    ...(care.kind === 'near' ? [arm.near] : []),
    ...(care.kind === 'reached' ? [arm.reached] : []),
    ...(care.kind === 'rest-due' ? [arm.rest(isoDayText(care.until.day, speech.language), whyWords(care.until, speech))] : []),
    ...(care.kind === 'soreness-reported' ? [arm.sore] : []),
    ...(fatigue.kind === 'ask-the-pitcher' ? [arm.slower(slower(fatigue.change))] : []),
    ...(fatigue.kind === 'ask-to-end' ? [arm.slowerEnd(slower(fatigue.change))] : []),
    ...(armTalk.questionDue && !stands ? [arm.askDue] : []),
  ];
}

/** Where the count comes from and what it is held against: the row, its source, and each house rule said as one. */
export function careGrounds({ care, mounds }: ArmState, { words: { bench: { arm } } }: Speech): string[] {
  const { rowFromAge, rowToAge, age, house } = care.source;
  return [
    mounds === null ? arm.countedHere : arm.counted(mounds.join(', ')),
    care.dayMostFrom === 'own-rule' ? arm.ownRule(care.dayMost) : arm.row(rowFromAge, rowToAge, care.dayMost, age),
    ...house.map((rule) => arm.house[rule]),
  ];
}

/** What today's throws from a mound ask for, and whether that is any rest; null where none were thrown, or where something stronger is said. */
export function nextDayWords({ care }: Pick<ArmState, 'care'>, speech: Speech): { readonly said: string; readonly rest: boolean } | null {
  if (!('earliestNextDay' in care) || care.earliestNextDay === null) return null;
  const { arm } = speech.words.bench;
  const { earliestNextDay: next } = care;
  // Tomorrow is no rest.
  const rest = daysBetween(care.day, next.day) > 1;
  return { rest, said: rest ? arm.next(isoDayText(next.day, speech.language), whyWords(next, speech)) : arm.nextNone };
}

function whyWords({ reasons }: NextDay, { words: { bench: { arm } } }: Speech): string {
  return reasons.map((reason) => arm.why[reason]).join(', ');
}
