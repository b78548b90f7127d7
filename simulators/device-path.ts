import type { ThrowBody } from '../core/facts/frames.ts';
import { norm } from '../core/flight/vector.ts';
import { degToRad, feetToM, mToFeet, radpsToRpm } from '../core/units/convert.ts';
import type { SimulatedDevice } from './measuring.ts';
import { noisy, noisyDirection, written } from './noise.ts';
import type { Random } from './random.ts';
import type { ThrownBall } from './throw.ts';
import { watched } from './watching.ts';

const PER_SECOND = 240;
const POSITION_ERROR_FT = 0.013;
const SPIN_ERROR_RPM = 12;
const AXIS_ERROR_DEG = 1.5;
/** That of the axis over the efficiency of a changeup. */
const TILT_ERROR_DEG = 1.8;
const AXIS_BIAS_DEG = 1;
const EXTENSION_ERROR_FT = 0.05;
const SEAM_ERROR_DEG = 4;

/** Watches the whole flight, sends the path in feet, and reads the spin axis off the ball itself: the one that can show unexplained movement. */
export const pathDevice: SimulatedDevice = {
  declares: {
    device: 'camera-pair',
    sight: 'full-flight',
    axis: 'measured',
    units: { distance: 'ft', speed: 'mph', movement: 'in' },
    standardErrors: { position: POSITION_ERROR_FT, spinRate: SPIN_ERROR_RPM, tilt: TILT_ERROR_DEG, axisBias: AXIS_BIAS_DEG },
  },
  measure(thrown, random): ThrowBody {
    const samples = watched(thrown, { perSecond: PER_SECOND, positionErrorM: feetToM(POSITION_ERROR_FT) }, random);
    const { spinRadps } = thrown.launch;
    const [x, y, z] = noisyDirection(spinRadps, degToRad(AXIS_ERROR_DEG), random);
    return {
      path: samples.map(({ timeS, positionM }) => [written(timeS, 6), ...positionM.map((metres) => written(mToFeet(metres), 4))] as [number, number, number, number]),
      spin: {
        rate: written(Math.max(0, noisy(radpsToRpm(norm(spinRadps)), SPIN_ERROR_RPM, random)), 0),
        axis: [written(x, 4), written(y, 4), written(z, 4)],
      },
      extension: written(noisy(mToFeet(thrown.extensionM), EXTENSION_ERROR_FT, random), 2),
      ...seamsOf(thrown, random),
    };
  },
};

function seamsOf({ seamAxis }: ThrownBall, random: Random): Pick<ThrowBody, 'seams'> {
  if (seamAxis === undefined) return {};
  const latitude = Math.max(-90, Math.min(90, noisy(seamAxis.latitude, SEAM_ERROR_DEG, random)));
  return { seams: { latitude: written(latitude, 0), longitude: written(noisy(seamAxis.longitude, SEAM_ERROR_DEG, random), 0) } };
}
