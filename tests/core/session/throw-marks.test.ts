import { expect, it } from 'vitest';
import { foldFact } from '../../../core/session/fold.ts';
import { emptyLedger } from '../../../core/session/ledger.ts';
import { throwMarks } from '../../../core/session/throw-marks.ts';
import { moundView } from '../../../core/session/view.ts';
import { busyDay } from '../../parity/sessions.ts';

it('a throw that is only a mark among many is marked as the view of it says', () => {
  const days = [1, 2, 3, 4].map((seed) => busyDay(seed, 'north-1', 'summary', 120));
  const kept = days.flatMap(({ facts, sessions }) => sessions.map((session) => ({ ledger: facts.reduce(foldFact, emptyLedger('north-1')), session })));
  const marked = kept.map(({ ledger, session }) => throwMarks(ledger, session));
  expect(marked).toEqual(kept.map(({ ledger, session }) => moundView(ledger, session, Infinity).throws.map(({ place, trial, fastball, miss, excluded, bookmarked }) => ({ place, trial, fastball, onTarget: miss?.onTarget ?? null, excluded: excluded !== null, bookmarked }))));
  const all = marked.flat();
  expect(all.some(({ onTarget }) => onTarget === true)).toBe(true);
  expect(all.some(({ onTarget, fastball }) => onTarget === false && !fastball)).toBe(true);
  expect(all.some(({ fastball }) => fastball)).toBe(true);
  expect(all.some(({ excluded }) => excluded)).toBe(true);
  expect(throwMarks(emptyLedger('north-1'), 's1')).toEqual([]);
});
