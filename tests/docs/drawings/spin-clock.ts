import { spinAxisFromTilt, tiltFromClock, tiltFromSpin } from '../../../core/flight/spin.ts';
import { degreeRad } from '../../core/flight/feet-and-miles.ts';
import { changeup, tailingFastball } from '../../core/flight/pitches.ts';
import { arrow, curve, dot, line, say, tell, type Drawing, type Px } from './svg.ts';

const middle: Px = [190, 180];
const radius = 112;
const onClock = (tiltRad: number, far: number): Px => [middle[0] + far * Math.sin(tiltRad), middle[1] - far * Math.cos(tiltRad)];
const hourRad = Math.PI / 6;

/** Tilt as a clock for the pitcher, and the spin split into what pushes and what does not. */
export function spinClock(): Drawing {
  return {
    width: 800, height: 370,
    title: 'Left: tilt as a clock seen by the pitcher; the hand points where the spin pushes the ball, 3:00 is a right-hander’s arm side. Right: the spin of a changeup split into the part across the flight, which pushes, and the part along it, which does not.',
    parts: [...clock(), ...split()],
  };
}

function clock(): string[] {
  const tiltRad = tiltFromClock({ hours: changeup.hours, minutes: 0 });
  const baselineRad = tiltFromClock({ hours: tailingFastball.hours, minutes: 0 });
  return [
    dot(middle, radius, 'line'),
    ...Array.from({ length: 12 }, (_, hour) => line(onClock(hour * hourRad, radius - (hour % 3 === 0 ? 12 : 6)), onClock(hour * hourRad, radius), 'quiet')),
    ...[12, 3, 6, 9].map((hour) => say([onClock(hour * hourRad, radius - 26)[0], onClock(hour * hourRad, radius - 26)[1] + 5], String(hour), 'quiet', 'middle')),
    line(onClock(tiltRad - Math.PI / 2, radius - 40), onClock(tiltRad + Math.PI / 2, radius - 40), 'work dashed'),
    arrow(middle, onClock(baselineRad, radius), 'fastball thick'),
    arrow(middle, onClock(tiltRad, radius), 'work thick'),
    dot(middle, 4, 'full quiet'),
    tell([onClock(baselineRad, radius + 12)[0], onClock(baselineRad, radius + 12)[1] - 4], ['fastball 1:00'], 'quiet'),
    tell([onClock(tiltRad, radius + 12)[0], onClock(tiltRad, radius + 12)[1]], ['changeup 2:00'], ''),
    tell([onClock(tiltRad + Math.PI / 2, radius + 10)[0] + 24, onClock(tiltRad + Math.PI / 2, radius + 10)[1] + 8], ['dashed: axis', 'across the flight'], 'quiet'),
    say([middle[0], 24], 'lifts: backspin', 'quiet', 'middle'),
    say([middle[0], middle[1] + radius + 24], 'sinks: topspin', 'quiet', 'middle'),
    tell([middle[0] - radius - 12, middle[1]], ['glove', 'side'], 'quiet', 'end'),
    tell([middle[0] + radius + 12, middle[1] + 8], ['arm side'], 'quiet'),
    say([middle[0], middle[1] + radius + 56], 'as a right-handed pitcher sees it', 'quiet', 'middle'),
  ];
}

function split(): string[] {
  const { efficiency, spinRpm } = changeup;
  const { gyroRad, transverseRpm } = tiltFromSpin(spinAxisFromTilt({ tiltRad: 1, efficiency, spinRpm }))!;
  const from: Px = [545, 280];
  const long = 200;
  const tip: Px = [from[0] + long * Math.sin(gyroRad), from[1] - long * Math.cos(gyroRad)];
  const across: Px = [from[0], tip[1]];
  const arc = Array.from({ length: 9 }, (_, i): Px => [from[0] + 70 * Math.sin((gyroRad * i) / 8), from[1] - 70 * Math.cos((gyroRad * i) / 8)]);
  return [
    arrow([from[0] - 40, from[1]], [from[0] + 215, from[1]], 'line'),
    say([from[0] + 215, from[1] + 24], 'direction of flight', 'quiet', 'end'),
    arrow(from, across, 'work thick'),
    arrow(across, tip, 'fastball thick'),
    arrow(from, tip, 'thick'),
    curve(arc, 'quiet'),
    tell([from[0] - 14, (from[1] + tip[1]) / 2 - 10], ['across, pushes:', `${Math.round(transverseRpm)} rpm`], '', 'end'),
    say([from[0] - 4, tip[1] - 14], `along, pushes nothing: ${Math.round(spinRpm * Math.sin(gyroRad))} rpm`),
    tell([(from[0] + tip[0]) / 2 + 20, (from[1] + tip[1]) / 2 - 4], [`all of it: ${spinRpm} rpm`, `efficiency ${Math.round(100 * efficiency)} %`]),
    say([from[0] + 34, from[1] - 44], `gyro ${(gyroRad / degreeRad).toFixed(1)}°`, 'quiet'),
  ];
}
