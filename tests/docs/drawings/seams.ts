import { seamBoundM, seamEffect, type SeamEffect } from '../../../core/coaching/seam-effect.ts';
import { tallyOf } from '../../../core/statistics/tally.ts';
import { flyPitch } from '../../../core/flight/fly.ts';
import { fitPath, type PathFitOptions } from '../../../core/flight/path-fit.ts';
import { seenInSamples } from '../../../core/flight/seen-throw.ts';
import { tiltFromSpin } from '../../../core/flight/spin.ts';
import { unexplainedMovement, type UnexplainedMovement } from '../../../core/flight/unexplained.ts';
import { acrossOfTrial } from '../../core/coaching/seam-throws.ts';
import { degreeRad, inchM } from '../../core/flight/feet-and-miles.ts';
import { changeup } from '../../core/flight/pitches.ts';
import { samplesOf } from '../../core/flight/seen.ts';
import { axes, doubt, planeAbout } from './plane.ts';
import { arrow, cross, curve, dot, line, say, tell, type Drawing } from './svg.ts';
import { air, fastFlight, movedIn, slow, slowFlight } from './thrown.ts';

const push = 0.04;

/** The changeup pushed by its seams across its spin, through 100 samples with 4 mm of noise; its axis measured to 1.5°, its rate to 20 rpm. */
function pushedChangeup(): UnexplainedMovement {
  const tiltRad = 60 * degreeRad;
  const flight = flyPitch(slow, { ...air, seamCoefficient: { x: -push * Math.cos(tiltRad), z: -push * Math.sin(tiltRad) } });
  const { gyroRad } = tiltFromSpin(slow.spinRadps, slow.velocityMps)!;
  const options: PathFitOptions = { ...air, fromYM: slow.positionM[1], alongSpinRadps: Math.sin(gyroRad) * Math.hypot(...slow.spinRadps) };
  const fit = fitPath(samplesOf(flight, { noiseM: 0.004 }), options);
  if (fit.kind === 'problem') throw new Error(fit.sentence);
  const spin = { kind: 'vector', how: 'measured', rateRpm: changeup.spinRpm, spinRadps: slow.spinRadps } as const;
  const answer = unexplainedMovement(seenInSamples(fit, { ...air, spin, spinErrors: { rateRpm: 20, axisRad: 1.5 * degreeRad } }));
  if (answer?.kind !== 'unexplained') throw new Error('nothing to be seen');
  return answer;
}

/** From where the spin takes the ball to where it went, with both doubts. */
export function unexplainedArrow(): Drawing {
  const plane = planeAbout([220, 70], 26);
  const fastball = movedIn(fastFlight);
  const { observed, spinExplained, components, measurement, model, unexplained } = pushedChangeup();
  const onPlane = ({ verticalM, horizontalM }: typeof observed) => ({ verticalM: verticalM - fastball.up * inchM, armSideM: -horizontalM - fastball.armSide * inchM });
  const turned = ([vv, vh, hh]: readonly [number, number, number]) => [vv, -vh, hh] as const;
  const [from, to] = [onPlane(spinExplained), onPlane(observed)];
  const along = (inches: number) => ({ verticalM: from.verticalM + inches * inchM * components!.magnus.verticalM, armSideM: from.armSideM - inches * inchM * components!.magnus.horizontalM });
  const inchesOf = (metres: number): string => (metres / inchM).toFixed(1);
  return {
    width: 800, height: 470,
    title: 'Separation plane: an arrow from where the measured spin takes a changeup to where it was seen; at its foot one ellipse for the measurement and a long narrow one for the lift laws, stretched along the push of the spin.',
    parts: [
      ...axes(plane, { left: -4, right: 20, top: 2, bottom: -14, every: 4 }),
      dot(plane.at({ verticalM: 0, armSideM: 0 }), 7, 'fastball full'),
      say([plane.at({ verticalM: 0, armSideM: 0 })[0] - 14, 46], 'fastball', 'quiet', 'end'),
      line(plane.at(along(-4)), plane.at(along(4)), 'line'),
      doubt(plane, from, turned(measurement!), 'work'),
      doubt(plane, from, turned(model), 'attention dashed'),
      cross(plane.at(from), ''),
      arrow(plane.at(from), plane.at(to), 'thick'),
      dot(plane.at(to), 7, 'work full'),
      say([plane.at(along(4))[0] + 8, plane.at(along(4))[1] + 2], 'push of the spin', 'quiet'),
      tell([plane.at(from)[0] - 26, plane.at(from)[1] + 58], ['spin-explained'], '', 'end'),
      tell([plane.at(to)[0] + 16, plane.at(to)[1] + 2], ['seen']),
      tell([490, 282], [
        `unexplained ${inchesOf(Math.hypot(unexplained.verticalM, unexplained.horizontalM))} in`,
        `${inchesOf(components!.acrossM)} in across the push of the spin,`,
        'where no lift law can show;',
        `${inchesOf(components!.alongM)} in along it`,
      ]),
      line([490, 368], [524, 368], 'work'),
      say([534, 373], 'measurement, 95 %', 'quiet'),
      line([490, 392], [524, 392], 'attention dashed'),
      say([534, 397], 'published lift laws, 95 %', 'quiet'),
      say([220, 452], 'inches beyond the fastball: down, and to the arm side', 'quiet'),
    ],
  };
}

const trials = [0, 0.04, 0.05, 0.08] as const;
const throws = 15;
const pushes = { movementM: 18 * inchM, axisBiasRad: 3 * degreeRad } as const;

/** Fifteen changeups each, with nothing and with more and more push, against both bounds. Seeds 31 to 34, not chosen. */
export function seamVerdicts(): Drawing {
  const [indoorsM, outdoorsM] = (['indoors', 'outdoors'] as const).map((wind) => seamBoundM({ ...pushes, wind })) as [number, number];
  const x = (metres: number): number => 240 + (metres / inchM) * 26;
  const bound = (metres: number, name: string, y: number): string[] => [-metres, metres].flatMap((at) => [line([x(at), 70], [x(at), 70 + trials.length * 66], 'attention dashed')])
    .concat(say([x(metres), y], `${name} ±${(metres / inchM).toFixed(1)} in`, 'quiet', 'middle'));
  return {
    width: 800, height: 420,
    title: 'Four trials of fifteen changeups: their unexplained movement across the push of the spin with its interval, held against the bound indoors and outdoors. A push of four inches cannot be called outdoors.',
    parts: [
      line([x(0), 70], [x(0), 70 + trials.length * 66], 'line'),
      ...bound(indoorsM, 'indoors', 34),
      ...bound(outdoorsM, 'outdoors', 58),
      ...trials.flatMap((seam, row) => trialRow(seam, acrossOfTrial(31 + row, throws, { seam, axisBiasRad: 0, windMps: 0 }), [indoorsM, outdoorsM], 100 + row * 66, x)),
      ...[-4, -2, 0, 2, 4, 6, 8, 10, 12].map((at) => say([x(at * inchM), 356], String(at).replace('-', '−'), 'quiet', 'middle')),
      tell([20, 384], ['inches across the push of the spin, arm side positive; 15 throws each, their mean,', 'and the interval that holds at every look'], 'quiet'),
    ],
  };
}

const WORDS: Readonly<Record<SeamEffect['kind'], string>> = { seen: 'seen', 'not-seen': 'not seen', 'cannot-tell': 'cannot tell', 'too-few': 'too few' };

/** How far a push takes the page's changeup. */
function pushWords(seam: number): string {
  if (seam === 0) return 'no push';
  const pushed = flyPitch(slow, { ...air, seamCoefficient: { x: -seam, z: 0 } });
  return `push ${((slowFlight.end.positionM[0] - pushed.end.positionM[0]) / inchM).toFixed(1)} in`;
}

function trialRow(seam: number, across: readonly number[], bounds: readonly [number, number], y: number, x: (metres: number) => number): string[] {
  const [indoors, outdoors] = bounds.map((boundM) => seamEffect(tallyOf(across), boundM)) as [SeamEffect, SeamEffect];
  if (indoors.kind === 'too-few') throw new Error('too few throws');
  const [lowM, highM] = indoors.intervalM;
  return [
    ...across.map((metres) => dot([x(metres), y - 12], 3, 'work')),
    line([x(lowM), y + 6], [x(highM), y + 6], 'thick'),
    curve([[x(indoors.meanM), y], [x(indoors.meanM), y + 12]], 'thick'),
    say([20, y], pushWords(seam)),
    tell([630, y - 8], [`indoors: ${WORDS[indoors.kind]}`, `outdoors: ${WORDS[outdoors.kind]}`]),
  ];
}
