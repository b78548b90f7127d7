import { missOf } from '../../core/coaching/target.ts';
import type { TargetZone } from '../../core/facts/coach.ts';
import { inchesToM } from '../../core/units/convert.ts';
import type { Random } from '../../simulators/random.ts';
import type { Order } from './order.ts';

/** Fills in what is measured of each throw of an evening. */
export type Throwing = (random: Random, order: Order, into: Float64Array) => void;

type Scatter = (random: Random) => number;

interface Evening {
  /** B minus A, in SD of A. */
  readonly shift: number;
  /** SD of B; that of A is 1. */
  readonly scatterB: number;
  /** Added with every throw, whoever throws: tiring, in SD. */
  readonly drift: number;
  /** SD of what a day adds to all of its throws. */
  readonly dayShift: number;
  /** Of neighbouring throws. */
  readonly correlation: number;
  /** One throw's chance, with SD 1. */
  readonly scatter: Scatter;
}

const normal: Scatter = (random) => random.normal();

/** Student's t with three degrees of freedom, scaled to SD 1. */
export const heavyTails: Scatter = (random) => {
  const chiSquare = random.normal() ** 2 + random.normal() ** 2 + random.normal() ** 2;
  return random.normal() / Math.sqrt(chiSquare);
};

/** One throw in twenty slips by five SD, always to the same side. */
export const slips: Scatter = (random) => random.normal() + (random.uniform() < 0.05 ? 5 : 0);

const STEADY: Evening = { shift: 0, scatterB: 1, drift: 0, dayShift: 0, correlation: 0, scatter: normal };

/** One measure in units of its SD within trial A. */
export function oneMeasure(different: Partial<Evening>): Throwing {
  const { shift, scatterB, drift, dayShift, correlation, scatter } = { ...STEADY, ...different };
  const own = Math.sqrt(1 - correlation ** 2);
  return (random, order, into) => {
    const days: number[] = [];
    let before = 0;
    order.forEach(({ trial, day }, place) => {
      days[day] ??= dayShift === 0 ? 0 : dayShift * random.normal();
      const chance: number = place === 0 || correlation === 0 ? scatter(random) : correlation * before + own * scatter(random);
      before = chance;
      into[place] = days[day] + drift * place + (trial === 'b' ? shift + scatterB * chance : chance);
    });
  };
}

/** A zone three inches to each side, and an athlete whose changeup scatters by 2.4 in vertically and 2.8 in sideways. Invented. */
const ZONE: TargetZone = { kind: 'ellipse', verticalM: inchesToM(-9), armSideM: inchesToM(5), verticalRadiusM: inchesToM(3), armSideRadiusM: inchesToM(3) };
const VERTICAL_SD_M = inchesToM(2.4);
const ARM_SIDE_SD_M = inchesToM(2.8);

/** The miss of throws whose centre lies so many inches above the centre of the zone. */
export function missOfThrows(aboveA: number, aboveB: number): Throwing {
  return (random, order, into) => {
    order.forEach(({ trial }, place) => {
      const verticalM = ZONE.verticalM + inchesToM(trial === 'b' ? aboveB : aboveA) + VERTICAL_SD_M * random.normal();
      const armSideM = ZONE.armSideM + ARM_SIDE_SD_M * random.normal();
      into[place] = missOf({ verticalM, armSideM }, ZONE).size;
    });
  };
}
