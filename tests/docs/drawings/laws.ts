import { spinParameterOf } from '../../../core/flight/aerodynamics.ts';
import { airDensityAt } from '../../../core/flight/air.ts';
import { flyPitch } from '../../../core/flight/fly.ts';
import { publishedLaws } from '../../../core/flight/lift-laws.ts';
import { launchOf, tailingFastball } from '../../core/flight/pitches.ts';
import { box, curve, dot, line, say, type Drawing, type Px } from './svg.ts';
import { movedIn, slow } from './thrown.ts';

/** The three published lift laws, and where the page's pair lives on them. */
export function liftLaws(): Drawing {
  const x = (s: number): number => 70 + s * 1600;
  const y = (lift: number): number => 300 - lift * 800;
  const fast = launchOf(tailingFastball);
  const marks = [['fastball', spinParameterOf(fast.spinRadps, fast.velocityMps)], ['changeup', spinParameterOf(slow.spinRadps, slow.velocityMps)]] as const;
  const kinds = ['work thick', 'attention dashed', 'fastball thick'];
  const names = ['Nathan (flown with)', 'Sawicki, Hubbard & Stronge', 'Cross'];
  return {
    width: 800, height: 360,
    title: 'Lift coefficient over spin parameter by three published laws: they part by up to a seventh where pitches live, and that is the doubt of every number that rests on lift.',
    parts: [
      box([x(0.12), y(0.34)], x(0.3) - x(0.12), y(0) - y(0.34), 'wash'),
      line([x(0), y(0)], [x(0.36), y(0)], 'line'),
      ...[0, 0.1, 0.2, 0.3].map((at) => say([x(at), y(0) + 22], at.toFixed(1), 'quiet', 'middle')),
      ...[0.1, 0.2, 0.3].map((at) => say([x(0) - 10, y(at) + 5], at.toFixed(1), 'quiet', 'end')),
      ...publishedLaws.map((law, index) => curve(Array.from({ length: 73 }, (_, i): Px => [x(i * 0.005), y(law.liftCoefficient(i * 0.005))]), kinds[index]!)),
      ...marks.flatMap(([name, s]) => [line([x(s), y(0)], [x(s), y(0.31)], 'quiet dotted'), dot([x(s), y(publishedLaws[0].liftCoefficient(s))], 5, 'work full'), say([x(s) + (name === 'fastball' ? 8 : -8), y(0.315)], name, 'quiet', name === 'fastball' ? 'start' : 'end')]),
      ...names.flatMap((name, index) => [line([x(0.21) + 70, y(0.11) + index * 24], [x(0.21) + 104, y(0.11) + index * 24], kinds[index]!), say([x(0.21) + 114, y(0.11) + index * 24 + 5], name)]),
      say([70, 346], 'rightward: spin parameter R·ω across / v; upward: lift coefficient; shaded: where pitches live', 'quiet'),
    ],
  };
}

/** What height does to the movement of the pair. */
export function thinAir(): Drawing {
  const heights = Array.from({ length: 11 }, (_, i) => i * 250);
  const moved = heights.map((altitudeM) => {
    const conditions = { airDensityKgM3: airDensityAt({ temperatureC: 20, relativeHumidity: 0.5, altitudeM }) };
    return { changeup: movedIn(flyPitch(slow, conditions)), fastball: movedIn(flyPitch(launchOf(tailingFastball), conditions)) };
  });
  const x = (altitudeM: number): number => 80 + altitudeM * 0.19;
  const y = (inches: number): number => 300 - inches * 13;
  const rows = [
    ['fastball, vertical', ({ fastball }: (typeof moved)[number]) => fastball.up, 'fastball thick'],
    ['changeup, arm side', ({ changeup }: (typeof moved)[number]) => changeup.armSide, 'work dashed'],
    ['changeup, vertical', ({ changeup }: (typeof moved)[number]) => changeup.up, 'work thick'],
  ] as const;
  return {
    width: 800, height: 360,
    title: 'Induced break of fastball and changeup over the height of the mound above the sea: all of it shrinks with thinner air, and so does the separation between the two.',
    parts: [
      line([x(0), y(0)], [x(2500), y(0)], 'line'),
      ...[0, 500, 1000, 1500, 2000, 2500].map((at) => say([x(at), y(0) + 22], `${at} m`, 'quiet', 'middle')),
      ...[5, 10, 15].map((at) => say([x(0) - 10, y(at) + 5], `${at} in`, 'quiet', 'end')),
      ...rows.flatMap(([name, of, kind]) => [curve(moved.map((each, i): Px => [x(heights[i]!), y(of(each))]), kind), say([x(2500) + 12, y(of(moved.at(-1)!)) + 5], `${name} ${of(moved.at(-1)!).toFixed(1)} in`)]),
      ...rows.map(([, of]) => say([x(0) + 6, y(of(moved[0]!)) - 9], `${of(moved[0]!).toFixed(1)} in`, 'quiet')),
      say([80, 346], 'induced break, drag kept; 20 °C, half saturated, standard pressure of the height', 'quiet'),
    ],
  };
}
