import { plate } from '../../core/flight/ball.ts';
import { standardAirDensityKgM3 } from '../../core/flight/air.ts';
import { flyPitch, type Flight } from '../../core/flight/fly.ts';
import { spinAxisFromTilt } from '../../core/flight/spin.ts';
import type { DeviceUnits, ThrowBody } from '../../core/facts/frames.ts';
import type { Hand, Intent } from '../../core/facts/vocabulary.ts';
import { inchesToM, mphToMps, mToFeet, mToInches, mpsToMph, radToDeg } from '../../core/units/convert.ts';

/** Where seeded chance comes from: uniform in [0, 1), and normal deviates. */
export interface Chance {
  uniform(): number;
  normal(): number;
}

/** How somebody throws one intent. */
export interface Habit {
  readonly speedMph: number;
  readonly spinRpm: number;
  /** Degrees on the clock face of a right-hander. */
  readonly tiltDeg: number;
  readonly efficiency: number;
  /** Push of the seams that the spin does not explain, as a coefficient; arm side and up positive. */
  readonly seam?: { readonly armSide: number; readonly up: number };
}

/** How the invented athletes of these tests throw. */
const HABITS: Readonly<Partial<Record<Intent, Habit>>> = {
  'four-seam': { speedMph: 90, spinRpm: 2250, tiltDeg: 25, efficiency: 0.95 },
  changeup: { speedMph: 80, spinRpm: 1650, tiltDeg: 65, efficiency: 0.93, seam: { armSide: 0.02, up: -0.03 } },
  split: { speedMph: 82, spinRpm: 1200, tiltDeg: 45, efficiency: 0.8 },
};
const OTHER: Habit = { speedMph: 76, spinRpm: 2100, tiltDeg: 200, efficiency: 0.7 };

interface Thrown {
  readonly flight: Flight;
  readonly spinRadps: readonly [number, number, number];
  readonly speedMps: number;
  readonly spinRpm: number;
  readonly tiltRad: number;
  readonly efficiency: number;
}

/** One throw, flown with core's own aerodynamics: each differs a little, as throws do. */
export function flown(intent: Intent | null, hand: Hand, distanceM: number, chance: Chance): Thrown {
  return flownBy((intent === null ? undefined : HABITS[intent]) ?? OTHER, hand, distanceM, chance);
}

/** One throw of a habit. */
export function flownBy(habit: Habit, hand: Hand, distanceM: number, chance: Chance): Thrown {
  const side = hand === 'right' ? 1 : -1;
  const speedMps = mphToMps(habit.speedMph + 0.8 * chance.normal());
  const tiltRad = ((side * (habit.tiltDeg + 6 * chance.normal())) * Math.PI) / 180;
  const spinRpm = habit.spinRpm + 60 * chance.normal();
  const efficiency = Math.min(1, Math.max(0.2, habit.efficiency + 0.02 * chance.normal()));
  const up = 0.005 * chance.normal();
  const across = side * 0.02 + 0.008 * chance.normal();
  const velocityMps = [speedMps * across, -speedMps * Math.sqrt(1 - across ** 2 - up ** 2), speedMps * up] as const;
  const spinRadps = spinAxisFromTilt({ tiltRad, efficiency, spinRpm, velocityMps });
  const flight = flyPitch(
    { positionM: [-side * 0.55 + 0.02 * chance.normal(), distanceM - 1.7, 1.85 + 0.02 * chance.normal()], velocityMps, spinRadps },
    { airDensityKgM3: standardAirDensityKgM3, until: { yM: plate.frontYM }, ...(habit.seam && { seamCoefficient: { x: -side * habit.seam.armSide, z: habit.seam.up } }) },
  );
  return { flight, spinRadps, speedMps, spinRpm, tiltRad, efficiency };
}

/** In which shape a device sends what it saw. */
export type Shape = 'path' | 'constant' | 'summary' | 'spin-only';

/** The frame that a device of that shape sends, with its noise; distances in feet, movement in inches, speeds in miles an hour. */
export const FRAME_UNITS: DeviceUnits = { distance: 'ft', speed: 'mph', movement: 'in' };

export function frameOf(thrown: Thrown, shape: Shape, chance: Chance): ThrowBody {
  const rate = thrown.spinRpm + 15 * chance.normal();
  const axis: [number, number, number] = [...thrown.spinRadps];
  switch (shape) {
    case 'path': return { path: pathOf(thrown.flight, chance), spin: { rate, axis } };
    case 'constant': return { constant: constantOf(thrown.flight), spin: { rate, axis } };
    case 'summary': return { summary: { ...summaryOf(thrown, chance), verticalBreak: inches(thrown.flight, 2, chance), horizontalBreak: inches(thrown.flight, 0, chance) }, spin: { rate } };
    case 'spin-only': return { summary: summaryOf(thrown, chance), spin: { rate, tilt: (radToDeg(thrown.tiltRad) + 360 + 2 * chance.normal()) % 360, efficiency: thrown.efficiency } };
  }
}

function pathOf({ end, positionAt }: Flight, chance: Chance): [number, number, number, number][] {
  const count = 60;
  return Array.from({ length: count }, (_, index) => {
    const timeS = (index / (count - 1)) * end.timeS;
    const [x, y, z] = positionAt(timeS).map((metres) => mToFeet(metres + 0.003 * chance.normal()));
    return [timeS, x!, y!, z!];
  });
}

/** The acceleration that joins release and arrival, from the release on. */
function constantOf({ start, end }: Flight): NonNullable<ThrowBody['constant']> {
  const feet = (vector: readonly number[]): [number, number, number] => [mToFeet(vector[0]!), mToFeet(vector[1]!), mToFeet(vector[2]!)];
  const acceleration = start.positionM.map((from, axis) => (2 * (end.positionM[axis]! - from - start.velocityMps[axis]! * end.timeS)) / end.timeS ** 2);
  const place = feet(start.positionM);
  return { start: place, velocity: feet(start.velocityMps), acceleration: feet(acceleration), distance: place[1] };
}

function summaryOf({ speedMps }: Thrown, chance: Chance): { releaseSpeed: number } {
  return { releaseSpeed: mpsToMph(speedMps) + 0.2 * chance.normal() };
}

/** How far the flight ended from where gravity alone would have led it. */
function inches({ start, end }: Flight, axis: 0 | 2, chance: Chance): number {
  const fallen = axis === 2 ? 0.5 * 9.80665 * end.timeS ** 2 : 0;
  return mToInches(end.positionM[axis] - start.positionM[axis] - start.velocityMps[axis] * end.timeS + fallen + inchesToM(0.3 * chance.normal()));
}
