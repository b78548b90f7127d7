import type { DeviceUnits, ThrowBody } from '../core/facts/frames.ts';

/** The units of the bodies below. */
export const UNITS: DeviceUnits = { distance: 'ft', speed: 'mph', movement: 'in' };

const START = [-1.62, 54.1, 5.9] as const;
const VELOCITY = [3.1, -118.4, -2.2] as const;
const ACCELERATION = [-9.4, 22.1, -27.6] as const;
const SAMPLES = 80;
const SAMPLE_S = 0.005;

/** An invented changeup in each of the three shapes. */
export const BODIES: { readonly [shape in 'path' | 'constant' | 'summary']: ThrowBody } = {
  path: { path: Array.from({ length: SAMPLES }, (_, index) => sampleAt(index * SAMPLE_S)) },
  constant: { constant: { start: [...START], velocity: [...VELOCITY], acceleration: [...ACCELERATION], distance: START[1] } },
  summary: { summary: { releaseSpeed: 81.4, verticalBreak: 5.2, horizontalBreak: 14.1 } },
};

function sampleAt(seconds: number): [number, number, number, number] {
  const at = (axis: 0 | 1 | 2): number => START[axis] + VELOCITY[axis] * seconds + (ACCELERATION[axis] * seconds ** 2) / 2;
  return [seconds, at(0), at(1), at(2)];
}
