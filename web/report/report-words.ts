import type { ArmCare } from '../../core/facts/care-view.ts';
import type { BaselineState, MoundView, SessionView, ThrowView } from '../../core/facts/views.ts';
import type { SpeedBand, TargetZone } from '../../core/facts/coach.ts';
import { dateText, hourText, isoDayText } from '../words/moments.ts';
import { distanceText, movementText, speedText } from '../words/numbers.ts';
import type { Speech } from '../words/speech.ts';
import { centreWords, slowerWords } from '../words/target-words.ts';
import { sideWords, whatWords } from '../words/throw-words.ts';
import { zoneOffset } from '../words/zone-offset.ts';

/** When a session was, in its own time zone with its distance from UTC. */
export function whenWords({ openedAtMs, closedAtMs, timeZone }: SessionView, { words, language }: Speech): string {
  const say = words.report;
  const offset = say.offset(zoneOffset(openedAtMs, timeZone));
  const start = hourText(openedAtMs, timeZone, language);
  return closedAtMs === null ? say.since(start, offset, timeZone) : say.from(start, hourText(closedAtMs, timeZone, language), offset, timeZone);
}

/** Every stage that was thrown in, with its distance and effort where it is the present one. */
export function stageWords({ stage, distanceM, effort }: SessionView, throws: readonly ThrowView[], speech: Speech): string {
  const { report, trade } = speech.words;
  const others = [...new Set(throws.map((thrown) => thrown.stage))].filter((one) => one !== stage);
  return [...others.map((one) => trade.stage[one]), report.stageIs(trade.stage[stage], distanceText(distanceM, speech), trade.effort[effort])].join('; ');
}

/** "31 throws: 6 four-seam, 25 changeup". */
export function throwsWords(throws: readonly ThrowView[], { language, words: { report, trade } }: Speech): string {
  const kinds = new Map<string, number>();
  for (const { intent } of throws) {
    const kind = intent === null ? trade.noIntent : trade.intent[intent];
    kinds.set(kind, (kinds.get(kind) ?? 0) + 1);
  }
  return report.throwsAre(trade.throws(throws.length), [...kinds].map(([kind, count]) => report.kind(count, kind.toLocaleLowerCase(language))).join(', '));
}

/** The athlete's own fastball in two lines; how far it has formed where there is none. */
export function baselineWords(baseline: BaselineState, timeZone: string, speech: Speech): readonly string[] {
  const { measures, report, trade } = speech.words;
  if (baseline.kind === 'forming') return [trade.baselineForming(baseline.have, baseline.need)];
  const { number, count, atMs, speedMps, speedSpreadMps, verticalM, armSideM } = baseline;
  const up = movementText(Math.abs(verticalM), speech, 1);
  const side = sideWords(armSideM, speech, 1);
  return [
    report.fastball(report.plusMinus(speedText(speedMps, speech), speedText(speedSpreadMps, speech)), (verticalM < 0 ? measures.down : measures.up)(up), side),
    report.baselineIs(number, count, dateText(atMs, timeZone, speech.language)),
  ];
}

/** The target zone and the band of the speed gap. */
export function targetWords(zone: TargetZone | null, band: SpeedBand | null, speech: Speech): readonly string[] {
  const { report } = speech.words;
  if (zone === null) return [report.noTarget];
  const across = (radiusM: number): string => movementText(radiusM * 2, speech, 0);
  return [report.targetIs(centreWords(zone, speech), across(zone.verticalRadiusM), across(zone.armSideRadiusM)), ...(band === null ? [] : [slowerWords(band, speech)])];
}

/** Notes in the order they were written, each with its hour and its throw. */
export function noteWords({ notes, timeZone }: SessionView, throws: readonly ThrowView[], { words: { report }, language }: Speech): readonly string[] {
  return notes.map(({ atMs, text, place }) => {
    const hour = hourText(atMs, timeZone, language);
    const number = throws.find((thrown) => thrown.place === place)?.number;
    return number === undefined ? report.note(hour, text) : report.noteOf(hour, number, text);
  });
}

export function excludedWords({ throws }: MoundView, speech: Speech): readonly string[] {
  return throws.filter(({ excluded }) => excluded !== null).map((thrown) => speech.words.report.excludedIs(thrown.number, whatWords(thrown, speech), thrown.excluded!));
}

/** The day's count over all mounds against the guideline, and when a mound may come next. Never that an arm is fine. */
export function armWords(care: ArmCare, { words: { bench, report, trade, trials }, language }: Speech): readonly string[] {
  const { source, today, moundThrows, dayMost, day } = care;
  const kinds = today.map(({ stage, effort, count }) => report.kind(count, `${trade.stage[stage].toLocaleLowerCase(language)}, ${trade.effort[effort]}`)).join('; ');
  const next = care.kind === 'rest-due' ? care.until : 'earliestNextDay' in care ? care.earliestNextDay : null;
  return [
    ...(care.kind === 'pain-reported' ? [trials.pair.medical] : care.kind === 'soreness-reported' ? [trials.pair.sore] : []),
    report.armCount(moundThrows, dayMost, isoDayText(day, language)),
    ...(kinds === '' ? [] : [report.armAll(kinds)]),
    ...(next === null ? [] : [report.armNext(isoDayText(next.day, language))]),
    ...(care.dayMostFrom === 'own-rule' ? [report.armOwn] : []),
    report.armSource(source.rowFromAge, source.rowToAge),
    ...source.house.map((rule) => bench.arm.house[rule]),
  ];
}
