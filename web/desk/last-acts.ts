import { createEffect, createSignal, type Accessor } from 'solid-js';
import type { CoachSays } from '../../core/facts/coach.ts';
import type { MoundView } from '../../core/facts/views.ts';
import { takeBack, type TakeBack } from '../../core/session/take-back.ts';
import { touched } from '../../core/session/touched.ts';
import { nowMs } from '../live/clock.ts';
import { keptActs, keepActs } from './kept-acts.ts';

/** How many acts of this desk can be taken back. */
export const ACTS_KEPT = 10;

/** Something that was said at this desk and is on disk. */
export interface Act {
  /** Where the log holds it. */
  readonly place: number;
  readonly atMs: number;
  readonly says: CoachSays;
  /** The session that was shown when it was said, whose it was, and the numbers of the throws it speaks of; where there are more than a view lists, only how many. */
  readonly session: string | null;
  readonly athlete: string | null;
  readonly numbers: readonly number[];
  readonly count: number;
  /** `too-quick`: said before the view held what this desk had said before it, so nobody knows what stood before. */
  readonly taking: TakeBack | { readonly kind: 'never'; readonly because: 'too-quick' };
  /** What it speaks of, as it stood once the view held it; null until then. */
  readonly after: string | null;
  readonly undoneAtMs: number | null;
}

/** Whether an act can be taken back now; `changed`: somebody has said something else of it since, and that is left alone. */
type Undoing = 'can' | 'undone' | 'never' | 'coming' | 'elsewhere' | 'changed';

export interface LastActs {
  /** The newest first. */
  readonly acts: Accessor<readonly Act[]>;
  readonly undoing: (act: Act) => Undoing;
  /** Says what stood before. */
  readonly undo: (act: Act) => Promise<void>;
  readonly noted: (says: CoachSays, before: MoundView | null, place: number) => void;
}

/** @param say says one thing; null when it was refused */
export function createLastActs(mound: string, view: Accessor<MoundView>, say: (says: CoachSays) => Promise<number | null>): LastActs {
  const [acts, setActs] = createSignal(keptActs<Act>(mound));
  const change = (place: number, part: Partial<Act>): void => { setActs((before) => before.map((act) => (act.place === place ? { ...act, ...part } : act))); };
  createEffect(() => keepActs(mound, acts()));
  createEffect(() => {
    const now = view();
    for (const { place, after, says } of acts()) if (after === null && now.place >= place) change(place, { after: touched(says, now) ?? '' });
  });

  const undoing = (act: Act): Undoing => {
    if (act.undoneAtMs !== null) return 'undone';
    if (act.taking.kind === 'never') return 'never';
    if (!OF_THE_MOUND.has(act.says.kind) && view().session?.id !== act.session) return 'elsewhere';
    if (act.after === null) return 'coming';
    return touched(act.says, view()) === act.after ? 'can' : 'changed';
  };
  return {
    acts, undoing,
    noted: (says, before, place) => { setActs((earlier) => [actOf(says, before, view(), place), ...earlier].slice(0, ACTS_KEPT)); },
    async undo(act) {
      if (undoing(act) !== 'can' || act.taking.kind === 'never') return;
      // oxlint-disable-next-line no-await-in-loop -- each is said once the one before it is on disk
      for (const says of act.taking.says) if ((await say(says)) === null) return;
      change(act.place, { undoneAtMs: nowMs() });
    },
  };
}

/** What holds for the mound, whoever is shown. */
const OF_THE_MOUND: ReadonlySet<CoachSays['kind']> = new Set(['mound-passed', 'air-set']);

function actOf(says: CoachSays, before: MoundView | null, now: MoundView, place: number): Act {
  const { session, throws, unclaimedCount } = before ?? now;
  const spoken = 'places' in says ? says.places : 'place' in says && says.place !== null ? [says.place] : [];
  const numbers = throws.flatMap((thrown) => (spoken.includes(thrown.place) ? [thrown.number] : []));
  const count = says.kind === 'throws-claimed' ? unclaimedCount : spoken.length;
  return {
    place, says, numbers, count, atMs: nowMs(), session: session?.id ?? null, athlete: session?.athlete.name ?? null, after: null, undoneAtMs: null,
    taking: before === null ? { kind: 'never', because: 'too-quick' } : takeBack(says, before, place),
  };
}
