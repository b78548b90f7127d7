import { standardGravityMps2 } from '../../../core/flight/ball.ts';
import { flyPitch, type Flight } from '../../../core/flight/fly.ts';
import type { Vector } from '../../../core/flight/vector.ts';
import { inchM } from '../../core/flight/feet-and-miles.ts';
import { curve, dot, line, say, tell, type Drawing, type Px } from './svg.ts';
import { air, feet, inches, movedIn, slow, slowFlight } from './thrown.ts';

const height = 300;
const ground = 258;
const hand = 40;
const perFoot = 11.2;
const upPerFoot = 3 * perFoot;

const place = ([, y, z]: Vector): Px => [hand + (55 - feet(y)) * perFoot, ground - feet(z) * upPerFoot];
const moments = (flight: Flight): number[] => Array.from({ length: 41 }, (_, i) => (flight.end.timeS * i) / 40);

/** Where the release would have taken the ball under gravity alone, at the distance where the thrown ball is at that moment. */
function underGravity(timeS: number): Vector {
  const [, , vz] = slow.velocityMps;
  return [0, slowFlight.positionAt(timeS)[1], slow.positionM[2] + vz * timeS - 0.5 * standardGravityMps2 * timeS * timeS];
}

/** The changeup as thrown, without its spin, and what its break is counted from. */
export function inTheAir(): Drawing {
  const spinless = flyPitch({ ...slow, spinRadps: [0, 0, 0] }, air);
  const at = { thrown: place(slowFlight.end.positionM), spinless: place(spinless.end.positionM), fallen: place(underGravity(slowFlight.end.timeS)) };
  const rightOf = at.thrown[0] + 14;
  return {
    width: 800, height,
    title: 'Side view of an 85 mph changeup: as thrown, without spin, and under gravity alone; the induced vertical break is the way between the first and the last at the plate.',
    parts: [
      line([20, ground], [780, ground], 'line'),
      line([hand - 8, ground - 3], [hand + 8, ground - 3], 'quiet thick'),
      line([place([0, 17 * inchM, 0])[0], ground], [place([0, 0, 0])[0], ground], 'thick'),
      curve(moments(slowFlight).map((timeS) => place(underGravity(timeS))), 'quiet dotted'),
      curve(moments(spinless).map((timeS) => place(spinless.positionAt(timeS))), 'fastball dashed'),
      curve(moments(slowFlight).map((timeS) => place(slowFlight.positionAt(timeS))), 'work thick'),
      dot(place(slow.positionM), 4, 'work full'),
      dot(at.thrown, 4, 'work full'),
      line([rightOf, at.thrown[1]], [rightOf, at.fallen[1]], 'attention'),
      line([rightOf - 5, at.thrown[1]], [rightOf + 5, at.thrown[1]], 'attention'),
      line([rightOf - 5, at.fallen[1]], [rightOf + 5, at.fallen[1]], 'attention'),
      tell([rightOf + 12, (at.thrown[1] + at.fallen[1]) / 2 - 14], ['induced', 'vertical break', `${movedIn(slowFlight).up.toFixed(1)} in`]),
      say([hand + 12, place(slow.positionM)[1] - 8], 'release'),
      ...key([60, ground - 82]),
      say([hand - 20, ground + 24], '55 ft from the plate’s rear point; heights drawn three times as large', 'quiet'),
      say([780, ground + 24], `without spin ${inches(spinless.end.positionM[2] - slowFlight.end.positionM[2]).replace('-', '')} lower`, 'quiet', 'end'),
    ],
  };
}

function key([x, y]: Px): string[] {
  const rows = [['work thick', 'with its spin: 85 mph, 1700 rpm, 2:00, 95 % across'], ['fastball dashed', 'same release, no spin: drag and gravity'], ['quiet dotted', 'same release, gravity alone, at the same moment']] as const;
  return rows.flatMap(([kind, words], row) => [line([x, y + row * 22], [x + 34, y + row * 22], kind), say([x + 44, y + row * 22 + 5], words, 'quiet')]);
}
