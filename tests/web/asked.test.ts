import { describe, expect, test } from 'vitest';
import type { GapView, MoundView, SeparationView, ThrowView, UnexplainedView } from '../../core/facts/views.ts';
import { inchesToM, mToInches } from '../../core/units/convert.ts';
import { afterAsking, askedByKey } from '../../web/wall/asked/asked.ts';
import { gapOf } from '../../web/wall/asked/gap-of.ts';
import { seamMapOf, seamsOf, type SpinSeen } from '../../web/wall/asked/seams-of.ts';
import type { Shown } from '../../web/wall/asked/shown.ts';
import { arrowOf, ellipse95, unexplainedWords } from '../../web/wall/asked/unexplained-of.ts';
import { withArrow } from '../../web/wall/asked/with-arrow.ts';
import { planeOf } from '../../web/wall/plane-of.ts';
import { railOf } from '../../web/wall/rail-of.ts';
import { speechIn } from '../../web/words/speech.ts';
import { FASTBALLS, InventedMound, liveMound, RIGHT_HANDER } from './invented-mound.ts';

const ENGLISH = speechIn('en', 'imperial');
const SPANISH = speechIn('es', 'metric');
const GAP: GapView = {
  aimedArrivalS: 0.047, decisionS: 0.225, decisionBeforeS: 0.175, decisionBasis: 'same-time', decisionWidths: 1.62, plateWidths: 5.04, lineStepS: 0.1, lineWidths: [0.1, 0.4, 1.3, 2.9, 5.04],
};

function picture<T>(shown: Shown<T>): T {
  if (shown.kind === 'words') throw new Error(`in words: ${shown.words}`);
  return shown.data;
}

/** The invented session with its last throw as told here. */
function lastOne(as: Partial<ThrowView>): MoundView {
  const view = liveMound().view();
  return { ...view, throws: view.throws.map((thrown, index) => (index === view.throws.length - 1 ? { ...thrown, ...as } : thrown)) };
}

const arrowed = (view: MoundView, as: 'plain' | 'named') => withArrow(planeOf(view, ENGLISH), view, ENGLISH, as);

describe('a picture is asked for', () => {
  test('by its key, and put away by the same key', () => {
    expect(askedByKey('s', null)).toBe('seam-map');
    expect(askedByKey('G', null)).toBe('gap-line');
    expect(askedByKey('S', 'seam-map')).toBeNull();
  });
  test('in place of the one that was shown', () => expect(afterAsking('gap-line', 'seam-map')).toBe('gap-line'));
  test('and other keys have no say in it', () => {
    expect(askedByKey('w', 'seam-map')).toBeUndefined();
    expect(askedByKey('toString', null)).toBeUndefined();
  });
});

describe('the gap line of the last throw', () => {
  test('says ball widths at the decision and at the plate, and by which basis', () => {
    const data = picture(gapOf(lastOne({ gap: GAP }), ENGLISH));
    expect(data.texts.decision).toEqual(['1.6 ball widths', 'at decision']);
    expect(data.texts.plate).toEqual(['5.0 ball widths', 'at the plate']);
    expect(data.texts.decided).toEqual({ at: 'decision 175 ms from arrival', brief: '175 ms from arrival', basis: 'at the same time' });
    expect(data.texts.description).toBe('How far the last throw is from the fastball aimed at the same place: 1.6 ball widths at the decision point, 175 ms before the fastball arrives, at the same time, and 5.0 ball widths when the first of the two is at the plate.');
    expect(picture(gapOf(lastOne({ gap: GAP }), SPANISH)).texts.decision).toEqual(['1.6 anchos de bola', 'al decidir']);
  });

  test('says the decision point that the coach has set, in both languages, and that the line itself stays at the same time', () => {
    const set = lastOne({ gap: { ...GAP, decisionBeforeS: 0.21, decisionBasis: 'same-distance' } });
    const { texts } = picture(gapOf(set, ENGLISH));
    expect(texts.decided).toEqual({ at: 'decision 210 ms from arrival', brief: '210 ms from arrival', basis: 'at the same distance' });
    expect(texts.description).toContain('1.6 ball widths at the decision point, 210 ms before the fastball arrives, at the same distance, and');
    expect(texts.description).toMatch(/The line is at the same time\.$/);
    const spanish = picture(gapOf(set, SPANISH)).texts;
    expect(spanish.decided).toEqual({ at: 'decisión a 210 ms de llegar', brief: 'a 210 ms de llegar', basis: 'a la misma distancia' });
    expect(spanish.description).toContain('210 ms antes de que llegue la recta, a la misma distancia');
    expect(spanish.description).toMatch(/La línea va al mismo tiempo\.$/);
  });

  test('ends where the throw is at the plate, as large as it is said to be', () => {
    const data = picture(gapOf(lastOne({ gap: GAP }), ENGLISH));
    expect(data.line).toHaveLength(5);
    expect(data.line.at(-1)![0]).toBeCloseTo(0.4, 12);
    expect(data.line.at(-1)![1]).toBe(data.plateWidths);
  });

  test('is not drawn where the device does not see the path, and that is said', () => {
    expect(gapOf(lastOne({ gap: 'not-visible' }), ENGLISH)).toEqual({ kind: 'words', words: 'path of the ball not visible to this device' });
  });

  test('is not that of an older throw', () => {
    const [first] = FASTBALLS;
    const fastball = new InventedMound().open(RIGHT_HANDER).say({ kind: 'intent-set', session: `${RIGHT_HANDER.id}-today`, intent: 'four-seam' }).throws(first!).view();
    expect(gapOf(fastball, ENGLISH)).toEqual({ kind: 'words', words: 'Fastball' });
    expect(gapOf(lastOne({ gap: null }), ENGLISH).kind).toBe('words');
    expect(gapOf(new InventedMound().open(RIGHT_HANDER).view(), ENGLISH)).toEqual({ kind: 'words', words: 'Ready for the first throw' });
    expect(gapOf(lastOne({ gap: GAP, excluded: 'misread' }), ENGLISH)).toEqual({ kind: 'words', words: 'Excluded' });
  });
});

describe('the seam map of a throw', () => {
  const SPIN: SpinSeen = { spinRpm: 1843, tiltRad: 1.1, efficiency: 0.93, gyroRad: 'not-sent', spinFrom: 'measured', seamAxis: { latitudeDeg: 90, longitudeDeg: 0 }, unexplained: { kind: 'not-sent' } };

  test('has the spin axis in its middle and the whole seam round it', () => {
    const { seam } = picture(seamMapOf(SPIN, 'one', ENGLISH));
    for (const point of seam!) expect(Math.hypot(...point)).toBeCloseTo(1, 9);
    // Over the pole of the map of the seams lies the waist: no seam is nearer to the axis than 90° − 70.53°, whose cosine is 0.9428.
    expect(Math.max(...seam!.map(([, , z]) => z))).toBeCloseTo(0.9428, 3);
  });

  test('tells those who do not see it how many seams keep coming by', () => {
    expect(picture(seamMapOf(SPIN, 'one', ENGLISH)).texts.description).toBe('The ball of the last throw unrolled round its spin axis, which is in the middle and comes towards the reader. axis, 1,840 rpm. The ball turns anticlockwise. Its equator meets 4 seams a turn. unexplained: not sent.');
    expect(picture(seamMapOf({ ...SPIN, seamAxis: { latitudeDeg: 0, longitudeDeg: 45 } }, 'one', ENGLISH)).texts.description).toContain('2 seams a turn');
  });

  test('counts the seams that the front of the ball meets where the whole axis is known: nearer to the axis of a ball that turns clockwise', () => {
    const map = (gyroRad: number) => picture(seamMapOf({ ...SPIN, gyroRad }, 'one', ENGLISH));
    expect(map(0.3).frontFromAxisRad).toBeCloseTo(Math.PI / 2 - 0.3, 12);
    expect(map(-0.3).frontFromAxisRad).toBeCloseTo(Math.PI / 2 + 0.3, 12);
    expect(map(0.3).texts.description).toContain('Its front meets 4 seams a turn.');
    // A ball that turns about its way of flight: the seam keeps off its front.
    expect(map(1.5).texts.description).toContain('Its front meets 0 seams a turn.');
    expect(picture(seamMapOf(SPIN, 'one', ENGLISH)).frontFromAxisRad).toBeNull();
  });

  test('shows the axis alone where the device does not tell where the seams are, and says so', () => {
    const data = picture(seamMapOf({ ...SPIN, seamAxis: null }, 'one', ENGLISH));
    expect(data.seam).toBeNull();
    expect(data.texts.axisAlone).toBe('axis alone: this device does not tell where the seams are');
    expect(data.texts.description).toContain(data.texts.axisAlone);
    expect(data.texts.axis).toBe('axis, 1,840 rpm');
  });

  test('says of an axis that was worked out from the path that it is inferred', () => {
    expect(picture(seamMapOf({ ...SPIN, seamAxis: null, spinFrom: 'inferred' }, 'one', ENGLISH)).texts.axis).toBe('axis, 1,840 rpm, inferred');
    expect(picture(seamMapOf({ ...SPIN, seamAxis: null, spinFrom: 'inferred' }, 'one', SPANISH)).texts.axis).toBe('eje, 1,840 rpm, deducido');
  });

  test('is not drawn where not even the axis is known', () => {
    expect(seamMapOf({ ...SPIN, seamAxis: null, tiltRad: 'not-visible', efficiency: 'not-visible' }, 'one', ENGLISH)).toEqual({ kind: 'words', words: 'spin axis not visible to this device' });
  });

  test('says of a device that cannot see it that unexplained movement is not visible, and draws no arrow', () => {
    const { unexplained, texts } = picture(seamMapOf({ ...SPIN, unexplained: { kind: 'not-visible', reason: 'axis-inferred' } }, 'one', ENGLISH));
    expect(unexplained).toEqual({ drawn: false, words: 'unexplained: not visible to this device' });
    expect(texts.description).toContain('It worked the axis out from the path, so whatever a seam did is already in the axis.');
  });

  test('leaves it to the verdict of the trial, which stands below, to say who cannot see a seam effect', () => {
    const hidden = lastOne({ unexplained: { kind: 'not-visible', reason: 'spin-only' } });
    expect(picture(seamsOf(hidden, ENGLISH)).unexplained).toBeNull();
    expect(picture(seamsOf({ ...hidden, session: { ...hidden.session!, trial: null } }, ENGLISH)).unexplained!.words).toBe('unexplained: not visible to this device');
  });

  test('is that of the newest throw of the session', () => {
    expect(picture(seamsOf(liveMound().view(), ENGLISH)).texts.axis).toBe('axis, 1,850 rpm');
    expect(seamsOf(lastOne({ excluded: 'misread' }), ENGLISH)).toEqual({ kind: 'words', words: 'Excluded' });
  });
});

describe('unexplained movement', () => {
  const squareIn = (value: number): number => value * inchesToM(1) ** 2;
  const PLACE: SeparationView = { baseline: 1, speedMps: -4, verticalM: inchesToM(-6), armSideM: inchesToM(7), arrivalS: 0.04, releaseShiftM: 0 };
  /** Three to the arm side and four down: five inches long. */
  const SEEN: UnexplainedView = {
    kind: 'unexplained', spinVerticalM: 0.2, spinArmSideM: 0.2, pushM: 0.3, acrossM: 0.05,
    verticalM: inchesToM(-4), armSideM: inchesToM(3), measurement: [squareIn(0.25), 0, squareIn(0.25)], model: [squareIn(0.75), 0, squareIn(0.75)],
  };

  test('is an arrow from where spin alone would have taken the throw to where it went', () => {
    const { from, to } = arrowOf(SEEN, PLACE, [])!;
    expect(mToInches(from.verticalM)).toBeCloseTo(-2, 9);
    expect(mToInches(from.armSideM)).toBeCloseTo(4, 9);
    expect(to).toEqual({ verticalM: PLACE.verticalM, armSideM: PLACE.armSideM });
  });

  test('never stands without its doubt, from the measurement and from the lift laws together', () => {
    // A quarter and three quarters of a square inch are one: 1.96 in to either side along any direction.
    expect(unexplainedWords(SEEN, ENGLISH)).toBe('5.0 ± 2.0 in unexplained');
    expect(unexplainedWords({ ...SEEN, measurement: null }, ENGLISH)).toBe('5.0 ± ? in unexplained');
  });

  test('has an ellipse that holds 95 %: two normal errors of one inch reach 2.448 in', () => {
    // χ² with two degrees of freedom is −2·ln 0.05 = 5.9915 at 95 %, closed form; its root is 2.4477.
    const { semiMajorM, semiMinorM } = arrowOf(SEEN, PLACE, [])!.ellipse!;
    expect(mToInches(semiMajorM)).toBeCloseTo(2.4477, 3);
    expect(mToInches(semiMinorM)).toBeCloseTo(2.4477, 3);
  });

  test('has an ellipse that lies along the doubt: flat to arm side, steep upwards, halfway where both go together', () => {
    expect(ellipse95([1, 0, 4]).angleRad).toBeCloseTo(0, 9);
    expect(Math.abs(ellipse95([4, 0, 1]).angleRad)).toBeCloseTo(Math.PI / 2, 9);
    expect(ellipse95([1, 0.5, 1]).angleRad).toBeCloseTo(Math.PI / 4, 9);
    expect(ellipse95([1, 1, 1]).semiMinorM).toBeCloseTo(0, 9);
  });

  test('is drawn on the plane when the seam map is asked for, for the last throw alone, and named where no map names it', () => {
    const view = lastOne({ unexplained: SEEN });
    expect(planeOf(view, ENGLISH).unexplained).toBeNull();
    expect(arrowed(view, 'plain').unexplained!.words).toEqual([]);
    expect(arrowed(view, 'plain').texts.description).toContain('5.0 ± 2.0 in unexplained.');
    expect(arrowed(view, 'named').unexplained!.words).toEqual(['5.0 ± 2.0 in unexplained']);
    expect(arrowed(lastOne({ unexplained: { kind: 'not-visible', reason: 'spin-only' } }), 'named').unexplained).toBeNull();
    expect(arrowed(lastOne({ unexplained: SEEN, excluded: 'misread' }), 'named').unexplained).toBeNull();
  });

  test('has no ellipse where nobody knows how sure the measurement is, and no arrow where the throw has no place', () => {
    expect(arrowOf({ ...SEEN, measurement: null }, PLACE, [])!.ellipse).toBeNull();
    expect(arrowOf(SEEN, { ...PLACE, armSideM: 'not-visible' }, [])).toBeNull();
  });
});

describe('the arrival gap on the pace rail', () => {
  test('is that against the fastball aimed at the same place', () => {
    expect(railOf(lastOne({ gap: GAP }), ENGLISH).last!.words[1]).toBe('47 ms later');
  });
  test('is that of the flight times where the path is not seen', () => {
    const view = lastOne({ gap: 'not-visible' });
    const { arrivalS } = view.throws.at(-1)!.separation!;
    expect(railOf(view, ENGLISH).last!.words[1]).toBe(`${Math.round(Number(arrivalS) * 1000)} ms later`);
  });
  test('says what it was worked out from where nobody saw the ball arrive', () => {
    expect(railOf(lastOne({ gap: 'not-visible', flightTimeFrom: 'speed' }), ENGLISH).last!.words[2]).toBe('from speeds');
    expect(railOf(lastOne({ gap: 'not-visible', flightTimeFrom: 'spin' }), ENGLISH).last!.words[2]).toBe('from spin');
    expect(railOf(lastOne({ gap: 'not-visible', flightTimeFrom: 'device' }), ENGLISH).last!.words).toHaveLength(2);
    expect(railOf(lastOne({ gap: GAP, flightTimeFrom: 'path' }), ENGLISH).last!.words).toHaveLength(2);
  });
  test('is said to be unknown where it is, with the reason for those who do not see', () => {
    const { separation } = liveMound().view().throws.at(-1)!;
    const rail = railOf(lastOne({ gap: 'not-visible', separation: { ...separation!, arrivalS: 'not-visible' } }), ENGLISH);
    expect(rail.last!.words[1]).toBe('arrival unknown');
    expect(rail.texts.description).toContain('arrival unknown, not visible to this device');
  });
  test('is no matter for a fastball', () => expect(railOf(lastOne({ fastball: true }), ENGLISH).last!.words).toHaveLength(1));
});
