import { expect, test } from 'vitest';
import { withinReach } from '../../core/coaching/within-reach.ts';
import { nearestSpin } from '../../core/flight/nearest-spin.ts';
import { reachRegion } from '../../core/flight/reach.ts';
import { sensitivities } from '../../core/flight/sensitivities.ts';
import { knownArm } from '../core/flight/arms.ts';
import { inchM } from '../core/flight/feet-and-miles.ts';
import { medianMs, report } from './measure.ts';

// A time, not a ratio, because a finger on the glass does not wait longer for a slow machine: one picture of sixty a second.
const FRAME_MS = 16;
const TIMES = 31;
const arm = knownArm();

test(`the region within reach follows a finger: it is drawn anew in under ${FRAME_MS} ms`, () => {
  let step = 0;
  const tookMs = medianMs(TIMES, () => {
    step += 1;
    const moved = { ...arm, spinRpm: { low: 1400, high: 2000 + step } };
    return () => {
      reachRegion(moved);
    };
  });
  report(`reach region: ${tookMs.toFixed(2)} ms of ${FRAME_MS}`);
  expect(tookMs).toBeLessThan(FRAME_MS);
});

test(`so does everything about a zone that a finger moves: region, nearest spin to its middle and edge, sensitivities, in under ${FRAME_MS} ms`, () => {
  let step = 0;
  const tookMs = medianMs(TIMES, () => {
    step += 1;
    const zone = { kind: 'ellipse', verticalM: -(10 + step / 4) * inchM, armSideM: (8 - step / 4) * inchM, verticalRadiusM: 2 * inchM, armSideRadiusM: 3 * inchM } as const;
    return () => {
      reachRegion(arm);
      withinReach(arm, zone);
      sensitivities(arm, nearestSpin(arm, zone)!.thrown);
    };
  });
  report(`reach region, nearest spin to a zone and sensitivities: ${tookMs.toFixed(2)} ms of ${FRAME_MS}`);
  expect(tookMs).toBeLessThan(FRAME_MS);
});
