import { describe, expect, test } from 'vitest';
import type { GapView, SessionView, ThrowErrors, ThrowView, UnexplainedView } from '../../core/facts/views.ts';
import { degToRad, feetToM, inchesToM, mphToMps } from '../../core/units/convert.ts';
import type { NumberName, NumberRow } from '../../web/throw-numbers/number-row.ts';
import { numberGroups } from '../../web/throw-numbers/groups.ts';
import { throwNumbers } from '../../web/words/throw-numbers.ts';
import { speechIn, type Speech } from '../../web/words/speech.ts';
import { formingMound, InventedMound, liveMound, RIGHT_HANDER } from './invented-mound.ts';

const ENGLISH = speechIn('en', 'imperial');
const SPANISH = speechIn('es', 'metric');
const inches2 = (value: number): number => inchesToM(value) ** 2;

const ERRORS: ThrowErrors = {
  speedMps: mphToMps(0.12), verticalM: inchesToM(0.3), armSideM: inchesToM(0.25), flightTimeS: 0.0004, releaseHeightM: inchesToM(0.08), releaseArmSideM: inchesToM(0.07),
  plateHeightM: inchesToM(0.06), plateRightM: inchesToM(0.05), plateSpeedMps: mphToMps(0.2), verticalApproachRad: degToRad(0.09), horizontalApproachRad: degToRad(0.001),
};
const UNEXPLAINED: UnexplainedView = {
  kind: 'unexplained', verticalM: inchesToM(-1.4), armSideM: inchesToM(3), spinVerticalM: inchesToM(9.1), spinArmSideM: inchesToM(10.6), pushM: inchesToM(14), acrossM: inchesToM(2.9),
  measurement: [inches2(0.5), 0, inches2(0.4)], model: [inches2(0.8), 0, inches2(0.9)],
};
const GAP: GapView = {
  aimedArrivalS: 0.0467, decisionS: 0.23, decisionBeforeS: 0.175, decisionBasis: 'same-time', decisionWidths: 1.62, plateWidths: 2.44, lineStepS: 0.1, lineWidths: [0.1, 2.44],
};
/** A throw of which everything is known. */
const SEEN: Partial<ThrowView> = {
  speedMps: mphToMps(85), extensionM: feetToM(6.25), releaseHeightM: feetToM(5.92), releaseArmSideM: feetToM(-1.5), flightTimeS: 0.4521, flightTimeFrom: 'path', verticalM: inchesToM(10.7), armSideM: inchesToM(16.1),
  unexplained: UNEXPLAINED, spinRpm: 1704, tiltRad: degToRad(60), efficiency: 0.95, gyroRad: degToRad(-18.2), spinFrom: 'measured', seamAxis: { latitudeDeg: 62, longitudeDeg: -20 },
  plateHeightM: inchesToM(36.2), plateRightM: inchesToM(-2), plateSpeedMps: mphToMps(77.4), verticalApproachRad: degToRad(-6), horizontalApproachRad: degToRad(1.6), standardErrors: ERRORS, gap: GAP,
};

function live(as: Partial<ThrowView> = {}): { thrown: ThrowView; session: SessionView } {
  const view = liveMound().view();
  return { thrown: { ...view.throws.at(-1)!, ...as }, session: view.session! };
}

function rowsOf({ thrown, session }: { thrown: ThrowView; session: SessionView }, speech: Speech = ENGLISH): ReadonlyMap<NumberName, NumberRow> {
  return new Map(numberGroups(thrown, session, speech).flatMap(({ rows }) => rows).map((row) => [row.number, row]));
}

describe('the numbers of a throw that was seen from release to plate', () => {
  const rows = rowsOf(live(SEEN));

  test.each<[NumberName, string, string]>([
    ['speed', '85.0 mph', 'from the path, standard error 0.12 mph'],
    ['extension', '6.25 ft', 'as the device sent it'],
    ['releaseHeight', '5.92 ft', 'from the path, standard error 0.08 in'],
    ['releaseSide', '1.50 ft glove side', 'from the path, standard error 0.07 in'],
    ['flightTime', '452.1 ms', 'from the path, standard error 0.40 ms'],
    ['vertical', '10.7 in up', 'from the path, standard error 0.30 in'],
    ['horizontal', '16.1 in arm side', 'from the path, standard error 0.25 in'],
    ['spinExplained', '9.1 in up, 10.6 in arm side', 'measured'],
    ['unexplained', '1.4 in down, 3.0 in arm side', 'standard error 0.50 in and 0.40 in by measurement, 0.80 in and 0.90 in by lift law'],
    ['across', '2.9 in', ''],
    ['spinRate', '1,700 rpm', 'as the device sent it'],
    ['tilt', '2:00', 'measured'],
    ['efficiency', '95 %', 'measured'],
    ['gyro', '18° counterclockwise', 'measured'],
    ['seams', 'latitude 62°, longitude −20°', 'as the device sent it'],
    ['plateHeight', '36.2 in high', 'from the path, standard error 0.06 in'],
    ['plateSide', '2.0 in arm side', 'from the path, standard error 0.05 in'],
    ['plateSpeed', '77.4 mph', 'from the path, standard error 0.20 mph'],
    ['verticalApproach', '6.0° down', 'from the path, standard error 0.09°'],
    ['horizontalApproach', '1.6° arm side', 'from the path, standard error under 0.01°'],
    ['arrival', '47 ms later', 'fastball aimed at the same place, from the paths'],
    ['decisionGap', '1.6 ball widths', 'fastball aimed at the same place, from the paths, 175 ms before the fastball arrives, at the same time'],
    ['plateGap', '2.4 ball widths', 'fastball aimed at the same place, from the paths'],
  ])('%s is %s, and says what that rests on and how sure it is', (number, value, rests) => {
    const row = rows.get(number)!;
    expect([row.value, row.rests.join(', '), row.known]).toEqual([value, rests, true]);
  });

  test('stand in the groups in which a coach asks for them', () => {
    const { thrown, session } = live(SEEN);
    expect(numberGroups(thrown, session, ENGLISH).map(({ group, rows: inGroup }) => [group, inGroup.length])).toEqual([['release', 4], ['flight', 6], ['spin', 5], ['plate', 5], ['fastball', 8]]);
  });

  test('are said in Spanish and in centimetres as well', () => {
    const spanish = rowsOf(live(SEEN), SPANISH);
    expect(spanish.get('plateHeight')!.value).toBe('91.9 cm de alto');
    expect(spanish.get('horizontal')!).toMatchObject({ name: 'Quiebre horizontal', value: '40.9 cm lado del brazo', rests: ['de la trayectoria', 'error estándar 0.64 cm'] });
    expect(spanish.get('releaseHeight')!.value).toBe('1.80 m');
  });
});

describe('a number that a throw does not have', () => {
  test('is replaced by the reason, and has no standard error', () => {
    const rows = rowsOf(live({ ...SEEN, plateHeightM: 'not-defined', verticalM: 'problem', tiltRad: 'not-visible' }));
    expect(rows.get('plateHeight')).toMatchObject({ value: 'not defined here', known: false, rests: [] });
    expect(rows.get('vertical')).toMatchObject({ value: 'measurement contradicts itself', known: false, rests: [] });
    expect(rows.get('tilt')).toMatchObject({ value: 'not visible to this device', known: false, rests: [] });
  });

  test('of the extension says what is taken instead', () => {
    expect(rowsOf(live()).get('extension')).toMatchObject({ value: 'not sent', rests: ['5.50 ft in front of the rubber is taken instead'] });
  });

  test('of the gyro still says how far the axis leans, one way or the other, where the efficiency is known', () => {
    expect(rowsOf(live({ efficiency: 0.9, gyroRad: 'not-sent' })).get('gyro')).toMatchObject({ value: 'not sent', rests: ['by the efficiency 26°, one way or the other'] });
    expect(rowsOf(live({ efficiency: 'not-sent', gyroRad: 'not-sent' })).get('gyro')!.rests).toEqual([]);
  });

  test('of unexplained movement says why this device cannot see it, in one row for all three', () => {
    const rows = rowsOf(live({ unexplained: { kind: 'not-visible', reason: 'axis-inferred' } }));
    expect(rows.get('unexplained')).toMatchObject({ value: 'not visible to this device', rests: ['It worked the axis out from the path, so whatever a seam did is already in the axis.'] });
    expect(rows.has('across') || rows.has('spinExplained')).toBe(false);
  });

  test('of an error that the device does not tell is said to be unknown, and only the lift laws’ is a number', () => {
    expect(rowsOf(live({ unexplained: { ...UNEXPLAINED, measurement: null, acrossM: null } })).get('unexplained')!.rests).toEqual(['standard error unknown by measurement, 0.80 in and 0.90 in by lift law']);
    expect(rowsOf(live({ unexplained: { ...UNEXPLAINED, acrossM: null } })).get('across')).toMatchObject({ value: 'spin pushes too little to tell', known: false });
  });
});

describe('what a number rests on', () => {
  test.each([['path', 'from the path'], ['device', 'as the device sent it'], ['spin', 'worked out from the spin'], ['speed', 'worked out from the speed alone']] as const)('a flight time by %s is said to be %s', (flightTimeFrom, said) => {
    expect(rowsOf(live({ flightTimeFrom, standardErrors: null })).get('flightTime')!.rests).toEqual([said]);
  });

  test('is the spin for a movement that nobody saw, and so for its separation', () => {
    const view = liveMound(RIGHT_HANDER, new InventedMound().spinOnly()).view();
    const rows = rowsOf({ thrown: view.throws.at(-1)!, session: view.session! });
    expect(rows.get('vertical')!.rests).toEqual(['inferred from the spin']);
    expect(rows.get('verticalSeparation')!.rests).toEqual(['Fastball baseline 1, inferred from the spin']);
    expect(rows.get('speed')!.rests).toEqual(['as the device sent it']);
    expect(rows.get('tilt')!.rests).toEqual(['axis inferred']);
    expect(rows.get('decisionGap')).toMatchObject({ value: 'not visible to this device', known: false });
  });
});

describe('against the fastball', () => {
  test('a throw is told by its separation and its miss, in the words of the other screens', () => {
    const rows = rowsOf(live());
    // The middle of the means of all pairs of fastballs: 16.15 in up, 7.45 in arm side, 94.1 mph. The throw: 10.8, 10.4 and 84.6; 2.95 in is 0.0749 m to the view's tenth of a millimetre.
    expect(rows.get('pace')!.value).toBe('9.5 mph slower');
    expect(rows.get('verticalSeparation')!.value).toBe('5.4 in down');
    expect(rows.get('horizontalSeparation')!.value).toBe('2.9 in arm side');
    expect(rows.get('miss')!.value).toMatch(/in short/);
  });

  test('a fastball has neither gap nor miss', () => {
    const view = liveMound().view();
    const rows = rowsOf({ thrown: view.throws[1]!, session: view.session! });
    expect(rows.has('pace')).toBe(true);
    expect(rows.has('miss') || rows.has('decisionGap') || rows.has('plateGap')).toBe(false);
  });

  test('nothing is told before there is one, of an excluded throw, or of one that contradicts itself', () => {
    const forming = formingMound().view();
    expect(rowsOf({ thrown: forming.throws.at(-1)!, session: forming.session! }).get('separation')!.value).toBe('No fastball yet to hold this against');
    expect(rowsOf(live({ separation: null, excluded: 'misread' })).get('separation')!.value).toBe('Excluded');
    expect(rowsOf(live({ separation: null, problem: 'too short' })).get('separation')!.value).toBe('measurement contradicts itself');
  });
});

test('every number tells in one line, in both languages, what it says and ends with a full stop', () => {
  for (const { names, tells } of [throwNumbers.en, throwNumbers.es]) {
    expect(Object.keys(tells)).toEqual(Object.keys(names));
    expect(Object.values(tells).filter((line) => !line.endsWith('.') || line.length > 150)).toEqual([]);
  }
});
