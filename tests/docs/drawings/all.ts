import { arrivalGap, gapOverTime } from './batter.ts';
import { seamMaps } from './ball.ts';
import { inTheAir } from './in-the-air.ts';
import { liftLaws, thinAir } from './laws.ts';
import { atThePlate } from './plate.ts';
import { seamVerdicts, unexplainedArrow } from './seams.ts';
import { spinClock } from './spin-clock.ts';
import { fileOf, type Drawing } from './svg.ts';
import { reach, steps } from './within-reach.ts';

const DRAWINGS: Readonly<Record<string, () => Drawing>> = {
  'in-the-air.svg': inTheAir,
  'at-the-plate.svg': atThePlate,
  'spin-clock.svg': spinClock,
  'arrival-gap.svg': arrivalGap,
  'gap-line.svg': gapOverTime,
  'lift-laws.svg': liftLaws,
  'unexplained.svg': unexplainedArrow,
  'seam-verdict.svg': seamVerdicts,
  'seam-map.svg': seamMaps,
  'reach.svg': reach,
  'steps.svg': steps,
  'thin-air.svg': thinAir,
};

/** Every drawing of docs/flight.md, by its file in docs/flight, from core's own functions. */
export function allDrawings(): ReadonlyMap<string, string> {
  return new Map(Object.entries(DRAWINGS).map(([name, draw]) => [name, fileOf(draw())]));
}
