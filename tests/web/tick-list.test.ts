import { expect, test } from 'vitest';
import { evidenceOf } from '../../web/plan/evidence.ts';
import { ownReasons } from '../../web/plan/reason-words.ts';
import { tickList } from '../../web/observed/tick-list.ts';
import { speechIn } from '../../web/words/speech.ts';
import { liveMound, RIGHT_HANDER } from './invented-mound.ts';

const ENGLISH = speechIn('en', 'imperial');
const SESSION = `${RIGHT_HANDER.id}-today`;

test('a tick says what it moves, stands until it is taken back, and is a reason of its family on Plan', () => {
  const mound = liveMound().say({ kind: 'trial-begun', session: SESSION, intent: 'changeup', grip: null, cue: null, family: 'seam-effect' });
  const list = () => tickList(mound.view().session!, ENGLISH).map(({ words, seen, moves }) => [words, seen, moves]);
  expect(list()).toEqual([
    ['Wrist and forearm loose', false, 'moves no ranking'], ['Hand forced over', false, 'speaks against seam effect'],
    ['Slight cut', false, 'speaks for seam effect'], ['From straight behind the ball', false, 'speaks against seam effect'],
  ]);
  const tick = (seen: boolean) => mound.say({ kind: 'observation-ticked', session: SESSION, what: 'forced-turn', seen, place: null });
  const reasons = () => {
    const view = mound.view();
    const { advice } = evidenceOf(view, view.session!);
    return ownReasons(advice.ranking.find(({ family }) => family === 'seam-effect')!, advice, ENGLISH);
  };
  tick(true);
  expect(list()[1]![1]).toBe(true);
  expect(reasons()).toContainEqual({ weighs: 'against', words: 'the hand is forced over, the coach saw' });
  tick(false);
  expect(list()[1]![1]).toBe(false);
  expect(reasons().map(({ words }) => words)).not.toContain('the hand is forced over, the coach saw');
});

test('before a trial there is nothing to tick, and without a family nothing moves', () => {
  expect(tickList({ trial: null, observations: [] }, ENGLISH)).toEqual([]);
  expect(new Set(tickList(liveMound().view().session!, ENGLISH).map(({ moves }) => moves))).toEqual(new Set(['moves no ranking while the trial has no family']));
});
