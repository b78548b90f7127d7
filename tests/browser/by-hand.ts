import type { ThrowBody } from '../../core/facts/frames.ts';
import type { CoachSays } from '../../core/facts/coach.ts';
import { inchesToM } from '../../core/units/convert.ts';

/** One throw in numbers that can be followed with a pencil. */
interface EasyThrow {
  readonly speedMph: number;
  readonly flightS: number;
  /** Induced: up, and to a right-hander's arm side. */
  readonly upIn: number;
  readonly armSideIn: number;
}

/** 1 mile is 5280 ft and 1 hour 3600 s, so 1 mph is 22/15 ft/s. */
const FTPS_PER_MPH = 22 / 15;
/** Rubber to the rear point of the plate 60.5 ft, released 5.5 ft in front of the rubber. */
const RELEASE_FT = 55;
/** The front of the plate lies 17 in before its rear point. */
const FLIGHT_FT = 55 - 17 / 12;
/** 9.80665 m/s² over 0.3048 m. */
const GRAVITY_FTPS2 = 9.80665 / 0.3048;

/**
 * The constant-acceleration frame of an easy throw, thrown level and straight at the plate from 6 ft. Solved for the
 * acceleration: the flight is v·t − ½·ay·t², the induced breaks are ½·(az + g)·t² and ½·ax·t², with +x to the catcher's
 * right, so a right-hander's arm side is −x.
 */
export function easyFrame({ speedMph, flightS, upIn, armSideIn }: EasyThrow): ThrowBody {
  const speedFtps = speedMph * FTPS_PER_MPH;
  const half = 0.5 * flightS ** 2;
  return {
    constant: {
      start: [-1.5, RELEASE_FT, 6],
      velocity: [0, -speedFtps, 0],
      acceleration: [-armSideIn / 12 / half, (speedFtps * flightS - FLIGHT_FT) / half, upIn / 12 / half - GRAVITY_FTPS2],
      distance: RELEASE_FT,
    },
    spin: { rate: 1900, tilt: 40, efficiency: 0.95 },
  };
}

/** Thrown five times it is the baseline. */
export const FASTBALL: EasyThrow = { speedMph: 90, flightS: 0.42, upIn: 16, armSideIn: 6 };

/** A circle of 3 in radius, 8 in below the fastball and 4 in to its arm side: how far a throw misses is plain geometry. */
export const CIRCLE: Extract<CoachSays, { kind: 'zone-set' }>['zone'] = {
  kind: 'ellipse', verticalM: inchesToM(-8), armSideM: inchesToM(4), verticalRadiusM: inchesToM(3), armSideRadiusM: inchesToM(3),
};

/** A changeup and what a screen must say of it, worked out by hand. */
export interface WorkedThrow extends EasyThrow {
  readonly place: string;
  readonly pace: string;
  readonly onTarget: 'yes' | 'no';
  /** From the centre of the circle, inches: down and arm side positive. */
  readonly downIn: number;
  readonly sideIn: number;
}

export const WORKED_THROWS: readonly WorkedThrow[] = [
  // 8 − 16 = −8 and 10 − 6 = +4: the very centre. 81 − 90 = −9 mph.
  { speedMph: 81, flightS: 0.46, upIn: 8, armSideIn: 10, place: 'On target', pace: '9 mph slower', onTarget: 'yes', downIn: 0, sideIn: 0 },
  // 13 − 16 = −3 and 10 − 6 = +4: 5 in above the centre, 5 − 3 = 2 in too little drop. 80 − 90 = −10 mph.
  { speedMph: 80, flightS: 0.47, upIn: 13, armSideIn: 10, place: '2 in short', pace: '10 mph slower', onTarget: 'no', downIn: -5, sideIn: 0 },
  // 8 − 16 = −8 and 5 − 6 = −1: 5 in to the glove side of the centre, 5 − 3 = 2 in. 82 − 90 = −8 mph.
  { speedMph: 82, flightS: 0.45, upIn: 8, armSideIn: 5, place: '2 in glove side', pace: '8 mph slower', onTarget: 'no', downIn: 0, sideIn: -5 },
  // 4 − 16 = −12 and 13 − 6 = +7: 4 in below and 3 in to the arm side, √(16 + 9) = 5, 5 − 3 = 2 in. 79 − 90 = −11 mph.
  { speedMph: 79, flightS: 0.48, upIn: 4, armSideIn: 13, place: '2 in deep, arm side', pace: '11 mph slower', onTarget: 'no', downIn: 4, sideIn: 3 },
  // 10 − 16 = −6 and 12 − 6 = +6: 2 in above and 2 in to the arm side, √8 = 2.83 < 3. 84 − 90 = −6 mph.
  { speedMph: 84, flightS: 0.44, upIn: 10, armSideIn: 12, place: 'On target', pace: '6 mph slower', onTarget: 'yes', downIn: -2, sideIn: 2 },
];
