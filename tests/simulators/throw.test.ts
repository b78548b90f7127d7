import { describe, expect, it } from 'vitest';
import { standardAirDensityKgM3 } from '../../core/flight/air.ts';
import { flyPitch } from '../../core/flight/fly.ts';
import { mirrorTilt } from '../../core/flight/mirror.ts';
import { spinAxisFromTilt, tiltFromSpin } from '../../core/flight/spin.ts';
import { norm } from '../../core/flight/vector.ts';
import { inchesToM, mpsToMph, mToInches, radpsToRpm } from '../../core/units/convert.ts';
import type { PitchShape, SimulatedAthlete } from '../../simulators/athlete.ts';
import { ATHLETES } from '../../simulators/athletes.ts';
import { afterThrow, RESTED, scatterNow, speedLeft } from '../../simulators/body.ts';
import { randomFrom } from '../../simulators/random.ts';
import { shapeOf } from '../../simulators/repertoire.ts';
import { middleOf, type DrawnShape } from '../../simulators/sampling.ts';
import { throwBall } from '../../simulators/throw.ts';
import { correlation, FULL_MOUND, mean, movementOf, standardDeviation, throwMany } from './throwing.ts';

const [SEAM, TURNOVER, SPLIT] = ATHLETES;
const gripOf = (athlete: SimulatedAthlete, index: 0 | 1) => athlete.tried[index].grip;
const KINDS = ATHLETES.flatMap((athlete) => [
  { name: `${athlete.profile.name}'s fastball`, athlete, intent: 'four-seam' as const, grip: null },
  { name: `${athlete.profile.name}'s changeup A`, athlete, intent: 'changeup' as const, grip: gripOf(athlete, 0) },
  { name: `${athlete.profile.name}'s changeup B`, athlete, intent: 'changeup' as const, grip: gripOf(athlete, 1) },
]);
const COUNT = 400;

/** Movement of one exact launch with this athlete's middle release, straight at the plate. */
function movementOfDrawn(athlete: SimulatedAthlete, drawn: DrawnShape): { verticalM: number; armSideM: number } {
  const velocityMps = [0, -drawn.speedMps, 0] as const;
  const launch = {
    positionM: [0, FULL_MOUND.distanceM - athlete.release.extensionM.mean, 1.8] as const,
    velocityMps,
    spinRadps: spinAxisFromTilt({ ...drawn, velocityMps }),
  };
  const { armSide, vertical } = drawn.unexplained;
  const flight = flyPitch(launch, { airDensityKgM3: standardAirDensityKgM3, seamCoefficient: { x: -armSide, z: vertical } });
  return movementOf({ ...athlete, profile: { ...athlete.profile, hand: 'right' } }, { launch, flight, extensionM: 0 });
}

/** What the declared spreads make of the movement: central differences on flights, correlations as declared. */
function declaredSpreadM(athlete: SimulatedAthlete, shape: PitchShape, side: 'verticalM' | 'armSideM'): number {
  const middle = middleOf(shape);
  const perSd = (change: (by: number) => DrawnShape): number => (movementOfDrawn(athlete, change(1))[side] - movementOfDrawn(athlete, change(-1))[side]) / 2;
  const speed = perSd((by) => ({ ...middle, speedMps: middle.speedMps + by * shape.speedMps.sd }));
  const spin = perSd((by) => ({ ...middle, spinRpm: middle.spinRpm + by * shape.spinRpm.sd }));
  const tilt = perSd((by) => ({ ...middle, tiltRad: middle.tiltRad + by * shape.tiltRad.sd }));
  const efficiency = perSd((by) => ({ ...middle, efficiency: middle.efficiency + by * shape.efficiency.sd }));
  const { armSide, vertical } = shape.unexplained;
  const seam = perSd((by) => ({ ...middle, unexplained: side === 'verticalM' ? { ...middle.unexplained, vertical: vertical.mean + by * vertical.sd } : { ...middle.unexplained, armSide: armSide.mean + by * armSide.sd } }));
  const { speedSpin, tiltEfficiency } = shape.correlations;
  return Math.sqrt(speed ** 2 + spin ** 2 + 2 * speedSpin * speed * spin + tilt ** 2 + efficiency ** 2 + 2 * tiltEfficiency * tilt * efficiency + seam ** 2);
}

describe('throws of simulated athletes', () => {
  it.each(KINDS)('$name leaves the hand as its distributions say', ({ athlete, intent, grip }) => {
    const shape = shapeOf(athlete, intent, grip);
    const launches = throwMany(athlete, intent, grip, COUNT).map(({ launch }) => launch);
    const speeds = launches.map(({ velocityMps }) => norm(velocityMps));
    const spins = launches.map(({ spinRadps }) => radpsToRpm(norm(spinRadps)));
    const tilts = launches.map(({ spinRadps, velocityMps }) => {
      const { tiltRad } = tiltFromSpin(spinRadps, velocityMps)!;
      return athlete.profile.hand === 'right' ? tiltRad! : mirrorTilt(tiltRad!);
    });
    for (const [values, { mean: declared, sd }] of [[speeds, shape.speedMps], [spins, shape.spinRpm], [tilts, shape.tiltRad]] as const) {
      // Four standard errors of a mean and of a standard deviation.
      expect(Math.abs(mean(values) - declared)).toBeLessThan((4 * sd) / Math.sqrt(COUNT));
      expect(Math.abs(standardDeviation(values) / sd - 1)).toBeLessThan(4 / Math.sqrt(2 * COUNT));
    }
    expect(Math.abs(correlation(speeds, spins) - shape.correlations.speedSpin)).toBeLessThan(4 / Math.sqrt(COUNT));
  });

  it.each(KINDS)('$name moves as widely as its distributions make it', ({ athlete, intent, grip }) => {
    const shape = shapeOf(athlete, intent, grip);
    const moved = throwMany(athlete, intent, grip, COUNT).map((ball) => movementOf(athlete, ball));
    for (const side of ['verticalM', 'armSideM'] as const) {
      const ratio = standardDeviation(moved.map((one) => one[side])) / declaredSpreadM(athlete, shape, side);
      // Four standard errors of an SD (0.14), and what a straight-line propagation leaves out.
      expect(ratio).toBeGreaterThan(0.8);
      expect(ratio).toBeLessThan(1.25);
    }
  });

  it.each(KINDS)('$name crosses near the plate', ({ athlete, intent, grip }) => {
    const ends = throwMany(athlete, intent, grip, COUNT).map(({ flight }) => flight.end.positionM);
    expect(mean(ends.map(([x]) => x))).toBeCloseTo(0, 1);
    expect(mean(ends.map(([, , z]) => z))).toBeCloseTo(0.75, 1);
  });

  it("a left-hander's changeup moves to his arm side, the catcher's right", () => {
    const { flight } = throwMany(SPLIT, 'changeup', gripOf(SPLIT, 0), 1)[0]!;
    expect(SPLIT.profile.hand).toBe('left');
    const straightM = flight.start.positionM[0] + flight.start.velocityMps[0] * flight.end.timeS;
    expect(flight.end.positionM[0] - straightM).toBeGreaterThan(inchesToM(3));
    const all = throwMany(SPLIT, 'changeup', gripOf(SPLIT, 0), COUNT).map((ball) => mToInches(movementOf(SPLIT, ball).armSideM));
    expect(mean(all)).toBeGreaterThan(8);
    expect(flight.start.positionM[0]).toBeGreaterThan(0);
  });

  it('a left-hander is a right-hander in the mirror', () => {
    const asRightHander: SimulatedAthlete = { ...SPLIT, profile: { ...SPLIT.profile, hand: 'right' } };
    const left = throwMany(SPLIT, 'changeup', gripOf(SPLIT, 1), 20).map((ball) => movementOf(SPLIT, ball));
    const right = throwMany(asRightHander, 'changeup', gripOf(SPLIT, 1), 20).map((ball) => movementOf(asRightHander, ball));
    for (const [index, one] of left.entries()) {
      expect(one.verticalM).toBeCloseTo(right[index]!.verticalM, 9);
      expect(one.armSideM).toBeCloseTo(right[index]!.armSideM, 9);
    }
  });

  it('every changeup is slower than the fastball, and separates', () => {
    for (const athlete of ATHLETES) {
      const speed = (intent: 'four-seam' | 'changeup') => mean(throwMany(athlete, intent, gripOf(athlete, 0), 60).map(({ launch }) => mpsToMph(norm(launch.velocityMps))));
      const gapMph = speed('four-seam') - speed('changeup');
      expect(gapMph).toBeGreaterThan(6);
      expect(gapMph).toBeLessThan(12);
    }
  });
});

describe('the families', () => {
  const unexplainedIn = (athlete: SimulatedAthlete, index: 0 | 1): number =>
    mToInches(mean(throwMany(athlete, 'changeup', gripOf(athlete, index), 60).map((ball) => {
      const spinOnly = flyPitch(ball.launch, { airDensityKgM3: standardAirDensityKgM3 });
      return Math.hypot(ball.flight.end.positionM[0] - spinOnly.end.positionM[0], ball.flight.end.positionM[2] - spinOnly.end.positionM[2]);
    })));
  const spreadIn = (athlete: SimulatedAthlete): number => {
    const moved = throwMany(athlete, 'changeup', gripOf(athlete, 0), COUNT).map((ball) => movementOf(athlete, ball));
    return mToInches(Math.sqrt(standardDeviation(moved.map(({ verticalM }) => verticalM)) * standardDeviation(moved.map(({ armSideM }) => armSideM))));
  };

  it('only the seam-effect changeup has movement that its spin does not explain, most of it with one seam', () => {
    expect(unexplainedIn(SEAM, 1)).toBeGreaterThan(3);
    expect(unexplainedIn(SEAM, 1)).toBeGreaterThan(2 * unexplainedIn(SEAM, 0));
    expect(unexplainedIn(TURNOVER, 1)).toBeLessThan(0.5);
    expect(unexplainedIn(SPLIT, 1)).toBeLessThan(0.5);
  });

  it('the split scatters most', () => {
    expect(spreadIn(SPLIT)).toBeGreaterThan(1.5 * spreadIn(TURNOVER));
    expect(spreadIn(SPLIT)).toBeGreaterThan(1.5 * spreadIn(SEAM));
  });

  it('turning the thumb under moves the turnover further to the arm side and lower', () => {
    const middle = (index: 0 | 1, side: 'verticalM' | 'armSideM') => mToInches(mean(throwMany(TURNOVER, 'changeup', gripOf(TURNOVER, index), 100).map((ball) => movementOf(TURNOVER, ball)[side])));
    expect(middle(1, 'armSideM') - middle(0, 'armSideM')).toBeGreaterThan(1);
    expect(middle(1, 'verticalM') - middle(0, 'verticalM')).toBeLessThan(-2);
  });

  it('the fastball of each athlete has the spin efficiency that suits the family', () => {
    expect(TURNOVER.fastball.efficiency.mean).toBeGreaterThan(0.95);
    expect(SEAM.fastball.efficiency.mean).toBeLessThan(0.8);
    expect(SPLIT.fastball.efficiency.mean).toBeGreaterThan(0.8);
    expect(SPLIT.fastball.efficiency.mean).toBeLessThan(0.95);
  });
});

describe('a tiring body', () => {
  it('loses speed, scatters more, and wanders without running away', () => {
    const random = randomFrom(3, 'body');
    const bodies = [RESTED];
    for (let throws = 0; throws < 2_000; throws += 1) bodies.push(afterThrow(bodies.at(-1)!, SEAM, random));
    expect(speedLeft(bodies[0]!, SEAM)).toBe(1);
    expect(speedLeft(bodies[60]!, SEAM)).toBeCloseTo(0.985, 6);
    expect(speedLeft(bodies[2_000]!, SEAM)).toBe(0.85);
    expect(scatterNow(bodies[60]!, SEAM)).toBeCloseTo(1.12, 6);
    // A walk with pull p and step s has the standard deviation s/√(1 − (1 − p)²).
    const { tiltRad, pull } = SEAM.drift;
    const expected = tiltRad / Math.sqrt(1 - (1 - pull) ** 2);
    expect(standardDeviation(bodies.map(({ driftTiltRad }) => driftTiltRad)) / expected).toBeCloseTo(1, 0);
    expect(Math.max(...bodies.map(({ driftTiltRad }) => Math.abs(driftTiltRad)))).toBeLessThan(6 * expected);
  });

  it('a tired fastball is slower than a rested one by what the fatigue says', () => {
    const tired = { ...RESTED, thrown: 100 };
    const speed = (body: typeof RESTED): number => {
      const random = randomFrom(5, 'same');
      return mean(Array.from({ length: 100 }, () => norm(throwBall(SEAM, SEAM.fastball, body, FULL_MOUND, random)!.launch.velocityMps)));
    };
    expect(speed(tired) / speed(RESTED)).toBeCloseTo(1 - 100 * SEAM.fatigue.speedPerThrow, 3);
  });

  it('reaches a partner in long toss and a receiver close by, and says when a distance is too far', () => {
    const random = randomFrom(5, 'far');
    const at = (distanceM: number, effort: 'easy' | 'full') => throwBall(SEAM, SEAM.fastball, RESTED, { distanceM, effort }, random);
    for (const ball of [at(36.576, 'easy'), at(36.576, 'full'), at(8, 'easy')]) expect(ball!.flight.end.positionM[2]).toBeGreaterThan(-0.5);
    expect(at(120, 'easy')).toBeNull();
  });
});
