import { describe, expect, it } from 'vitest';
import type { Family } from '../../../core/facts/vocabulary.ts';
import type { MoundView, SessionView } from '../../../core/facts/views.ts';
import { familyEvidence } from '../../../core/session/family-evidence.ts';
import { moundView } from '../../../core/session/view.ts';
import { inchesToM } from '../../../core/units/convert.ts';
import { Story } from './story.ts';

const FASTBALL = [92, 16, -6] as const;
const zone = { kind: 'ellipse', verticalM: inchesToM(-8), armSideM: inchesToM(6), verticalRadiusM: inchesToM(2), armSideRadiusM: inchesToM(2) } as const;

/** Five fastballs, then so many throws of a family that all separate alike: inches down and to the arm side. */
function evening(story: Story, session: string, family: Family, throws: number, [down, side]: readonly [number, number]): Story {
  story.open(session, 'ada').say({ kind: 'zone-set', session, zone, speedBand: null, reason: null }).intent(session, 'four-seam');
  for (let thrown = 0; thrown < 5; thrown += 1) story.throw(...FASTBALL);
  story.say({ kind: 'trial-begun', session, intent: family === 'split' ? 'split' : 'changeup', grip: null, cue: null, family });
  for (let thrown = 0; thrown < throws; thrown += 1) story.throw(82, 16 - down, -6 - side);
  return story;
}
const view = (story: Story): MoundView & { session: SessionView } => {
  const shown = moundView(story.ledger(), null);
  return { ...shown, session: shown.session! };
};

describe('what earlier days have shown of the families', () => {
  const story = evening(new Story(), 's1', 'turnover', 6, [8, 6]).say({ kind: 'comfort-said', session: 's1', comfortable: true, from: 'bench' }).say({ kind: 'session-closed', session: 's1' });
  evening(story, 's2', 'turnover', 4, [8, 14]).say({ kind: 'session-closed', session: 's2' });
  evening(story, 's3', 'split', 5, [8, 10]);

  it('is in the session of the next day: throws of all days together, means over all of them', () => {
    const { triedBefore } = view(story).session;
    expect(triedBefore.map(({ family, throws, comfortable }) => ({ family, throws, comfortable }))).toEqual([{ family: 'turnover', throws: 10, comfortable: true }]);
    // Six in the middle, an inch inside by the radius of two; four six inches beyond: three smallest differences.
    expect(triedBefore[0]!.meanMiss).toBeCloseTo((6 * -1 + 4 * 3) / 10, 3);
    expect(triedBefore[0]!.separation!.armSideM).toBeCloseTo(inchesToM((6 * 6 + 4 * 14) / 10), 3);
  });

  it('weighs in the ranking beside today, so that no day begins anew', () => {
    const shown = view(story);
    const { advice } = familyEvidence(shown, shown.session);
    expect(advice.wouldChange).toContainEqual({ code: 'try-it', family: 'turnover', throws: 5 });
    expect(advice.wouldChange).toContainEqual({ code: 'try-it', family: 'split', throws: 20 });
    const alone = familyEvidence(shown, { ...shown.session, triedBefore: [] }).advice;
    expect(alone.wouldChange).toContainEqual({ code: 'try-it', family: 'turnover', throws: 15 });
  });

  it('does not cross from one stage to another', () => {
    const indoors = evening(new Story(), 's1', 'turnover', 6, [8, 6]).say({ kind: 'session-closed', session: 's1' }).open('s2', 'ada')
      .say({ kind: 'stage-set', session: 's2', stage: 'flat-ground', distanceM: 18.4404, effort: 'firm' });
    expect(view(indoors).session.triedBefore).toEqual([]);
  });

  it('leaves out what was excluded, and another athlete', () => {
    const other = evening(new Story(), 's1', 'turnover', 6, [8, 6]);
    other.say({ kind: 'throws-excluded', session: 's1', places: [other.facts.length], reason: 'slipped' }).say({ kind: 'session-closed', session: 's1' });
    expect(view(other.open('s2', 'ada')).session.triedBefore).toMatchObject([{ throws: 5 }]);
    expect(view(other.open('s3', 'ben')).session.triedBefore).toEqual([]);
  });
});
