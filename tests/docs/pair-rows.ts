import { horizontalApproachRad, verticalApproachRad } from '../../core/flight/approach.ts';
import type { Flight, Launch } from '../../core/flight/fly.ts';
import { tiltFromSpin, tiltToClock } from '../../core/flight/spin.ts';
import { norm } from '../../core/flight/vector.ts';
import { degreeRad, inchM, mphMps } from '../core/flight/feet-and-miles.ts';
import { launchOf, tailingFastball } from '../core/flight/pitches.ts';
import { fastFlight, movedIn, slow, slowFlight } from './drawings/thrown.ts';

type Told = (flight: Flight, launch: Launch) => string;

const signed = (value: number, digits: number): string => value.toFixed(digits).replace('-', '−');
/** Tilt and efficiency as the pair's cards give them: for a ball that flies straight at the plate. */
const spinOf = ({ spinRadps }: Launch) => tiltFromSpin(spinRadps)!;

const ROWS: Readonly<Record<string, Told>> = {
  'release speed': ({ start }) => `${(norm(start.velocityMps) / mphMps).toFixed(1)} mph`,
  'speed at the plate': ({ end }) => `${(norm(end.velocityMps) / mphMps).toFixed(1)} mph`,
  spin: (_, { spinRadps }) => `${((norm(spinRadps) * 30) / Math.PI).toFixed(0)} rpm`,
  tilt: (_, launch) => clock(spinOf(launch).tiltRad!),
  efficiency: (_, launch) => `${(100 * spinOf(launch).efficiency).toFixed(0)} %`,
  'flight time': ({ end }) => `${(1000 * end.timeS).toFixed(1)} ms`,
  'induced vertical break': (flight) => `${movedIn(flight).up.toFixed(1)} in`,
  'arm-side break': (flight) => `${movedIn(flight).armSide.toFixed(1)} in`,
  'height at the plate': ({ end }) => `${(end.positionM[2] / inchM).toFixed(1)} in`,
  'right of the middle, for the catcher': ({ end }) => `${signed(end.positionM[0] / inchM, 1)} in`,
  'vertical approach': ({ end }) => `${signed(verticalApproachRad(end.velocityMps) / degreeRad, 1)}°`,
  'horizontal approach, arm side': ({ end }) => `${signed(-horizontalApproachRad(end.velocityMps) / degreeRad, 1)}°`,
};

function clock(tiltRad: number): string {
  const { hours, minutes } = tiltToClock(tiltRad);
  return `${hours}:${String(minutes).padStart(2, '0')}`;
}

/** Each row of the table of the pair: its name, the fastball's cell and the changeup's. */
export const pairRows: readonly (readonly [name: string, cells: readonly [string, string]])[] = Object.entries(ROWS).map(([name, told]) => [
  name, [told(fastFlight, launchOf(tailingFastball)), told(slowFlight, slow)],
]);
