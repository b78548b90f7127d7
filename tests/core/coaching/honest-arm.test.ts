import { describe, expect, it } from 'vitest';
import { honestArm, NO_BODIES, NO_FASTBALL_SPEEDS, withBody, withFastballSpeed, type BodyReadings } from '../../../core/coaching/honest-arm.ts';
import { inchesToM, mphToMps } from '../../../core/units/convert.ts';
import { seededNormal } from '../statistics/seeded-normals.ts';

const judge = (of: { readonly fastballs: readonly BodyReadings[]; readonly changeups: readonly BodyReadings[]; readonly fastballSpeedsMps: readonly number[] }) => honestArm({
  fastballs: of.fastballs.reduce(withBody, NO_BODIES),
  changeups: of.changeups.reduce(withBody, NO_BODIES),
  fastballSpeeds: of.fastballSpeedsMps.reduce(withFastballSpeed, NO_FASTBALL_SPEEDS),
});

const NOTHING: BodyReadings = { deliveryDurationS: null, armSpeedMps: null, releaseHeightM: null, releaseArmSideM: null, extensionM: null };
/** A fastball's release, give or take half an inch, and a fastball of 90 mph give or take a half. */
const body = (seed: number, count: number, change: Partial<Record<keyof BodyReadings, number>> = {}, known: readonly (keyof BodyReadings)[] = ['releaseHeightM', 'releaseArmSideM', 'extensionM']): BodyReadings[] => {
  const noise = seededNormal(seed);
  const usual = { deliveryDurationS: [1.2, 0.015], armSpeedMps: [36, 0.3], releaseHeightM: [1.8, 0.012], releaseArmSideM: [0.6, 0.012], extensionM: [1.9, 0.012] } as const;
  const one = (): BodyReadings => ({ ...NOTHING, ...Object.fromEntries(known.map((measure) => [measure, usual[measure][0] + (change[measure] ?? 0) + usual[measure][1] * noise()])) });
  return Array.from({ length: count }, one);
};
const speeds = (seed: number, first: number, later: number, count = 20): number[] => {
  const noise = seededNormal(seed);
  return Array.from({ length: count }, (_, index) => mphToMps((index < 5 ? first : later) + 0.4 * noise()));
};
const all = (change: Parameters<typeof body>[2], known?: Parameters<typeof body>[3]) =>
  judge({ fastballs: body(1, 20, {}, known), changeups: body(2, 20, change, known), fastballSpeedsMps: speeds(3, 90, 90) });
const wayOf = (found: ReturnType<typeof judge>, measure: string) => found.evidence.find((one) => one.measure === measure)?.way;

describe('whether the body slows down', () => {
  it('an arm that releases the changeup where it releases the fastball is honest, as far as a release can tell', () => {
    expect(all({})).toMatchObject({ kind: 'honest-arm', basis: 'release' });
  });

  it('a shorter extension is a body that slows', () => {
    const found = all({ extensionM: inchesToM(-5) });
    expect(found.kind).toBe('slowing');
    expect(wayOf(found, 'extensionM')).toBe('slowing');
  });

  it('a longer one is not', () => {
    const found = all({ extensionM: inchesToM(5) });
    expect([found.kind, wayOf(found, 'extensionM')]).toEqual(['honest-arm', 'other-way']);
  });

  it('a lower or wider release is another arm slot: no slowing, and no honest arm either', () => {
    for (const measure of ['releaseHeightM', 'releaseArmSideM'] as const) {
      const found = all({ [measure]: inchesToM(-5) });
      expect([found.kind, wayOf(found, measure)]).toEqual(['cannot-tell', 'moved']);
    }
  });

  it('a fastball that itself got slower is slowing, however alike the releases', () => {
    const found = judge({ fastballs: body(1, 20), changeups: body(2, 20), fastballSpeedsMps: speeds(3, 90, 86) });
    expect([found.kind, wayOf(found, 'fastballSpeedMps')]).toEqual(['slowing', 'slowing']);
  });

  it('a fastball that only looks slower, over too few throws to show it, keeps an arm from being called honest', () => {
    const found = judge({ fastballs: body(1, 20), changeups: body(2, 20), fastballSpeedsMps: speeds(3, 90, 88, 8) });
    expect([found.kind, wayOf(found, 'fastballSpeedMps')]).toEqual(['cannot-tell', 'cannot-tell']);
  });

  it('a timed delivery decides where there is one: longer is slowing, the same is honest', () => {
    const known = ['deliveryDurationS', 'releaseHeightM', 'releaseArmSideM', 'extensionM'] as const;
    expect(all({ deliveryDurationS: 0.12 }, known)).toMatchObject({ kind: 'slowing', basis: 'direct' });
    expect(all({ releaseHeightM: inchesToM(-5) }, known)).toMatchObject({ kind: 'honest-arm', basis: 'direct' });
  });

  it('so does the speed of the arm, in the other direction', () => {
    expect(all({ armSpeedMps: -3 }, ['armSpeedMps']).kind).toBe('slowing');
    expect(all({ armSpeedMps: 3 }, ['armSpeedMps'])).toMatchObject({ kind: 'honest-arm', evidence: [{ way: 'other-way' }, {}] });
  });

  it('cannot be told from four throws, from a device that sends nothing, or without height and side', () => {
    const few = judge({ fastballs: body(1, 20), changeups: body(2, 4, { extensionM: -1 }), fastballSpeedsMps: [] });
    expect(few).toMatchObject({ kind: 'cannot-tell', evidence: [{ interval: null }, { interval: null }, { interval: null }] });
    expect(judge({ fastballs: [NOTHING], changeups: [NOTHING], fastballSpeedsMps: [] })).toEqual({ kind: 'cannot-tell', basis: 'none', evidence: [] });
    expect(all({}, ['extensionM']).kind).toBe('cannot-tell');
  });

  it('cannot be told from readings that only repeat, which is a device that rounds', () => {
    const same = Array.from({ length: 8 }, () => ({ ...NOTHING, releaseHeightM: 1.8, releaseArmSideM: 0.6, extensionM: 1.9 }));
    expect(judge({ fastballs: same, changeups: same, fastballSpeedsMps: [] }).kind).toBe('cannot-tell');
  });

  it('seldom calls an honest arm slow, however often a coach looks', () => {
    const slow = Array.from({ length: 200 }, (_, run) => {
      const changeups = body(1000 + run, 30);
      const fastballs = body(5000 + run, 15);
      const looks = Array.from({ length: 26 }, (__, look) => judge({ fastballs, changeups: changeups.slice(0, 5 + look), fastballSpeedsMps: [] }).kind);
      return looks.includes('slowing');
    });
    expect(slow.filter(Boolean).length / slow.length).toBeLessThanOrEqual(0.05);
  });

  it('no more often where the changeup scatters three times as much, and lies just as far off as does not matter yet', () => {
    const slow = Array.from({ length: 200 }, (_, run) => {
      const fastballs = body(20_000 + run, 40, {}, ['extensionM']);
      const changeups = body(30_000 + run, 30, {}, ['extensionM']).map((one) => ({ ...one, extensionM: 1.9 - inchesToM(2) + 3 * (one.extensionM! - 1.9) }));
      return Array.from({ length: 26 }, (__, look) => judge({ fastballs, changeups: changeups.slice(0, 5 + look), fastballSpeedsMps: [] }).kind).includes('slowing');
    });
    expect(slow.filter(Boolean).length / slow.length).toBeLessThanOrEqual(0.03);
  });
});
