import { withinReach } from '../../../core/coaching/within-reach.ts';
import { reachRegion } from '../../../core/flight/reach.ts';
import { sensitivities } from '../../../core/flight/sensitivities.ts';
import { tiltToClock } from '../../../core/flight/spin.ts';
import { knownArm } from '../../core/flight/arms.ts';
import { inchM, mphMps } from '../../core/flight/feet-and-miles.ts';
import { axes, outline, planeAbout, ring, type OnPlane } from './plane.ts';
import { arrow, cross, dot, line, oval, say, tell, type Drawing } from './svg.ts';

/** The arm of the page's fastball, of which nothing else is known, and a zone that spin alone does not reach. */
const arm = knownArm();
const zone = { kind: 'ellipse', verticalM: -12 * inchM, armSideM: 14 * inchM, verticalRadiusM: 2 * inchM, armSideRadiusM: 2 * inchM } as const;
const nearZone = { ...zone, verticalM: -10 * inchM, armSideM: 6 * inchM } as const;

export function reach(): Drawing {
  const plane = planeAbout([390, 70], 10.5);
  const { outline: edge, hole } = reachRegion(arm)!;
  const { toZone } = withinReach(arm, zone)!;
  const { separation, leftOver, thrown } = toZone;
  const aimed: OnPlane = { verticalM: separation.verticalM + leftOver.verticalM, armSideM: separation.armSideM + leftOver.armSideM };
  const { hours, minutes } = tiltToClock(thrown.tiltRad);
  return {
    width: 800, height: 530,
    title: 'The region of the separation plane that an arm can reach by spin alone is a ring about the place without lift; a target zone outside it leaves inches over for a seam effect.',
    parts: [
      ring(plane, edge, hole!, 'wash'),
      outline(plane, edge, 'line'),
      outline(plane, hole!, 'line'),
      ...axes(plane, { left: -32, right: 16, top: 4, bottom: -40, every: 8 }),
      dot(plane.at({ verticalM: 0, armSideM: 0 }), 7, 'fastball full'),
      oval(plane.at(zone), [zone.armSideRadiusM / inchM * plane.perInch, zone.verticalRadiusM / inchM * plane.perInch], 0, 'work'),
      dot(plane.at(separation), 5, 'work full'),
      arrow(plane.at(separation), plane.at(aimed), 'attention'),
      cross(plane.at(zone), 'work'),
      say([plane.at({ verticalM: 0, armSideM: 0 })[0] - 12, 78], 'fastball', 'quiet', 'end'),
      tell([plane.at(zone)[0] + 36, plane.at(zone)[1] - 6], ['target zone', `left over to its edge: ${(Math.hypot(leftOver.verticalM, leftOver.armSideM) / inchM).toFixed(1)} in`]),
      tell([590, 390], [`nearest by spin: tilt ${hours}:${String(minutes).padStart(2, '0')},`, `${Math.round(100 * thrown.efficiency)} % across, ${Math.round(thrown.spinRpm)} rpm,`, `${(thrown.speedMps / mphMps).toFixed(0)} mph`], 'quiet'),
      tell([plane.at({ verticalM: 0, armSideM: -10 * inchM })[0], plane.at({ verticalM: -18 * inchM, armSideM: 0 })[1]], ['hole: this arm spins', 'every ball more', 'than that'], 'quiet', 'middle'),
      say([plane.at({ verticalM: 0, armSideM: -10 * inchM })[0], plane.at({ verticalM: -36 * inchM, armSideM: 0 })[1]], 'within reach by spin', 'quiet', 'middle'),
    ],
  };
}

/** How far one step of each thing moves the throw that comes nearest to the middle of a zone. */
export function steps(): Drawing {
  const { thrown, separation } = withinReach(arm, nearZone)!.toCentre;
  const found = sensitivities(arm, thrown)!;
  const perInch = 60;
  const middle = [590, 70] as const;
  const rows = [
    ['10° of tilt, clockwise', found.perTenDegrees, 'work thick'],
    ['5 points of efficiency more', found.perFivePoints, 'attention thick'],
    ['100 rpm more', found.perHundredRpm, ''],
    ['1 mph faster', found.perMph, 'fastball thick'],
  ] as const;
  const { hours, minutes } = tiltToClock(thrown.tiltRad);
  const words = ({ verticalM, armSideM }: OnPlane): string => `${signed(verticalM)} up, ${signed(armSideM)} arm side`;
  return {
    width: 800, height: 310,
    title: 'How far 10° of tilt, 100 rpm, 5 points of efficiency and 1 mph move one changeup on the separation plane: arrows from its place.',
    parts: [
      ...rows.map(([, step, kind]) => arrow(middle, [middle[0] + (step.armSideM / inchM) * perInch, middle[1] - (step.verticalM / inchM) * perInch], kind)),
      dot(middle, 6, 'work full'),
      tell([30, 40], ['changeup', `${signed(separation.verticalM)} in up, ${signed(separation.armSideM)} in arm side`, `tilt ${hours}:${String(minutes).padStart(2, '0')}, ${Math.round(100 * thrown.efficiency)} % across,`, `${Math.round(thrown.spinRpm)} rpm, ${(thrown.speedMps / mphMps).toFixed(0)} mph`], 'quiet'),
      ...rows.flatMap(([name, step, kind], row) => [dot([36, 206 + row * 24], 5, kind), say([52, 211 + row * 24], `${name}: ${words(step)}`)]),
      line([middle[0] - 60, 280], [middle[0], 280], 'quiet'),
      say([middle[0] + 10, 285], '1 in', 'quiet'),
    ],
  };
}

function signed(metres: number): string {
  const value = (metres / inchM).toFixed(1);
  if (Number(value) === 0) return '0.0';
  return value.startsWith('-') ? `−${value.slice(1)}` : `+${value}`;
}
