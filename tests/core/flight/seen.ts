import type { Flight } from '../../../core/flight/fly.ts';
import type { PathSample } from '../../../core/flight/path-samples.ts';
import { seeded } from './noise.ts';

interface Seeing {
  readonly count?: number;
  readonly noiseM?: number;
  /** The share of the flight that was seen, from the release. */
  readonly seenTo?: number;
  readonly seed?: number;
}

/** What an instrument sees of a flight, on a clock of its own that shows 7 s at release. */
export function samplesOf(flight: Flight, { count = 100, noiseM = 0, seenTo = 1, seed = 1 }: Seeing = {}): PathSample[] {
  const { normal } = seeded(seed);
  return Array.from({ length: count }, (_, i) => {
    const timeS = (flight.end.timeS * seenTo * i) / (count - 1);
    const [x, y, z] = flight.positionAt(timeS);
    return { timeS: 7 + timeS, positionM: [x + noiseM * normal(), y + noiseM * normal(), z + noiseM * normal()] };
  });
}
