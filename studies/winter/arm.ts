import type { Athlete, TargetZone } from '../../core/facts/coach.ts';
import type { ThrowBody } from '../../core/facts/frames.ts';
import type { Family } from '../../core/facts/vocabulary.ts';

/** What an athlete is asked to throw: a family of changeup, held and thought of as the ideas say. */
export type Asked = { readonly kind: 'fastball' } | { readonly kind: 'changeup'; readonly family: Family; readonly ideas: readonly number[] };

/** An athlete as a coach meets one: somebody who throws what is asked for, before a device. */
export interface Arm {
  readonly profile: Athlete;
  readonly zone: TargetZone;
  /** Another day: rested, and not the same feel. */
  nextDay(): void;
  /** The device's frame; null when it lost the ball. */
  throws(asked: Asked): ThrowBody | null;
}
