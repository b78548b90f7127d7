import { describe, expect, it } from 'vitest';
import { feedbackNow, feedbackSource, type FeedbackThrow } from '../../../core/coaching/feedback.ts';
import type { FeedbackMode } from '../../../core/facts/feedback-says.ts';

const thrown = (...onTarget: readonly (boolean | null)[]): FeedbackThrow[] => onTarget.map((hit, index) => ({ place: 10 + index, onTarget: hit, guessed: false }));
const kindsOver = (mode: FeedbackMode, count: number): string[] => {
  const all = thrown(...Array.from({ length: count }, () => false));
  return all.map((_, index) => feedbackNow(mode, false, all.slice(0, index + 1)).kind);
};

describe('feedback to the athlete', () => {
  it('after every throw shows each one', () => {
    expect(feedbackNow({ kind: 'every-throw' }, false, thrown(true, false))).toEqual({ kind: 'full', place: 11, because: 'every-throw' });
  });

  it('outside the band speaks only off target; on target silence means good', () => {
    expect(feedbackNow({ kind: 'outside-band' }, false, thrown(false))).toMatchObject({ kind: 'full', because: 'outside-band' });
    expect(feedbackNow({ kind: 'outside-band' }, false, thrown(false, true))).toEqual({ kind: 'quiet-good', place: 11 });
  });

  it('is never silent about a throw that nothing could judge, because silence would mean good', () => {
    expect(feedbackNow({ kind: 'outside-band' }, false, thrown(null))).toMatchObject({ kind: 'full', because: 'not-judged' });
  });

  it('as a summary after three waits for two more, one more, and then says all three', () => {
    const mode = { kind: 'summary', after: 3 } as const;
    expect(feedbackNow(mode, false, thrown(true))).toEqual({ kind: 'waits', more: 2 });
    expect(feedbackNow(mode, false, thrown(true, false))).toEqual({ kind: 'waits', more: 1 });
    expect(feedbackNow(mode, false, thrown(true, false, null))).toEqual({ kind: 'summary', places: [10, 11, 12], onTarget: 1, judged: 2 });
    expect(feedbackNow(mode, false, thrown(true, false, true, true))).toEqual({ kind: 'waits', more: 2 });
  });

  it('fades: every throw of the first ten, every second of the next ten, every fourth from there', () => {
    const shown = kindsOver({ kind: 'fading' }, 40).map((kind) => kind === 'full');
    const share = (from: number, to: number): number => shown.slice(from, to).filter(Boolean).length / (to - from);
    expect([share(0, 10), share(10, 20), share(20, 40)]).toEqual([1, 0.5, 0.25]);
  });

  it('while it fades says how many more throws it takes, and keeps its word', () => {
    const all = thrown(...Array.from({ length: 60 }, () => true));
    const kindAfter = (count: number): string => feedbackNow({ kind: 'fading' }, false, all.slice(0, count)).kind;
    const waits = Array.from({ length: 50 }, (_, index) => ({ count: index + 1, now: feedbackNow({ kind: 'fading' }, false, all.slice(0, index + 1)) }));
    const kept = waits.flatMap(({ count, now }) => (now.kind === 'waits' ? [kindAfter(count + now.more)] : []));
    expect(kept).toHaveLength(5 + 23);
    expect(new Set(kept)).toEqual(new Set(['full']));
  });

  it('lets the athlete say first what the throw was, before anything is shown that is due', () => {
    const [one] = thrown(true);
    expect(feedbackNow({ kind: 'every-throw' }, true, [one!])).toEqual({ kind: 'ask-first', place: 10 });
    expect(feedbackNow({ kind: 'outside-band' }, true, [one!])).toEqual({ kind: 'ask-first', place: 10 });
    expect(feedbackNow({ kind: 'every-throw' }, true, [{ ...one!, guessed: true }]).kind).toBe('full');
    expect(feedbackNow({ kind: 'summary', after: 3 }, true, [one!])).toEqual({ kind: 'waits', more: 2 });
  });

  it('in a set without feedback shows nothing, whatever was thrown', () => {
    expect(feedbackNow({ kind: 'none' }, true, thrown(false, true))).toEqual({ kind: 'no-feedback' });
  });

  it('before the first throw has nothing to say', () => {
    expect(feedbackNow({ kind: 'every-throw' }, true, [])).toEqual({ kind: 'nothing-thrown' });
  });

  it('says where each way comes from, and how sure that is', () => {
    expect(feedbackSource({ kind: 'outside-band' })).toEqual({ source: 'sherwood-1988-cruz-2018', sure: 'plausible' });
    expect(feedbackSource({ kind: 'fading' })).toEqual({ source: 'schmidt-1989-winstein-1990', sure: 'old-small-tasks' });
    expect(feedbackSource({ kind: 'none' })).toEqual({ source: 'practice-is-not-learning', sure: 'agreed' });
  });
});
