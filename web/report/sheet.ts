import { sessionAimWords } from '../aims/aim-words.ts';
import { trialWords } from '../grip/grip-words.ts';
import { armOn } from '../trials/arm.ts';
import { comparisonsOf, type OpenedComparison } from '../trials/comparison-of.ts';
import { entryNames } from '../trials/names.ts';
import type { AthleteRecord, FoldedSession } from '../trials/record.ts';
import { missMeanWords, onTargetWords, spreadWords } from '../trials/row-words.ts';
import { rowsOf, type TrialRow } from '../trials/rows.ts';
import { becauseWords, cautionWords, verdictWords } from '../trials/verdict-words.ts';
import { reportWords } from '../words/arm-words.ts';
import { dateText } from '../words/moments.ts';
import type { Speech } from '../words/speech.ts';
import { armWords, baselineWords, excludedWords, noteWords, stageWords, targetWords, throwsWords, whenWords } from './report-words.ts';

/** A report in words alone, for where nothing is drawn: the same sentences as on the screen. */
export interface Sheet {
  readonly title: string;
  readonly sections: readonly SheetSection[];
  readonly foot: readonly string[];
}

export interface SheetSection {
  readonly title: string;
  readonly lines: readonly string[];
  /** The header first; empty where there is none. */
  readonly table: readonly (readonly string[])[];
}

/** One session: who, when, what, how it went, and what may be said of it. Null for one that the record does not hold. */
export function sessionSheet(record: AthleteRecord, session: string, speech: Speech): Sheet | null {
  const folded = record.sessions.find(({ entry }) => entry.id === session);
  if (folded === undefined) return null;
  const say = speech.words.report;
  const { shown, view } = folded;
  const { lastReport } = shown.armTalk;
  return {
    title: say.title(shown.athlete.name, dateText(shown.openedAtMs, shown.timeZone, speech.language)),
    sections: said([
      factsOf(folded, speech),
      trialsOf(folded, speech),
      verdictsOf(comparisonsIn(record, folded), speech),
      lines(say.excluded, excludedWords(view, speech)),
      lines(say.notes, noteWords(shown, view.throws, speech)),
      lines(say.arm, [...(lastReport === null ? [] : [reportWords(lastReport, shown, speech)]), ...armWords(armOn(record, shown.armCare.day), speech)]),
    ]),
    foot: [say.caution, say.science(view.scienceVersion)],
  };
}

/** All sessions of an athlete, newest first, then the verdicts over all of them and the arm on the newest day. */
export function athleteSheet(record: AthleteRecord, speech: Speech): Sheet {
  const say = speech.words.report;
  const newest = record.sessions[0]!;
  const { day } = newest.shown.armCare;
  return {
    title: say.title(record.athlete.name, dateText(newest.shown.openedAtMs, newest.shown.timeZone, speech.language)),
    sections: said([
      ...record.sessions.flatMap((folded): SheetSection[] => {
        const date = dateText(folded.shown.openedAtMs, folded.shown.timeZone, speech.language);
        const [facts, trials] = [factsOf(folded, speech), trialsOf(folded, speech)];
        return [{ title: `${date} · ${folded.entry.id}`, lines: [...facts.lines, ...trials.lines], table: trials.table }];
      }),
      verdictsOf(comparisonsOf(record, day, null), speech),
      lines(say.arm, armWords(armOn(record, day), speech)),
    ]),
    foot: [say.caution, say.science(newest.view.scienceVersion)],
  };
}

function comparisonsIn(record: AthleteRecord, { shown, entry }: FoldedSession): readonly OpenedComparison[] {
  return comparisonsOf(record, shown.armCare.day, null).filter((found) => found.entry.days.some(({ session }) => session === entry.id));
}

function factsOf({ recorded, shown, view }: FoldedSession, speech: Speech): SheetSection {
  const { report, aims, trade } = speech.words;
  const named: readonly (readonly [string, readonly string[]])[] = [
    [report.athlete, [trade.hand[shown.athlete.hand]]],
    [report.mound, [recorded.mound]],
    [report.stage, [stageWords(shown, view.throws, speech)]],
    [report.throws, [throwsWords(view.throws, speech)]],
    [report.baseline, baselineWords(shown.baseline, shown.timeZone, speech)],
    [report.target, targetWords(shown.zone, shown.speedBand, speech)],
    [aims.title, sessionAimWords(shown, speech)],
  ];
  return lines(report.onReport, [whenWords(shown, speech), ...named.flatMap(([name, words]) => (words.length === 0 ? [] : [`${name}: ${words.join('; ')}`]))]);
}

function trialsOf(folded: FoldedSession, speech: Speech): SheetSection {
  const { report } = speech.words;
  const rows = rowsOf(folded).toReversed();
  if (rows.length === 0) return lines(report.trials, [report.noTrials]);
  const { trial, grip, throws, onTarget, spread, miss } = report.columns;
  return { title: report.trials, lines: [report.missIs], table: [[trial, grip, throws, onTarget, spread, miss], ...rows.map((row) => cellsOf(row, speech))] };
}

function cellsOf(row: TrialRow, speech: Speech): readonly string[] {
  const { trade, trials: { frame } } = speech.words;
  return [
    `${row.letter}, ${trade.intent[row.intent]}, ${trade.stage[row.stage]}`,
    trialWords(row, speech.words),
    `${row.throws.length - row.excluded}${row.excluded === 0 ? '' : `, ${frame.excluded(row.excluded)}`}`,
    onTargetWords(row.all.onTarget, speech),
    spreadWords(row.all.spread, speech),
    missMeanWords(row.all.meanMiss, speech),
  ];
}

function verdictsOf(comparisons: readonly OpenedComparison[], speech: Speech): SheetSection {
  const { report } = speech.words;
  if (comparisons.length === 0) return lines(report.verdicts, [report.noVerdicts]);
  return lines(report.verdicts, comparisons.map(({ entry, compared, taken }) => {
    const names = entryNames(entry);
    const because = [...becauseWords(compared, taken, names, false, speech).slice(0, 1), ...cautionWords(compared, taken, names, false, speech)];
    return [report.verdict(entry.k, names.b, names.a, verdictWords(compared.verdict, names, speech)), ...because].join(' ');
  }));
}

const lines = (title: string, words: readonly string[]): SheetSection => ({ title, lines: words, table: [] });
const said = (sections: readonly SheetSection[]): readonly SheetSection[] => sections.filter((section) => section.lines.length + section.table.length > 0);
