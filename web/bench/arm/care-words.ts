import type { IsoDay, NextDay } from '../../../core/facts/care-view.ts';
import type { SessionView } from '../../../core/facts/views.ts';
import { dateText } from '../../words/moments.ts';
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
    ...(care.kind === 'rest-due' ? [arm.rest(dayText(care.until.day, speech), whyWords(care.until, speech))] : []),
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
  const rest = restAsked(next, care.day);
  return { rest, said: rest ? arm.next(dayText(next.day, speech), whyWords(next, speech)) : arm.nextNone };
}

/** Tomorrow is no rest. */
function restAsked({ day }: NextDay, today: IsoDay): boolean {
  return Date.parse(day) - Date.parse(today) > 86_400_000;
}

function whyWords({ reasons }: NextDay, { words: { bench: { arm } } }: Speech): string {
  return reasons.map((reason) => arm.why[reason]).join(', ');
}

/** A calendar day has no zone of its own; it is written as it stands. */
export function dayText(day: IsoDay, { language }: Speech): string {
  return dateText(Date.parse(`${day}T12:00:00Z`), 'UTC', language);
}
