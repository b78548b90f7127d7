import { describe, expect, it } from 'vitest';
import { impossibility } from '../../core/facts/bounds.ts';
import { deviceFrameSchema, helloSchema } from '../../core/facts/frames.ts';
import { analyseThrow } from '../../core/session/analyse.ts';
import { norm } from '../../core/flight/vector.ts';
import { mToInches, radpsToRpm, radToDeg } from '../../core/units/convert.ts';
import { tiltFromSpin } from '../../core/flight/spin.ts';
import { ATHLETES } from '../../simulators/athletes.ts';
import { deviceBefore } from '../../simulators/device.ts';
import { misread } from '../../simulators/misread.ts';
import { randomFrom } from '../../simulators/random.ts';
import { FULL_MOUND, measureMany, movementOf, standardDeviation, throwMany } from './throwing.ts';

const BEFORE = ATHLETES.map((athlete) => ({ name: athlete.profile.name, athlete, device: deviceBefore(athlete) }));
const COUNT = 200;

describe('simulated devices', () => {
  it.each(BEFORE)('what is sent of $name follows the protocol and is possible on a mound', ({ athlete, device }) => {
    expect(helloSchema.safeParse({ kind: 'hello', protocol: 1, run: 'run-1', mound: 'north-1', token: 'x', ...device.declares }).error).toBeUndefined();
    for (const [intent, grip] of [['four-seam', null], ['changeup', athlete.tried[0].grip], ['changeup', athlete.tried[1].grip], ['curve', null], ['slider', null], ['split', null]] as const) {
      for (const body of measureMany(athlete, throwMany(athlete, intent, grip, 20))) {
        for (const sent of [body, misread(body, randomFrom(2, 'misread'))]) {
          expect(deviceFrameSchema.safeParse({ kind: 'throw', sequence: 1, time: 0, body: sent }).error).toBeUndefined();
          expect(impossibility(sent, device.declares.units, { stage: 'mound', distanceM: FULL_MOUND.distanceM })).toBeNull();
        }
      }
    }
  });

  it('one sends the path with an axis of its own and where on the ball it lies, one constant acceleration with an inferred axis, one a summary of speed and spin', () => {
    const sent = ATHLETES.map((athlete) => measureMany(athlete, throwMany(athlete, 'four-seam', null, 1))[0]!);
    expect(sent.map((body) => Object.keys(body))).toEqual([['path', 'spin', 'extension', 'seams'], ['summary', 'spin'], ['constant', 'spin', 'extension']]);
    expect(sent[0]!.path!.length).toBeGreaterThanOrEqual(60);
    expect(sent[0]!.path!.length).toBeLessThanOrEqual(300);
    expect(BEFORE.map(({ device: { declares } }) => [declares.sight, declares.axis, declares.units.speed])).toEqual([
      ['full-flight', 'measured', 'mph'], ['spin-only', 'measured', 'mph'], ['full-flight', 'inferred', 'm/s'],
    ]);
  });

  it.each(BEFORE)('the errors that the device before $name declares are the errors that it makes', ({ athlete, device }) => {
    const balls = throwMany(athlete, 'changeup', athlete.tried[0].grip, COUNT);
    const { declares } = device;
    const off = measureMany(athlete, balls).map((body, index) => {
      const { launch, flight } = balls[index]!;
      const read = analyseThrow(body, declares, { hand: athlete.profile.hand, stage: 'mound', distanceM: FULL_MOUND.distanceM });
      const number = (reading: unknown): number => reading as number;
      const turned = radToDeg(number(read.tiltRad) - tiltFromSpin(launch.spinRadps, launch.velocityMps)!.tiltRad!);
      return {
        spinRpm: number(read.spinRpm) - radpsToRpm(norm(launch.spinRadps)),
        speedMps: number(read.speedMps) - norm(launch.velocityMps),
        verticalM: number(read.verticalM) - movementOf(athlete, balls[index]!).verticalM,
        tiltDeg: turned - 360 * Math.round(turned / 360),
        positionM: body.path === undefined ? 0 : body.path[30]![3] * 0.3048 - flight.positionAt(body.path[30]![0])[2],
      };
    });
    const spread = (of: keyof (typeof off)[number]): number => standardDeviation(off.map((one) => one[of]));
    const { standardErrors } = declares;
    // 200 throws know a standard deviation to 5 %; four of those, and rounding.
    const expectHonest = (measured: number, declared: number): void => {
      expect(measured / declared).toBeGreaterThan(0.75);
      expect(measured / declared).toBeLessThan(1.25);
    };
    expectHonest(spread('spinRpm'), standardErrors.spinRate!);
    if (standardErrors.position !== undefined) expectHonest(spread('positionM'), standardErrors.position * 0.3048);
    if (standardErrors.speed !== undefined) expectHonest(spread('speedMps'), standardErrors.speed * (declares.units.speed === 'mph' ? 0.44704 : 1));
    if (standardErrors.movement !== undefined) expectHonest(spread('verticalM'), standardErrors.movement * (declares.units.movement === 'in' ? 0.0254 : 1));
    if (standardErrors.tilt !== undefined) expectHonest(spread('tiltDeg'), standardErrors.tilt);
  });

  it('only the device with sight of the flight and an axis of its own sees what the seam does', () => {
    const [seam] = ATHLETES;
    const balls = throwMany(seam, 'changeup', seam.tried[1].grip, 40);
    const verticalIn = (device: ReturnType<typeof deviceBefore>): number => {
      const random = randomFrom(1, 'measure');
      const read = balls.map((ball) => analyseThrow(device.measure(ball, random)!, device.declares, { hand: 'right', stage: 'mound', distanceM: FULL_MOUND.distanceM }).verticalM as number);
      return mToInches(read.reduce((sum, value) => sum + value, 0) / read.length);
    };
    const [, turnover] = ATHLETES;
    // The seam pushes 0.034 down: about three inches that a spin reader cannot know of.
    expect(verticalIn(deviceBefore(turnover)) - verticalIn(deviceBefore(seam))).toBeGreaterThan(2.5);
  });
});
