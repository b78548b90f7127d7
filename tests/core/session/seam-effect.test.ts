import { describe, expect, it } from 'vitest';
import type { MoundAir } from '../../../core/facts/air-says.ts';
import type { Source } from '../../../core/facts/fact.ts';
import type { SeamEffectView } from '../../../core/facts/views.ts';
import { moundView } from '../../../core/session/view.ts';
import { mToInches } from '../../../core/units/convert.ts';
import { bodyOf, type FlownWith } from './flown-body.ts';
import { Story } from './story.ts';

const INDOORS: MoundAir = { where: 'indoors', temperatureC: 20, relativeHumidity: 0.5, height: { kind: 'pressure', pressurePa: 101_325 }, wind: null };
const OUTDOORS: MoundAir = { ...INDOORS, where: 'outdoors' };
/** Pushes of the seams to the arm side and down, each a little different: about 3.7 in across the spin. */
const PUSHED: readonly FlownWith[] = [0.95, 1.05, 1, 0.9, 1.1, 1, 0.97, 1.03].map((share) => ({ seam: { armSide: 0.022 * share, up: -0.034 * share }, tiltMoreDeg: 20 * (share - 1) }));
const PLAIN: readonly FlownWith[] = PUSHED.map(({ tiltMoreDeg }, index) => ({ seam: { armSide: 0.002 * (index % 3), up: 0.001 * (index % 2) }, tiltMoreDeg: tiltMoreDeg ?? 0 }));

function trial(thrown: readonly FlownWith[], air: MoundAir | null = INDOORS, source: Partial<Source> = {}, hand: 'right' | 'left' = 'right'): Story {
  const story = new Story();
  if (air !== null) story.say({ kind: 'air-set', air });
  story.open('s1', 'ada', hand).say({ kind: 'trial-begun', session: 's1', intent: 'changeup', grip: null, cue: null });
  for (const flown of thrown) story.measuredBy(bodyOf(hand, flown), source);
  return story;
}
const effectOf = (story: Story): SeamEffectView => moundView(story.ledger(), null).session!.trials[0]!.seamEffect;
function weighed(effect: SeamEffectView): Extract<SeamEffectView, { meanM: number }> {
  if (!('meanM' in effect)) throw new Error(`the seam effect is ${effect.kind}`);
  return effect;
}

describe('the seam effect of a trial', () => {
  it.each(['right', 'left'] as const)('is seen where the seams push a %s-hander’s throws beyond all that axis and wind may do', (hand) => {
    const effect = weighed(effectOf(trial(PUSHED, INDOORS, {}, hand)));
    expect(effect).toMatchObject({ kind: 'seen', count: 8 });
    expect(mToInches(effect.meanM)).toBeGreaterThan(3);
    expect(effect.lowM).toBeGreaterThan(effect.boundM);
  });

  it('is not seen in throws that fly by their spin', () => {
    expect(effectOf(trial(PLAIN)).kind).toBe('not-seen');
  });

  it('has a bound of two inches, the axis’s bias over the movement, and an inch for the wind where there may be one', () => {
    const bound = (air: MoundAir | null, source: Partial<Source> = {}): number => mToInches(weighed(effectOf(trial(PUSHED, air, source))).boundM);
    const withBias = (axisBias: number): Partial<Source> => ({ standardErrors: { axisBias } });
    expect(bound(INDOORS, withBias(0))).toBeCloseTo(2, 2);
    expect(bound(INDOORS, withBias(3))).toBeCloseTo(bound(INDOORS), 6);
    expect(bound(INDOORS)).toBeGreaterThan(2.6);
    expect(bound(INDOORS)).toBeLessThan(3);
    expect(bound(OUTDOORS) - bound(INDOORS)).toBeCloseTo(1, 2);
    expect(bound(null)).toBeCloseTo(bound(OUTDOORS), 2);
    expect(bound({ ...OUTDOORS, wind: { towardsPlateMps: 0, towardsRightMps: 0 } }) - bound(INDOORS)).toBeCloseTo(0.5, 2);
  });

  it('leaves excluded throws out, and counts them again when they are restored', () => {
    const story = trial(PUSHED);
    const places = moundView(story.ledger(), null).throws.slice(0, 3).map(({ place }) => place);
    story.say({ kind: 'throws-excluded', session: 's1', places, reason: 'wet ball' });
    expect(weighed(effectOf(story)).count).toBe(5);
    story.say({ kind: 'throws-restored', session: 's1', places });
    expect(weighed(effectOf(story)).count).toBe(8);
  });

  it('is too little to tell from four throws', () => {
    expect(effectOf(trial(PUSHED.slice(0, 4)))).toEqual({ kind: 'too-few', count: 4, need: 5 });
    expect(effectOf(trial([]))).toEqual({ kind: 'too-few', count: 0, need: 5 });
  });

  it('is not visible before the first throw of a trial either, where the session’s last throw came from a device that cannot show it', () => {
    const fastballs = new Story().open('s1', 'ada').intent('s1', 'four-seam');
    fastballs.measuredBy(bodyOf('right', PLAIN[0]!), { sight: 'spin-only' });
    fastballs.say({ kind: 'trial-begun', session: 's1', intent: 'changeup', grip: null, cue: null });
    expect(effectOf(fastballs)).toEqual({ kind: 'not-visible', reason: 'spin-only' });
  });

  it('does not cross stages', () => {
    const story = trial(PUSHED).say({ kind: 'stage-set', session: 's1', stage: 'flat-ground', distanceM: 18.4404, effort: 'full' });
    expect(effectOf(story)).toEqual({ kind: 'too-few', count: 0, need: 5 });
  });

  it('is not visible to a device that sees only spin, infers its axis or knows none', () => {
    expect(effectOf(trial(PUSHED, INDOORS, { sight: 'spin-only' }))).toEqual({ kind: 'not-visible', reason: 'spin-only' });
    expect(effectOf(trial(PUSHED, INDOORS, { axis: 'inferred' }))).toEqual({ kind: 'not-visible', reason: 'axis-inferred' });
    expect(effectOf(trial(PUSHED, INDOORS, { axis: 'none' }))).toEqual({ kind: 'not-visible', reason: 'no-axis' });
  });
});
