import { describe, expect, test } from 'vitest';
import type { MoundView } from '../../core/facts/views.ts';
import { mToInches } from '../../core/units/convert.ts';
import { lastThrow, lastThrowWords, paceFitsAboveWindows } from '../../web/wall/last-throw.ts';
import { comingMarks, planeOf } from '../../web/wall/plane-of.ts';
import { railOf } from '../../web/wall/rail-of.ts';
import { CAPITAL_SHARE, wallSizes } from '../../web/wall/sizes.ts';
import { spokenWindow, windowThrows, windowTrends } from '../../web/wall/window-words.ts';
import { speechIn } from '../../web/words/speech.ts';
import { FASTBALLS, formingMound, InventedMound, LEFT_HANDER, liveMound, RIGHT_HANDER, TRIAL_A, TRIAL_B } from './invented-mound.ts';

const ENGLISH = speechIn('en', 'imperial');
const SPANISH = speechIn('es', 'metric');
const NO_SETTING = { diagonalIn: null, distanceM: null };

describe('the separation plane of a view', () => {
  const plane = planeOf(liveMound().view(), ENGLISH);

  test('draws every throw of the stage once, fastballs apart', () => {
    expect(plane.marks.filter(({ fastball }) => !fastball)).toHaveLength(TRIAL_A.length + TRIAL_B.length);
    expect(plane.marks.filter(({ fastball }) => fastball)).toHaveLength(FASTBALLS.length);
    expect(new Set(plane.marks.map(({ place }) => place)).size).toBe(plane.marks.length);
  });

  test('puts a throw as far from the origin as it separates from the fastball', () => {
    // By hand: the medians of the fifteen pairwise means are 16.15 and 7.45 in; the throw moved 10.8 up and 10.4 to the arm side.
    const last = plane.marks.at(-1)!;
    expect(mToInches(last.verticalM)).toBeCloseTo(10.8 - 16.15, 1);
    expect(mToInches(last.armSideM)).toBeCloseTo(10.4 - 7.45, 1);
  });

  test('carries trial letters, and judges by the zone', () => {
    expect(plane.marks.filter(({ trial }) => trial === 'A')).toHaveLength(TRIAL_A.length);
    expect(plane.marks.filter(({ trial }) => trial === 'B').map(({ onTarget }) => onTarget)).toEqual([true, true, false, true, true, true, false]);
  });

  test('writes the miss of the last throw, whose line ends on the edge of the zone', () => {
    const miss = plane.miss!;
    const zone = plane.zone!;
    expect(miss.words).toEqual(['3 in short,', 'glove side']);
    const onEdge = ((miss.verticalM + miss.toEdgeVerticalM - zone.verticalM) / zone.verticalRadiusM) ** 2 + ((miss.armSideM + miss.toEdgeArmSideM - zone.armSideM) / zone.armSideRadiusM) ** 2;
    expect(onEdge).toBeCloseTo(1, 2);
  });

  test('tells those who do not see it what it shows', () => {
    // 5.35 and 2.95 in, sent to the tenth of a millimetre as 0.1359 and 0.0749 m.
    expect(plane.texts.description).toBe("Movement of each throw against the athlete's own fastball, which lies at the origin, seen from the mound. Last throw, Changeup B: 5.4 in down, 2.9 in arm side, 3 in short, glove side. 12 drawn, 5 on target.");
  });

  test("a left-hander's arm side lies to the left, as seen from the mound", () => {
    expect(planeOf(liveMound(LEFT_HANDER).view(), SPANISH).armSideOn).toBe('left');
    expect(plane.armSideOn).toBe('right');
  });

  test('lacks the newer throws of a later view, and nothing else', () => {
    const mound = liveMound();
    const before = mound.view();
    const one = mound.throws([8.1, 13.2, 82.9]).view();
    const two = mound.throws([9.4, 12.1, 83.3]).view();
    const [first, second] = two.throws.slice(-2).map(({ place }) => place);
    const lacking = (shown: MoundView, later: MoundView) => comingMarks(shown, later).map(({ place }) => place);
    expect(lacking(before, one)).toEqual([first]);
    expect(lacking(before, two)).toEqual([first, second]);
    expect(lacking(one, two)).toEqual([second]);
    expect(lacking(two, two)).toEqual([]);
    expect(comingMarks(one, two)).toEqual([{ ...planeOf(two, ENGLISH).marks.at(-1)!, said: '' }]);
    const without = mound.say({ kind: 'throws-excluded', session: `${RIGHT_HANDER.id}-today`, places: [second!], reason: 'misread' }).view();
    expect(lacking(without, two), 'a throw that was taken out does not come back').toEqual([]);
    const nextStage = mound.say({ kind: 'stage-set', session: `${RIGHT_HANDER.id}-today`, stage: 'catch-play', distanceM: 18, effort: 'easy' }).view();
    expect(lacking(one, nextStage), 'of another stage another plane is drawn').toEqual([]);
  });

  test('an excluded throw is not drawn, and its miss is not written', () => {
    const mound = liveMound();
    const place = mound.view().throws.at(-1)!.place;
    const without = planeOf(mound.say({ kind: 'throws-excluded', session: `${RIGHT_HANDER.id}-today`, places: [place], reason: 'misread' }).view(), ENGLISH);
    expect(without.marks.some((mark) => mark.place === place)).toBe(false);
    expect(without.miss).toBeNull();
  });

  test('movement inferred from spin is hatched', () => {
    const inferred = planeOf(liveMound(RIGHT_HANDER, new InventedMound().spinOnly()).view(), ENGLISH);
    expect(inferred.marks.every((mark) => mark.inferred)).toBe(true);
  });
});

describe('the last throw in words', () => {
  const words = (mound: InventedMound) => lastThrowWords(lastThrow(mound.view())!, ENGLISH);

  test('says the miss first, then the pace', () => expect(words(liveMound())).toEqual({ lead: '3 in short, glove side', pace: '10 mph slower' }));
  test('says so when it is on target', () => expect(words(liveMound().throws([6.9, 14.1, 82.6])).lead).toBe('On target'));
  test('names a fastball and its speed', () => expect(words(formingMound())).toEqual({ lead: 'Fastball', pace: '94.8 mph' }));
  test('without a zone says where it went', () => {
    const session = `${RIGHT_HANDER.id}-today`;
    const mound = new InventedMound().open(RIGHT_HANDER).say({ kind: 'intent-set', session, intent: 'four-seam' }).throws(...FASTBALLS)
      .say({ kind: 'intent-set', session, intent: 'changeup' }).throws([8.2, 13.4, 83]);
    expect(words(mound)).toEqual({ lead: '8 in down, 6 in arm side', pace: '11 mph slower' });
  });
  test('leaves the pace to the windows where long words leave it no room above them', () => {
    expect(paceFitsAboveWindows({ lead: '3 in short, glove side', pace: '10 mph slower' })).toBe(true);
    expect(paceFitsAboveWindows({ lead: '8 cm corto', pace: '14 km/h más lento' })).toBe(true);
    expect(paceFitsAboveWindows({ lead: '15 cm abajo, 15 cm lado del brazo', pace: '10 km/h más lento' })).toBe(false);
  });
  test('before a baseline has only the speed to say', () => {
    const mound = new InventedMound().open(RIGHT_HANDER).say({ kind: 'intent-set', session: `${RIGHT_HANDER.id}-today`, intent: 'changeup' }).throws([8.2, 13.4, 83]);
    expect(words(mound)).toEqual({ lead: 'Changeup', pace: '83.0 mph' });
  });
});

describe('the pace rail of a view', () => {
  const rail = railOf(liveMound().view(), ENGLISH);

  test('hangs the target band below the fastball', () => {
    expect(rail.target!.highMps).toBeLessThan(rail.fastball!.speedMps);
    expect(rail.target!.highMps - rail.fastball!.speedMps).toBeCloseTo(-4, 6);
  });

  test('gives the last throw its speed and its arrival gap', () => {
    expect(rail.last!.words[0]).toBe('84.6 mph');
    expect(rail.last!.words[1]).toMatch(/^\d+ ms later$/);
  });

  test('shows the last twelve', () => expect(rail.throws).toHaveLength(12));
});

describe('windows on the Wall', () => {
  test('hold the throws that the windows were made of', () => {
    const view = liveMound().view();
    expect(windowThrows(view)).toHaveLength(view.session!.windows.find(({ size }) => size === 'all')!.count);
  });

  test('speak the largest window that is full', () => {
    expect(spokenWindow(liveMound().view().session!.windows)!.size).toBe(5);
    expect(spokenWindow(liveMound().throws(...TRIAL_A).view().session!.windows)!.size).toBe(10);
  });

  test('say how sure they are, and how few where they cannot', () => {
    const said = windowTrends(liveMound().view(), ENGLISH).map(({ value }) => value);
    expect(said[0]).toMatch(/^7\.9 ± \d\.\d in$/);
    expect(said[3]).toBe('3 of 5, 23–88 %');
    const few = new InventedMound();
    liveMound(RIGHT_HANDER, few).say({ kind: 'trial-begun', session: `${RIGHT_HANDER.id}-today`, intent: 'changeup', grip: null, cue: null }).throws(TRIAL_B[0]!);
    expect(windowTrends(few.view(), ENGLISH)[0]!.value).toBe('1 of 3 throws');
  });
});

describe('text is sized for where it is read', () => {
  /** Minutes of arc of a capital on a 16:9 screen of 55 inches, seen from six metres; by small-angle geometry of its own. */
  const arcMinutes = (fontPx: number, widthPx: number): number => {
    const pixelM = (55 * 0.0254 * (16 / Math.hypot(16, 9))) / widthPx;
    return ((fontPx * CAPITAL_SHARE * pixelM) / 6) * (180 / Math.PI) * 60;
  };

  test.each([[1280, 720], [1920, 1080], [3840, 2160]])('at %i×%i the last throw stands 30 minutes of arc high, all else 12', (width, height) => {
    const { textPx, leadPx, stacked } = wallSizes({ width, height }, NO_SETTING);
    expect(arcMinutes(textPx, width)).toBeGreaterThanOrEqual(12);
    expect(arcMinutes(textPx, width)).toBeLessThan(12.1);
    expect(arcMinutes(leadPx, width)).toBeGreaterThanOrEqual(30);
    expect(stacked).toBe(false);
  });

  test('a smaller screen nearer by needs the same angle', () => {
    const near = wallSizes({ width: 1920, height: 1080 }, { diagonalIn: 27.5, distanceM: 3 });
    expect(near.textPx).toBeCloseTo(wallSizes({ width: 1920, height: 1080 }, NO_SETTING).textPx, 0);
  });

  test('in a hand it is one column of reading size', () => {
    expect(wallSizes({ width: 390, height: 844 }, NO_SETTING)).toMatchObject({ textPx: 17, leadPx: 42, stacked: true });
  });
});
