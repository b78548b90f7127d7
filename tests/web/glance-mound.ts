import type { FeedbackMode } from '../../core/facts/feedback-says.ts';
import { FASTBALLS, InventedMound, RIGHT_HANDER, type InventedThrow } from './invented-mound.ts';

export const session = `${RIGHT_HANDER.id}-today`;
export const ON_TARGET: InventedThrow = [7.2, 14.0, 82.8];
export const SHORT: InventedThrow = [12.6, 8.2, 85.7];
const ZONE = { kind: 'ellipse', verticalM: -0.235, armSideM: 0.165, verticalRadiusM: 0.065, armSideRadiusM: 0.06 } as const;

/** A mound with a baseline and a zone, on which the coach has chosen the feedback and changeups are next. */
export function moundWith(mode: FeedbackMode, askFirst = false): InventedMound {
  return new InventedMound().open(RIGHT_HANDER)
    .say({ kind: 'intent-set', session, intent: 'four-seam' }).throws(...FASTBALLS)
    .say({ kind: 'zone-set', session, zone: ZONE, speedBand: null, reason: null })
    .say({ kind: 'feedback-set', session, mode, askFirst })
    .say({ kind: 'intent-set', session, intent: 'changeup' });
}
