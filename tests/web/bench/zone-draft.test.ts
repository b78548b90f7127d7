import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { coachSaysSchema } from '../../../core/facts/coach.ts';
import { inchesToM, mphToMps } from '../../../core/units/convert.ts';
import { draftOf, sameTarget, STARTING_BAND, STARTING_ZONE, zoneFrom, type ZoneDraft } from '../../../web/bench/target/zone-draft.ts';

const TYPED: ZoneDraft = { below: '8', armSide: '-1.5', height: '6', width: '8', band: { least: '7', most: '12' } };

describe('a target zone in numbers', () => {
  test('is said as below the fastball, to arm side, height, width, and how much slower', () => {
    expect(draftOf(STARTING_ZONE, STARTING_BAND, 'imperial')).toEqual({ below: '8', armSide: '2', height: '6', width: '8', band: { least: '7', most: '12' } });
    expect(draftOf(STARTING_ZONE, null, 'metric')).toEqual({ below: '20.3', armSide: '5.1', height: '15.2', width: '20.3', band: null });
  });

  test('becomes a zone whose down is negative and a band whose slower is negative', () => {
    const set = zoneFrom(TYPED, 'imperial');
    expect(set).toEqual({
      zone: { kind: 'ellipse', verticalM: -inchesToM(8), armSideM: -inchesToM(1.5), verticalRadiusM: inchesToM(3), armSideRadiusM: inchesToM(4) },
      band: { lowMps: -mphToMps(12), highMps: -mphToMps(7) },
    });
  });

  test('takes a decimal comma, as it is typed in Spanish', () => {
    expect(zoneFrom({ ...TYPED, below: '8,5' }, 'imperial')).toMatchObject({ zone: { verticalM: -inchesToM(8.5) } });
  });

  test.each([
    ['below', { below: '' }], ['below', { below: '60' }], ['armSide', { armSide: 'wide' }], ['height', { height: '0' }], ['width', { width: '-3' }],
    ['least', { band: { least: '', most: '12' } }], ['most', { band: { least: '12', most: '7' } }], ['most', { band: { least: '7', most: '7' } }], ['most', { band: { least: '7', most: '900' } }],
  ] as const)('names %s as what is wrong', (wrong, part) => {
    expect(zoneFrom({ ...TYPED, ...part }, 'imperial')).toEqual({ wrong });
  });

  test('whatever is accepted may be said to the server', () => {
    const between = (min: number, max: number) => fc.oneof({ weight: 9, arbitrary: fc.integer({ min: min * 100, max: max * 100 }).map((hundredths) => String(hundredths / 100)) }, { weight: 1, arbitrary: fc.constantFrom('', 'x', '0', '-0', '59.05', '0.8') });
    const draft = fc.record({ below: between(-70, 70), armSide: between(-70, 70), height: between(-5, 90), width: between(-5, 90), band: fc.option(fc.record({ least: between(-15, 30), most: between(0, 60) })) });
    let accepted = 0;
    fc.assert(fc.property(draft, fc.constantFrom('imperial' as const, 'metric' as const), (typed, units) => {
      const set = zoneFrom(typed, units);
      if (!('zone' in set)) return;
      accepted += 1;
      expect(coachSaysSchema.safeParse({ kind: 'zone-set', session: 's', zone: set.zone, speedBand: set.band, reason: null }).error).toBeUndefined();
    }), { seed: 71, numRuns: 3000 });
    expect(accepted).toBeGreaterThan(100);
  });
});

describe('the answer to a target that was set here', () => {
  const set = { zone: STARTING_ZONE, band: STARTING_BAND };
  test('is known again although views are rounded', () => {
    const zone = { ...STARTING_ZONE, verticalM: Math.round(STARTING_ZONE.verticalM * 1e4) / 1e4 };
    expect(sameTarget(set, { zone, speedBand: { lowMps: STARTING_BAND.lowMps + 0.0005, highMps: STARTING_BAND.highMps } })).toBe(true);
  });
  test.each([
    ['no zone', { zone: null, speedBand: STARTING_BAND }],
    ['another place', { zone: { ...STARTING_ZONE, armSideM: STARTING_ZONE.armSideM + inchesToM(0.1) }, speedBand: STARTING_BAND }],
    ['no band', { zone: STARTING_ZONE, speedBand: null }],
    ['another band', { zone: STARTING_ZONE, speedBand: { ...STARTING_BAND, highMps: STARTING_BAND.highMps - mphToMps(0.1) } }],
  ])('is told from %s set at another tablet', (_, shown) => {
    expect(sameTarget(set, shown)).toBe(false);
  });
});
