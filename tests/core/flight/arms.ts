import * as fc from 'fast-check';
import { armFromFastball, type Arm, type ArmThrow, type Separation, type Span } from '../../../core/flight/arm.ts';
import { flyPitch } from '../../../core/flight/fly.ts';
import { inducedBreakBetween } from '../../../core/flight/movement.ts';
import { launchOf, tailingFastball } from './pitches.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const spanOf = (low: fc.Arbitrary<number>, widest: number): fc.Arbitrary<Span> =>
  fc.tuple(low, between(0, widest)).map(([from, width]) => ({ low: from, high: from + width }));

/** Any arm that can pitch, wherever its fastball goes. */
export const anyArm: fc.Arbitrary<Arm> = fc.record({
  releaseM: fc.tuple(between(-1, 1), between(11, 17.5), between(0.5, 2.1)),
  direction: fc.tuple(between(-0.06, 0.06), fc.constant(-1), between(-0.06, 0.04)),
  speedMps: spanOf(between(26, 42), 5),
  spinRpm: spanOf(between(800, 2400), 800),
  efficiency: fc.tuple(between(0.3, 1), between(0, 1)).map(([low, share]) => ({ low, high: low + share * (1 - low) })),
  fastball: fc.record({ verticalM: between(0.1, 0.5), armSideM: between(-0.1, 0.5) }),
  airDensityKgM3: between(0.95, 1.3),
});

/** The same, with its throws aimed at a place. */
export const anyAimedArm: fc.Arbitrary<Arm> = fc.record({ arm: anyArm, aim: fc.record({ xM: between(-0.3, 0.3), zM: between(0.3, 1.2) }) }).map(({ arm, aim }) => ({ ...arm, aim }));

/** Where within its spans a throw of an arm lies, 0–1 each. */
export const anyShare = fc.record({ speed: between(0, 1), spin: between(0, 1), efficiency: between(0, 1), tiltRad: between(0, 2 * Math.PI), gyroSign: fc.constantFrom(1 as const, -1 as const) });

export function thrownBy(arm: Arm, share: { readonly speed: number; readonly spin: number; readonly efficiency: number; readonly tiltRad: number; readonly gyroSign: 1 | -1 }): ArmThrow {
  const within = ({ low, high }: Span, part: number): number => low + part * (high - low);
  return {
    speedMps: within(arm.speedMps, share.speed), spinRpm: within(arm.spinRpm, share.spin), efficiency: within(arm.efficiency, share.efficiency),
    tiltRad: share.tiltRad, gyroSign: share.gyroSign,
  };
}

/** The arm of a right-hander known by a 95 mph fastball at 1:00 and nothing else. */
export function knownArm(): Arm {
  const { start, end } = flyPitch(launchOf(tailingFastball), { airDensityKgM3: 1.2 });
  const moved = inducedBreakBetween(start, end);
  return armFromFastball(
    { releaseM: start.positionM, velocityMps: start.velocityMps, plate: { xM: end.positionM[0], zM: end.positionM[2] }, verticalM: moved.verticalM, armSideM: -moved.horizontalM },
    { airDensityKgM3: 1.2 },
  );
}

/** How far a point lies inside a closed line, by the way to its nearest side; negative outside. */
export function depthInside({ verticalM, armSideM }: Separation, line: readonly Separation[]): number {
  let inside = false;
  let nearest = Number.POSITIVE_INFINITY;
  line.forEach((b, index) => {
    const a = line.at(index - 1)!;
    const crosses = a.verticalM > verticalM !== b.verticalM > verticalM;
    if (crosses && armSideM < a.armSideM + ((verticalM - a.verticalM) * (b.armSideM - a.armSideM)) / (b.verticalM - a.verticalM)) inside = !inside;
    const side = [b.verticalM - a.verticalM, b.armSideM - a.armSideM] as const;
    const squared = side[0] ** 2 + side[1] ** 2;
    const part = squared === 0 ? 0 : Math.min(1, Math.max(0, ((verticalM - a.verticalM) * side[0] + (armSideM - a.armSideM) * side[1]) / squared));
    nearest = Math.min(nearest, Math.hypot(verticalM - a.verticalM - part * side[0], armSideM - a.armSideM - part * side[1]));
  });
  return inside ? nearest : -nearest;
}
