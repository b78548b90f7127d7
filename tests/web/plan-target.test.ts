import { describe, expect, test } from 'vitest';
import { coachSaysSchema } from '../../core/facts/coach.ts';
import type { BaselineView, MoundView } from '../../core/facts/views.ts';
import { reachRegion } from '../../core/flight/reach.ts';
import { inchesToM, mphToMps, mpsToMph, mToInches } from '../../core/units/convert.ts';
import { LONGEST_REASON, reasonFor } from '../../web/plan/planned-target.ts';
import { leftOverWords, nearestWords, stepRows, targetReasons, tiltOf, wayWords } from '../../web/plan/takes-words.ts';
import { proposalFor, zoneTakes } from '../../web/plan/within-arm.ts';
import { armToPlan } from '../../web/reach/arm-to-plan.ts';
import { assumedWords } from '../../web/reach/assumed-words.ts';
import { movementText } from '../../web/words/numbers.ts';
import { bandWords } from '../../web/words/target-words.ts';
import { speechIn } from '../../web/words/speech.ts';
import { InventedMound, LEFT_HANDER, liveMound, RIGHT_HANDER } from './invented-mound.ts';

const ENGLISH = speechIn('en', 'imperial');
const METRIC = speechIn('es', 'metric');

const planned = (view: MoundView, family: 'turnover' | 'seam-effect' | 'split' = 'turnover') => {
  const session = view.session!;
  const baseline = session.baseline as BaselineView;
  const own = armToPlan(view, session, baseline, family);
  const proposal = proposalFor(family, session, baseline, reachRegion(own.arm));
  return { own, proposal, baseline, takes: zoneTakes(own.arm, proposal.zone)! };
};
const right = planned(liveMound().view());
const far = zoneTakes(right.own.arm, { kind: 'ellipse', verticalM: inchesToM(-16), armSideM: inchesToM(-3), verticalRadiusM: inchesToM(2), armSideRadiusM: inchesToM(2) })!;

describe('what a target would take', () => {
  test('spin alone gets into the turnover that is proposed, because it is drawn into reach', () => {
    expect(leftOverWords(right.takes, true, ENGLISH)).toEqual([`Spin alone gets into the zone, ± ${movementText(right.takes.doubtM, ENGLISH, 1)} by the published lift laws.`]);
    expect(targetReasons(right.proposal, ENGLISH)[0]).toBe('A changeup of this family usually moves 6 in up and 14 in to arm side (from memory); the fastball does the rest.');
  });

  test('a target that spin does not reach says by how much, and to a device that cannot see it that nobody will know', () => {
    const { verticalM, armSideM } = far.toZone.leftOver;
    expect(Math.hypot(verticalM, armSideM)).toBeGreaterThan(inchesToM(0.1));
    expect(leftOverWords(far, true, ENGLISH)).toEqual([`Spin alone falls short by ${wayWords({ verticalM, armSideM }, ENGLISH)}, ± ${movementText(far.doubtM, ENGLISH, 1)} by the published lift laws: a seam effect would have to add that.`]);
    expect(leftOverWords(far, false, ENGLISH)[1]).toBe('Whether it does is not visible to this device.');
  });

  test('how far the published lift laws are apart there stands beside it: eight to twelve per cent of what the spin does', () => {
    const { separation } = right.takes.toZone;
    const movedM = Math.hypot(right.baseline.verticalM + separation.verticalM, right.baseline.armSideM + separation.armSideM);
    expect(right.takes.doubtM / movedM).toBeGreaterThan(0.05);
    expect(right.takes.doubtM / movedM).toBeLessThan(0.25);
  });

  test('a left-hander’s tilt is that of his own clock: the mirror of a right-hander’s', () => {
    const left = planned(liveMound(LEFT_HANDER, new InventedMound()).view());
    const hour = (tilt: string): number => Number(tilt.split(':')[0]);
    expect(hour(nearestWords(right.takes, 'right', right.baseline.speedMps, ENGLISH).tilt)).toBeLessThan(6);
    expect(hour(nearestWords(left.takes, 'left', left.baseline.speedMps, ENGLISH).tilt)).toBeGreaterThan(6);
    expect([tiltOf(Math.PI / 4, 'right'), tiltOf(Math.PI / 4, 'left')]).toEqual(['1:30', '10:30']);
  });

  test('one step of each thing is said in inches to a right-hander, in centimetres to a left-hander whose clock turns the other way', () => {
    const { perTenDegrees, perHundredRpm, perMph } = right.takes.steps;
    const [tilt, spin, pace, efficiency] = stepRows(right.takes, 'right', ENGLISH);
    expect(tilt).toEqual({ step: 'tilt 10° clockwise', vertical: wayWords({ ...perTenDegrees, armSideM: 0 }, ENGLISH), side: wayWords({ ...perTenDegrees, verticalM: 0 }, ENGLISH) });
    expect(perTenDegrees.verticalM).toBeLessThan(0);
    expect(tilt!.vertical).toMatch(/^\d\.\d in down$/);
    // By hand: turned by 10°, a ball that moves so far moves about that angle times as much across.
    const { separation } = right.takes.toCentre;
    const movedM = Math.hypot(right.baseline.verticalM + separation.verticalM, right.baseline.armSideM + separation.armSideM);
    const share = Math.hypot(perTenDegrees.verticalM, perTenDegrees.armSideM) / (movedM * (Math.PI / 18));
    expect(Math.abs(share - 1)).toBeLessThan(0.1);
    expect(spin!.step).toBe('spin +100 rpm');
    expect(perHundredRpm.armSideM).toBeGreaterThan(0);
    expect([pace!.step, efficiency!.step]).toEqual(['pace +1 mph', 'efficiency +5 points']);
    const metric = stepRows(right.takes, 'left', METRIC);
    expect([metric[0]!.step, metric[2]!.step]).toEqual(['eje 10° contra el reloj', 'ritmo +2 km/h']);
    // 1 mph is 1.609 km/h, so two of them move 1.243 times as much.
    expect(metric[2]!.side).toBe(wayWords({ verticalM: 0, armSideM: (perMph.armSideM * 2) / 1.609344 }, METRIC));
    expect(metric[0]!.vertical).toMatch(/cm abajo$/);
  });

  test('the arm has the speeds that were thrown, but every efficiency a grip can bring about', () => {
    expect(right.own.arm.efficiency).toEqual({ low: 0.6, high: 1 });
    expect(mpsToMph(right.own.arm.speedMps.low)).toBeGreaterThan(80);
    expect(mpsToMph(right.own.arm.speedMps.high)).toBeLessThan(88);
    const none = planned(new InventedMound().open(RIGHT_HANDER).say({ kind: 'intent-set', session: `${RIGHT_HANDER.id}-today`, intent: 'four-seam' }).throws([16, 7, 92], [16.2, 7.1, 92.4], [15.8, 6.9, 91.6], [16.1, 7.2, 92.2], [15.9, 6.8, 91.8]).view());
    expect(assumedWords(none.own.assumed, ENGLISH)).toContain('changeup speed');
    expect(assumedWords([], ENGLISH)).toBeNull();
  });

  test('thin air on the mound lets a ball move less', () => {
    const air = { where: 'outdoors', temperatureC: 25, relativeHumidity: 0.3, wind: null } as const;
    const mound = liveMound();
    const low = planned(mound.say({ kind: 'air-set', air: { ...air, height: { kind: 'altitude', altitudeM: 0 } } }).view());
    const high = planned(mound.say({ kind: 'air-set', air: { ...air, height: { kind: 'altitude', altitudeM: 1600 } } }).view());
    expect(Math.abs(high.takes.steps.perTenDegrees.verticalM)).toBeLessThan(Math.abs(low.takes.steps.perTenDegrees.verticalM));
  });
});

describe('a target in words', () => {
  test('its band is slower from the least to the most', () => {
    expect(bandWords({ lowMps: -mphToMps(12), highMps: -mphToMps(7) }, ENGLISH)).toBe('7 to 12 mph slower');
    expect(bandWords(null, ENGLISH)).toBe('no speed band');
    expect(bandWords({ lowMps: -mphToMps(12), highMps: mphToMps(1) }, ENGLISH)).toBe('−1 to 12 mph slower');
  });

  test('a way leaves out what is nothing', () => {
    expect(wayWords({ verticalM: inchesToM(-3.12), armSideM: inchesToM(0.02) }, ENGLISH)).toBe('3.1 in down');
    expect(wayWords({ verticalM: 0, armSideM: inchesToM(-1) }, ENGLISH)).toBe('1.0 in glove side');
    expect(wayWords({ verticalM: 0, armSideM: 0 }, ENGLISH)).toBe('0.0 in');
  });

  test('its reason names the family and whether a hand moved it, and fits the fact', () => {
    expect(reasonFor({ origin: 'proposed' }, 'turnover', ENGLISH)).toBe('Turnover, as proposed by Plan');
    expect(reasonFor({ origin: 'moved' }, 'seam-effect', METRIC)).toBe('Efecto de costuras, movido a mano en Plan');
    expect(LONGEST_REASON).toBe(200);
    const said = (letters: number) => ({ kind: 'zone-set', session: 's', zone: right.proposal.zone, speedBand: null, reason: 'x'.repeat(letters) });
    expect(coachSaysSchema.safeParse(said(LONGEST_REASON)).error).toBeUndefined();
    expect(coachSaysSchema.safeParse(said(LONGEST_REASON + 1)).success).toBe(false);
  });

  test('of a split is left to the grip where spin alone does not get there', () => {
    const split = planned(liveMound().view(), 'split');
    expect(mToInches(split.proposal.zone.verticalM)).toBeLessThan(mToInches(right.proposal.zone.verticalM));
    expect(targetReasons(split.proposal, ENGLISH).join(' ')).toMatch(/Leaves [\d.]+ in .* to the grip\./);
  });
});
