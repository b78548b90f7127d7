import { describe, expect, test } from 'vitest';
import { spinAxisFromTilt, tiltFromClock, tiltFromSpin } from '../../core/flight/spin.ts';
import { cross } from '../../core/flight/vector.ts';
import { degreeRad } from '../core/flight/feet-and-miles.ts';

const rpm = 30 / Math.PI;

describe('Efficiency and gyro angle (efficiency as active spin ratio: Young & Nathan, 2020, published; values computed independently)', () => {
  test.each([[0.95, 18.1949], [0.9, 25.8419], [0.8, 36.8699]])('efficiency %f is a gyro angle of %f°', (efficiency, gyroDeg) => {
    const tilt = tiltFromSpin(spinAxisFromTilt({ tiltRad: 1, efficiency, spinRpm: 2000 }))!;
    expect(tilt.gyroRad / degreeRad).toBeCloseTo(gyroDeg, 4);
  });

  test('2400 rpm at 0.90 is 2160 across and 1046.136 along (computed independently)', () => {
    const spin = spinAxisFromTilt({ tiltRad: 0, efficiency: 0.9, spinRpm: 2400 });
    expect(tiltFromSpin(spin)!.transverseRpm).toBeCloseTo(2160, 9);
    expect(Math.abs(spin[1]) * rpm).toBeCloseTo(1046.136, 3);
  });
});

describe('Tilt (the hour hand as the pitcher sees it: common practice of the trade)', () => {
  test('the Magnus force of tilt h points along (−sin(πh/6), cos(πh/6)), the axis along (−cos, 0, −sin)', () => {
    for (let h = 0; h < 12; h += 0.5) {
      const angle = (Math.PI * h) / 6;
      const spin = spinAxisFromTilt({ tiltRad: tiltFromClock({ hours: Math.floor(h), minutes: (h % 1) * 60 }), efficiency: 1, spinRpm: rpm });
      const push = cross(spin, [0, -1, 0]);
      [-Math.cos(angle), 0, -Math.sin(angle)].forEach((value, i) => expect(spin[i]).toBeCloseTo(value, 12));
      [-Math.sin(angle), 0, Math.cos(angle)].forEach((value, i) => expect(push[i]).toBeCloseTo(value, 12));
    }
  });

  test('12:00 lifts, 6:00 sinks, 3:00 pushes to a right-hander’s arm side, −x', () => {
    const pushAt = (hours: number) => cross(spinAxisFromTilt({ tiltRad: tiltFromClock({ hours, minutes: 0 }), efficiency: 1, spinRpm: 2000 }), [0, -40, 0]);
    expect(pushAt(12)[2]).toBeGreaterThan(0);
    expect(pushAt(6)[2]).toBeLessThan(0);
    expect(pushAt(3)[0]).toBeLessThan(0);
    expect(pushAt(9)[0]).toBeGreaterThan(0);
  });
});
