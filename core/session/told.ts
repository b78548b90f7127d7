import type { ArmAnswer, ArmReport, ThrowingDay } from '../facts/care-view.ts';
import type { CoachSays } from '../facts/coach.ts';
import type { Fact } from '../facts/fact.ts';
import type { FeedbackMode, ThrowGuess } from '../facts/feedback-says.ts';
import type { Stage } from '../facts/vocabulary.ts';
import { dayIn } from './local-day.ts';

/** What an athlete brings to the next session besides fastballs and target: what the arm has done, and what was said about it. */
export interface ArmBrought {
  /** From throws that the ledger no longer holds. */
  readonly days: readonly ThrowingDay[];
  readonly pain: ArmReport | null;
  readonly soreness: ArmReport | null;
  /** When pain was last answered for. */
  readonly answeredAtMs: number | null;
}
export const NOTHING_BROUGHT: ArmBrought = { days: [], pain: null, soreness: null, answeredAtMs: null };

type ArmStanding = Pick<ArmBrought, 'pain' | 'soreness' | 'answeredAtMs'>;

/** What stands when two mounds have heard of one arm: the later report, unless pain was answered for after it. */
export function armTogether(here: ArmStanding, elsewhere: ArmStanding): ArmStanding {
  const answeredAtMs = later(here.answeredAtMs, elsewhere.answeredAtMs);
  const pain = laterReport(here.pain, elsewhere.pain);
  return { pain: pain !== null && pain.atMs > (answeredAtMs ?? -Infinity) ? pain : null, soreness: laterReport(here.soreness, elsewhere.soreness), answeredAtMs };
}

function later(a: number | null, b: number | null): number | null {
  return a === null || b === null ? (a ?? b) : Math.max(a, b);
}

function laterReport(a: ArmReport | null, b: ArmReport | null): ArmReport | null {
  return a === null || b === null ? (a ?? b) : a.atMs >= b.atMs ? a : b;
}

/** What coach and athlete have told about arm, comfort and feedback in one session. */
export interface Told {
  /** The athlete's days before this session, as they were known when it opened. */
  readonly before: readonly ThrowingDay[];
  readonly pain: ArmReport | null;
  readonly soreness: ArmReport | null;
  readonly answeredAtMs: number | null;
  readonly lastReport: { readonly report: ArmReport; readonly place: number } | null;
  readonly lastAnswer: ArmAnswer | null;
  readonly comfort: readonly { readonly stage: Stage; readonly trial: string | null; readonly comfortable: boolean; readonly atMs: number }[];
  readonly feedback: { readonly mode: FeedbackMode; readonly askFirst: boolean; readonly sincePlace: number };
  /** Where in the log feedback was off, oldest first; the last one may go on. */
  readonly quiet: readonly { readonly since: number; readonly until: number | null }[];
  /** By the place of the throw. */
  readonly guesses: Readonly<Record<number, ThrowGuess>>;
}

export type ToldSays = Extract<CoachSays, { kind: 'arm-reported' | 'pain-answered' | 'comfort-said' | 'feedback-set' | 'throw-guessed' }>;

export function toldAtOpening(before: readonly ThrowingDay[], standing: ArmStanding): Told {
  const { pain, soreness, answeredAtMs } = standing;
  return { before, pain, soreness, answeredAtMs, lastReport: null, lastAnswer: null, comfort: [], feedback: { mode: { kind: 'every-throw' }, askFirst: false, sincePlace: 0 }, quiet: [], guesses: {} };
}

/** What of a session the statements refer to. */
interface Present {
  readonly told: Told;
  readonly timeZone: string;
  readonly stage: Stage;
  readonly trial: string | null;
}

export function toldAfter({ told, timeZone, stage, trial }: Present, fact: Fact, said: ToldSays): Told {
  switch (said.kind) {
    case 'arm-reported': return reported(told, fact.place, { atMs: fact.atMs, day: dayIn(timeZone, fact.atMs), from: said.from, said: said.said, areas: said.areas });
    case 'pain-answered': return { ...told, pain: null, answeredAtMs: fact.atMs, lastAnswer: { atMs: fact.atMs, answer: said.answer, words: said.words } };
    case 'comfort-said': return { ...told, comfort: [...told.comfort, { stage, trial, comfortable: said.comfortable, atMs: fact.atMs }] };
    case 'feedback-set': return { ...told, feedback: { mode: said.mode, askFirst: said.askFirst, sincePlace: fact.place }, quiet: quietAfter(told.quiet, said.mode.kind === 'none', fact.place) };
    case 'throw-guessed': return { ...told, guesses: { ...told.guesses, [said.place]: { went: said.went, moved: said.moved } } };
  }
}

function quietAfter(before: Told['quiet'], off: boolean, place: number): Told['quiet'] {
  const last = before.at(-1);
  const isOff = last !== undefined && last.until === null;
  if (isOff === off) return before;
  return off ? [...before, { since: place, until: null }] : [...before.slice(0, -1), { since: last!.since, until: place }];
}

/** Whether feedback was off when a throw came. */
export function wasQuiet({ quiet }: Pick<Told, 'quiet'>, place: number): boolean {
  return quiet.some(({ since, until }) => place > since && (until === null || place < until));
}

/** "Nothing to report" takes back neither pain nor soreness: only an answer of its own does. */
function reported(told: Told, place: number, report: ArmReport): Told {
  const lastReport = { report, place };
  switch (report.said) {
    case 'pain':
    case 'numb': return { ...told, pain: report, lastReport };
    case 'sore': return { ...told, soreness: report, lastReport };
    case 'tired':
    case 'nothing': return { ...told, lastReport };
  }
}
