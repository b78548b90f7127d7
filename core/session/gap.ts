import { gapBetween } from '../coaching/gap.ts';
import type { GapView, Missing } from '../facts/views.ts';
import type { ConstantAcceleration } from '../flight/constant-acceleration.ts';

type KnownPath = ConstantAcceleration | Missing;

/** The gap of a throw, with the fastball path it was told against: views are made anew at every throw, fastballs seldom change. */
const remembered = new WeakMap<ConstantAcceleration, { readonly fastball: ConstantAcceleration; readonly gap: GapView | Missing }>();

/** What the batter has of a throw against a fastball baseline; what either lacks stays lacking, with its reason. */
export function gapOf(thrown: KnownPath, fastball: KnownPath): GapView | Missing {
  if (typeof thrown === 'string') return thrown;
  if (typeof fastball === 'string') return fastball;
  const known = remembered.get(thrown);
  if (known !== undefined && alike(known.fastball, fastball)) return known.gap;
  const gap = gapBetween(thrown, fastball);
  remembered.set(thrown, { fastball, gap });
  return gap;
}

function alike(one: ConstantAcceleration, other: ConstantAcceleration): boolean {
  return one === other || [0, 1, 2].every((axis) =>
    one.positionM[axis] === other.positionM[axis] && one.velocityMps[axis] === other.velocityMps[axis] && one.accelerationMps2[axis] === other.accelerationMps2[axis]);
}
