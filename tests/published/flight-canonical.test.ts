import { describe, expect, test } from 'vitest';
import { flyPitch } from '../../core/flight/fly.ts';
import { equationsOfMotion } from '../../core/flight/motion.ts';
import { norm } from '../../core/flight/vector.ts';
import { changeup, fastball, launchOf, tailingFastball } from '../core/flight/pitches.ts';
import { solveExactly } from '../core/flight/reference-solver.ts';

/** Default law, no decay, air 1.2 kg/m³, release (0, 55 ft, 6 ft), to the front of the plate. All computed independently (SciPy DOP853). */
const cases = [
  { name: 'a 95 mph fastball of pure backspin', pitch: fastball, timeS: 0.405383035, x: 0, z: 1.148204923, v: [0, -38.280979149, -2.294104607] },
  { name: 'a 95 mph fastball at 1:00', pitch: tailingFastball, timeS: 0.405453073, x: 0.093483454, z: 0.982494131, v: [-0.36994921, -38.276703337, -2.873598986] },
  { name: 'an 85 mph changeup at 2:00', pitch: changeup, timeS: 0.452111932, x: -0.049904745, z: 0.918987468, v: [-0.94135403, -34.37966588, -3.602155937] },
] as const;

describe.each(cases)('$name', ({ pitch, timeS, x, z, v }) => {
  const flight = flyPitch(launchOf(pitch), { airDensityKgM3: 1.2 });

  test('arrives at the plate as computed independently (SciPy DOP853, tolerance 1e-8)', () => {
    const { end } = flyPitch(launchOf(pitch), { airDensityKgM3: 1.2, timeStepS: 0.005 });
    const got = [end.timeS, end.positionM[0], end.positionM[2], ...end.velocityMps];
    [timeS, x, z, ...v].forEach((value, i) => expect(Math.abs(got[i]! - value), `value ${i}`).toBeLessThan(1e-8));
  });

  test('at the shipped step differs from npm odex at the same moment by less than 10 nm, 10 000 times finer than the 0.1 mm asked', () => {
    const launch = launchOf(pitch);
    const exact = solveExactly(equationsOfMotion(launch.spinRadps, { airDensityKgM3: 1.2 }), [...launch.positionM, ...launch.velocityMps], flight.end.timeS);
    const missM = Math.hypot(...flight.end.positionM.map((value, i) => value - exact[i]!));
    console.log(`${pitch.speedMph} mph: ${flight.nodes.length - 1} steps, ${(missM * 1e9).toFixed(2)} nm from the exact flight at the plate`);
    expect(missM).toBeLessThan(1e-8);
  });

  test('loses 8–10 % of its speed on the way (Baseball Prospectus, 2020, published)', () => {
    const kept = norm(flight.end.velocityMps) / norm(flight.start.velocityMps);
    expect(1 - kept).toBeGreaterThan(0.08);
    expect(1 - kept).toBeLessThan(0.1);
  });
});
