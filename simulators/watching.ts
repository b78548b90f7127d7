import type { Vector } from '../core/flight/vector.ts';
import type { PathSample } from '../core/flight/path-samples.ts';
import { noisyVector } from './noise.ts';
import type { Random } from './random.ts';
import type { ThrownBall } from './throw.ts';

/** The protocol takes 60 to 300 samples; a longer flight is watched less often. */
const FEWEST = 60;
const MOST = 240;

/** What a camera sees of a flight: places at even times between release and plate, each coordinate with its own error. */
export function watched({ flight }: ThrownBall, camera: { readonly perSecond: number; readonly positionErrorM: number }, random: Random): PathSample[] {
  const seconds = flight.end.timeS;
  const count = Math.min(MOST, Math.max(FEWEST, Math.floor(seconds * camera.perSecond)));
  return Array.from({ length: count }, (_, index) => {
    const timeS = (seconds * (index + 0.5)) / count;
    const positionM: Vector = noisyVector(flight.positionAt(timeS), camera.positionErrorM, random);
    return { timeS, positionM };
  });
}
