import { describe, expect, it } from 'vitest';
import { impossibility } from '../../../core/facts/bounds.ts';
import { deviceFrameSchema, type ThrowBody } from '../../../core/facts/frames.ts';

const units = { distance: 'ft', speed: 'mph', movement: 'in' } as const;
const mound = { stage: 'mound', distanceM: 18.4404 } as const;
const good: ThrowBody = { constant: { start: [-1.5, 50, 5.8], velocity: [6, -125, -5], acceleration: [-10, 26, -18], distance: 50 } };

function changed(change: Partial<NonNullable<ThrowBody['constant']>>): ThrowBody {
  return { constant: { ...good.constant!, ...change } };
}

describe('an impossible throw', () => {
  it.each([
    ['a throw of 400 mph', { summary: { releaseSpeed: 400 } }, 'body.summary.releaseSpeed'],
    ['a release behind the plate', changed({ start: [-1.5, -2, 5.8] }), 'body.constant.start'],
    ['a release behind the thrower', changed({ start: [-1.5, 90, 5.8] }), 'body.constant.start'],
    ['a ball that flies away', changed({ velocity: [6, 125, -5] }), 'body.constant.velocity.1'],
    ['a push that air cannot give', changed({ acceleration: [300, 0, 0] }), 'body.constant.acceleration'],
    ['a ball that speeds up in the air', { summary: { releaseSpeed: 90, plateSpeed: 95 } }, 'body.summary.plateSpeed'],
    ['more spin than a hand can give', { ...good, spin: { rate: 9000 } }, 'body.spin.rate'],
  ] as const)('is %s', (_, body, path) => {
    const found = impossibility(body as ThrowBody, units, mound);
    expect(found?.path).toBe(path);
    expect(found?.sentence).toMatch(/\w+ \w+ \w+/);
  });

  it('is none of what people throw', () => {
    expect(impossibility(good, units, mound)).toBeNull();
    expect(impossibility({ summary: { releaseSpeed: 18 } }, units, { stage: 'catch-play', distanceM: 15 })).toBeNull();
  });

  it('is on the mound what catch play allows', () => {
    const soft: ThrowBody = { summary: { releaseSpeed: 18 } };
    expect(impossibility(soft, units, mound)?.path).toBe('body.summary.releaseSpeed');
    expect(impossibility(soft, units, null)).toBeNull();
  });
});

describe('a frame', () => {
  const frame = { kind: 'throw', sequence: 1, time: 0 };
  it('carries exactly one shape', () => {
    expect(deviceFrameSchema.safeParse({ ...frame, body: good }).success).toBe(true);
    expect(deviceFrameSchema.safeParse({ ...frame, body: {} }).success).toBe(false);
    expect(deviceFrameSchema.safeParse({ ...frame, body: { ...good, summary: { releaseSpeed: 80 } } }).success).toBe(false);
  });
  it('with a field that nobody knows is refused, so that a misspelling is not lost', () => {
    expect(deviceFrameSchema.safeParse({ ...frame, body: { ...good, extention: 6 } }).success).toBe(false);
  });
  it('whose path does not rise in time is refused at the path', () => {
    const path = Array.from({ length: 60 }, (_, i) => [i === 30 ? 0 : i / 100, 0, 50 - i / 2, 5]);
    const parsed = deviceFrameSchema.safeParse({ ...frame, body: { path } });
    expect(parsed.error?.issues[0]?.path).toEqual(['body', 'path']);
  });
});
