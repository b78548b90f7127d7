import { verticalApproachRad } from '../../../core/flight/approach.ts';
import { ball, plate as homePlate } from '../../../core/flight/ball.ts';
import { degreeRad, inchM } from '../../core/flight/feet-and-miles.ts';
import { arrow, box, curve, dot, line, say, tell, type Drawing, type Px } from './svg.ts';
import { slowFlight } from './thrown.ts';

const floor = 280;
const perInch = 5.6;

/** Where the ball crosses the front of the plate, and how steeply. */
export function atThePlate(): Drawing {
  return {
    width: 800, height: 362,
    title: 'Left: the ball at the front of the plate as the catcher sees it, with its height and its distance from the middle. Right: the vertical approach angle is the slope of the path there.',
    parts: [...catcherView(), ...slope()],
  };
}

function catcherView(): string[] {
  const [x, , z] = slowFlight.end.positionM;
  const at = (xM: number, zM: number): Px => [190 + (xM / inchM) * perInch, floor - (zM / inchM) * perInch];
  const half = homePlate.widthM / 2;
  const touches = half + ball.radiusM;
  return [
    box(at(-half, 44 * inchM), homePlate.widthM / inchM * perInch, 44 * perInch, 'wash'),
    ...[-touches, touches].map((edge) => line(at(edge, 44 * inchM), at(edge, 0), 'quiet dotted')),
    line([60, floor], [320, floor], 'line'),
    line(at(-half, 0), at(half, 0), 'thick'),
    line(at(0, 44 * inchM), at(0, 0), 'line'),
    dot(at(x, z), ball.radiusM / inchM * perInch, 'work thick'),
    arrow([at(0, 0)[0] + 70, floor], [at(0, 0)[0] + 70, at(0, z)[1]], 'quiet'),
    tell([at(0, 0)[0] + 80, at(0, z)[1] + 66], [`height`, `${(z / inchM).toFixed(1)} in`]),
    tell([at(0, 0)[0] - 62, at(0, z)[1] - 4], [`${(Math.abs(x) / inchM).toFixed(1)} in left`, 'of middle'], '', 'end'),
    say([190, floor + 24], 'catcher’s view, plate 17 in wide', 'quiet', 'middle'),
    tell([190, floor + 46], [`dotted: with its centre within ${(touches / inchM).toFixed(2)} in`, 'a ball touches the plate’s column'], 'quiet', 'middle'),
  ];
}

function slope(): string[] {
  const { end } = slowFlight;
  const angle = verticalApproachRad(end.velocityMps);
  const tip: Px = [720, 190];
  const backTo = (far: number, turn: number): Px => [tip[0] - far * Math.cos(turn), tip[1] + far * Math.sin(turn)];
  const arc = Array.from({ length: 9 }, (_, i): Px => backTo(190, (angle * i) / 8));
  return [
    line(backTo(280, 0), tip, 'quiet dashed'),
    arrow(backTo(280, angle), tip, 'work thick'),
    curve(arc, 'quiet'),
    dot(tip, 9, 'work'),
    line([tip[0], 90], [tip[0], floor], 'line'),
    say([tip[0], 80], 'front of plate', 'quiet', 'middle'),
    say([backTo(300, 0)[0], 130], `${(angle / degreeRad).toFixed(1)}°: falling`.replace('-', '−')),
    say([backTo(280, 0)[0], tip[1] + 22], 'level', 'quiet'),
  ];
}
