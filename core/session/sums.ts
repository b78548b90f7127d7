import { FEEDBACK_LOOKS_AT } from '../coaching/feedback.ts';
import type { ThrowingDay } from '../facts/care-view.ts';
import { STAGES, type Stage } from '../facts/vocabulary.ts';
import type { FastballBaseline } from '../coaching/baseline.ts';
import { isFastball } from './fastballs.ts';
import { judged, ownBaselines, type JudgedThrow, type Judging } from './judged.ts';
import type { SessionEntry, Tags, ThrowEntry, Thrown } from './ledger.ts';
import { rememberedFold } from './remembered-fold.ts';
import { NO_STAGE, withFastballOf, withOther, type StageSums } from './stage-sums.ts';
import { withTags } from './throwing-days.ts';
import { wasQuiet, type Told } from './told.ts';
import { NO_WORK, withWorked, workKey, type WorkSums } from './work-sums.ts';

interface FeedbackSums {
  readonly count: number;
  /** The newest that feedback looks at, oldest first. */
  readonly newest: readonly { readonly place: number; readonly onTarget: boolean | null }[];
}

interface TrialCount {
  readonly thrown: number;
  readonly excluded: number;
}

/** What they are added up by. */
interface Rule {
  readonly judging: Judging;
  readonly newestBaselines: Readonly<Partial<Record<Stage, FastballBaseline>>>;
  readonly quiet: Told['quiet'];
  /** Where the feedback mode was chosen. */
  readonly sincePlace: number;
}

/** What all throws of a session add up to: as much as a view needs of those that it does not show. */
export interface Sums {
  readonly rule: Rule;
  readonly stages: Readonly<Partial<Record<Stage, StageSums>>>;
  readonly works: Readonly<Record<string, WorkSums>>;
  /** By letter, in all stages. */
  readonly trials: Readonly<Record<string, TrialCount>>;
  /** In the order in which they came. */
  readonly days: readonly ThrowingDay[];
  readonly feedback: FeedbackSums;
}

/** The sums over the throws of a session. */
export function sumsOf(session: SessionEntry, thrown: Thrown, judging: Judging): Sums {
  return folded(thrown, startOf(session, judging));
}

const folded = rememberedFold<Sums>((sums, entry) => {
  const { rule, works, feedback } = sums;
  const { judging, newestBaselines, quiet, sincePlace } = rule;
  const tags = entry.tags[judging.id]!;
  const { stage, trial } = tags;
  const thrown = judged(entry, judging);
  const before = sums.stages[stage] ?? NO_STAGE;
  const days = withTags(sums.days, tags);
  const trials = trial === null ? sums.trials : withTrial(sums.trials, trial, tags);
  if (isFastball(entry, judging)) {
    const stages = { ...sums.stages, [stage]: withFastballOf(before, entry, tags, thrown.analysed, judging, newestBaselines[stage]) };
    return { rule, stages, works, trials, days, feedback };
  }
  const key = workKey(stage, tags);
  return {
    rule,
    stages: { ...sums.stages, [stage]: withOther(before, entry, tags) },
    works: { ...works, [key]: withWorked(works[key] ?? NO_WORK, entry, tags, thrown, wasQuiet({ quiet }, entry.place)) },
    trials,
    days,
    feedback: tags.excluded === null && entry.place > sincePlace ? withShown(feedback, entry, thrown) : feedback,
  };
});

function withTrial(trials: Sums['trials'], letter: string, { excluded }: Tags): Sums['trials'] {
  const { thrown, excluded: out } = trials[letter] ?? { thrown: 0, excluded: 0 };
  return { ...trials, [letter]: { thrown: thrown + 1, excluded: out + (excluded === null ? 0 : 1) } };
}

function withShown({ count, newest }: FeedbackSums, { place }: ThrowEntry, { miss }: JudgedThrow): FeedbackSums {
  return { count: count + 1, newest: [...newest.slice(1 - FEEDBACK_LOOKS_AT), { place, onTarget: miss?.onTarget ?? null }] };
}

const starts = new WeakMap<Judging, Sums>();

/** The same object for the same rule, so that the fold is remembered. */
function startOf({ told }: SessionEntry, judging: Judging): Sums {
  const { quiet, feedback: { sincePlace } } = told;
  const known = starts.get(judging);
  if (known !== undefined && known.rule.quiet === quiet && known.rule.sincePlace === sincePlace) return known;
  const newestBaselines = Object.fromEntries(STAGES.map((stage) => [stage, ownBaselines(judging, stage).at(-1)]));
  const start: Sums = { rule: { judging, newestBaselines, quiet, sincePlace }, stages: {}, works: {}, trials: {}, days: [], feedback: { count: 0, newest: [] } };
  starts.set(judging, start);
  return start;
}
