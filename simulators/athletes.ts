import type { Athlete, Grip, SpeedBand, TargetZone } from '../core/facts/coach.ts';
import { degToRad, feetToM, inchesToM, mphToMps } from '../core/units/convert.ts';
import type { PitchShape, SimulatedAthlete, Spread } from './athlete.ts';
import { seamAxisOf } from './grip-effect.ts';

type MeanAndSd = readonly [mean: number, sd: number];

interface ShapeInTradeUnits {
  readonly mph: MeanAndSd;
  readonly rpm: MeanAndSd;
  readonly tiltDeg: MeanAndSd;
  readonly efficiency: MeanAndSd;
  readonly armSide?: MeanAndSd;
  readonly vertical?: MeanAndSd;
}

const spread = ([mean, sd]: MeanAndSd, convert: (value: number) => number = (value) => value): Spread => ({ mean: convert(mean), sd: convert(sd) });
const feet = (value: MeanAndSd): Spread => spread(value, feetToM);

function shape({ mph, rpm, tiltDeg, efficiency, armSide = [0, 0.003], vertical = [0, 0.003] }: ShapeInTradeUnits): PitchShape {
  return {
    speedMps: spread(mph, mphToMps),
    spinRpm: spread(rpm),
    tiltRad: spread(tiltDeg, degToRad),
    efficiency: spread(efficiency),
    correlations: { speedSpin: 0.3, tiltEfficiency: -0.3 },
    unexplained: { armSide: spread(armSide), vertical: spread(vertical) },
    seamAxis: seamAxisOf('four-seam'),
  };
}

function profile(id: string, name: string, hand: Athlete['hand'], birthYear: number): Athlete {
  return { id, name, hand, birthYear, mainFastball: 'four-seam', units: 'imperial', language: 'en' };
}

function target(verticalIn: number, armSideIn: number, lowMph: number, highMph: number): { zone: TargetZone; speedBand: SpeedBand } {
  return {
    zone: { kind: 'ellipse', verticalM: inchesToM(verticalIn), armSideM: inchesToM(armSideIn), verticalRadiusM: inchesToM(3), armSideRadiusM: inchesToM(3) },
    speedBand: { lowMps: mphToMps(lowMph), highMps: mphToMps(highMph) },
  };
}

const PLAIN: Grip = { seams: 'two-seam', spread: 'normal', thumbDeg: 0, pressure: 'middle', depth: 'normal', tiltDeg: 0 };

/** Three invented athletes, one for each changeup family; the first begins. */
export const ATHLETES: readonly [SimulatedAthlete, SimulatedAthlete, SimulatedAthlete] = [
  {
    profile: profile('corvin-halloway', 'Corvin Halloway', 'right', 2003),
    family: 'seam-effect',
    device: 'path',
    release: { armSideM: feet([2.1, 0.1]), heightM: feet([5.8, 0.08]), extensionM: feet([6.1, 0.12]) },
    commandRad: degToRad(0.55),
    fastball: shape({ mph: [92, 0.8], rpm: [2260, 55], tiltDeg: [24, 4], efficiency: [0.78, 0.025] }),
    changeup: shape({ mph: [84, 0.9], rpm: [1720, 80], tiltDeg: [58, 5], efficiency: [0.82, 0.03], armSide: [0.022, 0.005], vertical: [-0.034, 0.006] }),
    fatigue: { speedPerThrow: 0.00025, scatterPerThrow: 0.002 },
    drift: { tiltRad: degToRad(0.4), heightM: 0.004, pull: 0.05 },
    tried: [
      { grip: PLAIN, cue: { words: 'throw it like the fastball', focus: 'external' } },
      { grip: { ...PLAIN, seams: 'one-seam', tiltDeg: 20 }, cue: { words: 'stay behind it, let the seam work', focus: 'external' } },
    ],
    target: target(-12, 9, -10, -6.5),
  },
  {
    profile: profile('tobin-marrask', 'Tobin Marrask', 'right', 2001),
    family: 'turnover',
    device: 'spin',
    release: { armSideM: feet([1.4, 0.1]), heightM: feet([6.2, 0.08]), extensionM: feet([6.4, 0.12]) },
    commandRad: degToRad(0.5),
    fastball: shape({ mph: [94, 0.7], rpm: [2400, 50], tiltDeg: [15, 3.5], efficiency: [0.965, 0.01] }),
    changeup: shape({ mph: [84.5, 0.9], rpm: [1780, 80], tiltDeg: [56, 6], efficiency: [0.95, 0.015] }),
    fatigue: { speedPerThrow: 0.0002, scatterPerThrow: 0.002 },
    drift: { tiltRad: degToRad(0.5), heightM: 0.004, pull: 0.05 },
    tried: [
      { grip: PLAIN, cue: { words: 'pull the shade down', focus: 'external' } },
      { grip: { ...PLAIN, thumbDeg: 45, pressure: 'index' }, cue: { words: 'turn the thumb under', focus: 'internal' } },
    ],
    target: target(-12.5, 11, -12, -8.5),
  },
  {
    profile: profile('ilmar-voskey', 'Ilmar Voskey', 'left', 2005),
    family: 'split',
    device: 'constant',
    release: { armSideM: feet([1.8, 0.12]), heightM: feet([5.9, 0.1]), extensionM: feet([5.9, 0.14]) },
    commandRad: degToRad(0.65),
    fastball: shape({ mph: [89.5, 0.9], rpm: [2180, 60], tiltDeg: [26, 4.5], efficiency: [0.9, 0.02] }),
    changeup: shape({ mph: [83, 1.3], rpm: [1620, 150], tiltDeg: [48, 10], efficiency: [0.84, 0.06] }),
    fatigue: { speedPerThrow: 0.0003, scatterPerThrow: 0.0025 },
    drift: { tiltRad: degToRad(0.5), heightM: 0.005, pull: 0.05 },
    tried: [
      { grip: { ...PLAIN, spread: 'split' }, cue: { words: 'same arm, let it tumble', focus: 'external' } },
      { grip: { ...PLAIN, spread: 'split', depth: 'deep' }, cue: { words: 'jam it deep and throw through it', focus: 'internal' } },
    ],
    target: target(-11, 0.5, -10.5, -6.5),
  },
];
