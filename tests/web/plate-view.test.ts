import { describe, expect, test } from 'vitest';
import type { MoundView, ThrowView } from '../../core/facts/views.ts';
import { inchesToM } from '../../core/units/convert.ts';
import { plateOutline, plateScale } from '../../web/charts/plate-scale.ts';
import type { PlateData } from '../../web/charts/plate-view.ts';
import { askedByKey } from '../../web/wall/asked/asked.ts';
import { plateOf } from '../../web/wall/asked/plate-of.ts';
import type { Shown } from '../../web/wall/asked/shown.ts';
import { speechIn } from '../../web/words/speech.ts';
import { InventedMound, LEFT_HANDER, liveMound, RIGHT_HANDER } from './invented-mound.ts';

const ENGLISH = speechIn('en', 'imperial');
const SPANISH = speechIn('es', 'metric');
const ROOM = { width: 511, height: 860 };

/** The invented session with every throw at a place of its own; the last at 31 in high and 4 in to the catcher's left. */
function placed(last: Partial<ThrowView> = {}, athlete = RIGHT_HANDER): MoundView {
  const view = liveMound(athlete).view();
  const throws = view.throws.map((thrown, index): ThrowView => {
    const at = { ...thrown, plateHeightM: inchesToM(20 + index), plateRightM: inchesToM(index - 8) };
    return index === view.throws.length - 1 ? { ...at, plateHeightM: inchesToM(31), plateRightM: inchesToM(-4), ...last } : at;
  });
  return { ...view, throws };
}

function picture(shown: Shown<PlateData>): PlateData {
  if (shown.kind === 'words') throw new Error(`in words: ${shown.words}`);
  return shown.data;
}

describe('the plate seen by the catcher', () => {
  test('is asked for by its key and put away by it', () => {
    expect(askedByKey('P', 'gap-line')).toBe('plate');
    expect(askedByKey('p', 'plate')).toBeNull();
  });

  test('says the last throw’s height and side, arm side to the left for a right-hander and to the right for a left-hander', () => {
    const right = picture(plateOf(placed(), ENGLISH));
    expect(right.last).toEqual({ drawn: true, words: ['31 in high', '4 in arm side'] });
    expect(right.armSideOn).toBe('left');
    const left = picture(plateOf(placed({}, LEFT_HANDER), SPANISH));
    expect(left.last.words).toEqual(['79 cm de alto', '10 cm lado del guante']);
    expect(left.armSideOn).toBe('right');
  });

  test('puts a throw that the catcher sees to his left on the left, whoever throws', () => {
    for (const athlete of [RIGHT_HANDER, LEFT_HANDER]) {
      const data = picture(plateOf(placed({}, athlete), ENGLISH));
      const scale = plateScale(data.marks, ROOM, 100, data.armSideOn === 'right' ? 1 : -1);
      expect(scale.x(data.marks.at(-1)!.armSideM)).toBeLessThan(scale.x(0));
    }
  });

  test('fills a throw on target and leaves a miss hollow, as the plane does', () => {
    const view = placed();
    expect(picture(plateOf(view, ENGLISH)).marks.map(({ onTarget }) => onTarget)).toEqual(view.throws.map(({ miss }) => miss?.onTarget ?? null));
    expect(new Set(view.throws.map(({ miss }) => miss?.onTarget ?? null))).toEqual(new Set([null, true, false]));
  });

  test('tells those who do not see it what the last throw did, how many are drawn, and that no zone is', () => {
    expect(picture(plateOf(placed(), ENGLISH)).texts.description).toBe(
      'Where throws crossed the front of the plate, seen by the catcher, by their height over the ground. Last throw, Changeup B: 31 in high, 4 in arm side. 17 throws drawn. The zone of a batter is not measured and not drawn.',
    );
  });

  test('leaves out an excluded throw, and says so in its place', () => {
    const data = picture(plateOf(placed({ excluded: 'misread' }), ENGLISH));
    expect(data.last).toEqual({ drawn: false, words: ['Excluded'] });
    expect(data.marks).toHaveLength(16);
  });

  test('keeps the older throws where the last one’s place was not sent, and says that', () => {
    expect(picture(plateOf(placed({ plateHeightM: 'not-sent' }), ENGLISH)).last).toEqual({ drawn: false, words: ['place at the plate not sent'] });
  });

  test('is not defined where the stage has no plate, nor drawn where no device sent a place', () => {
    const view = placed();
    expect(plateOf({ ...view, session: { ...view.session!, stage: 'catch-play' } }, ENGLISH)).toEqual({ kind: 'words', words: 'place at the plate not defined here' });
    expect(plateOf(liveMound().view(), SPANISH)).toEqual({ kind: 'words', words: 'lugar en home: no enviado' });
    expect(plateOf(new InventedMound().open(RIGHT_HANDER).view(), ENGLISH)).toEqual({ kind: 'words', words: 'Ready for the first throw' });
  });
});

describe('the picture of the plate', () => {
  const at = (heightIn: number, sideIn: number) => ({ verticalM: inchesToM(heightIn), armSideM: inchesToM(sideIn) });

  test('has one scale for height and side, the ground over its foot', () => {
    const { x, y, pxPerM } = plateScale([at(30, 5)], ROOM, 100, 1);
    expect(x(1) - x(0)).toBeCloseTo(pxPerM, 9);
    expect(y(0) - y(1)).toBeCloseTo(pxPerM, 9);
    expect(y(0)).toBeLessThan(ROOM.height - 100);
  });

  test('shows the plate seventeen inches wide, its point towards the catcher and above the foot', () => {
    const scale = plateScale([], ROOM, 100, 1);
    const [left, right, , point] = plateOutline(scale);
    expect(right![0] - left![0]).toBeCloseTo(inchesToM(17) * scale.pxPerM, 9);
    expect(point![0]).toBeCloseTo(scale.x(0), 9);
    expect(point![1]).toBeGreaterThan(left![1]);
    expect(point![1]).toBeLessThanOrEqual(ROOM.height - 100 + 1e-9);
  });

  test('grows for a throw far off, but not for one that nobody could have caught', () => {
    const reaches = (...places: ReturnType<typeof at>[]): number => plateScale(places, ROOM, 100, 1).pxPerM;
    expect(reaches(at(30, 30))).toBeLessThan(reaches(at(30, 5)));
    expect(reaches(at(30, 300))).toBe(reaches(at(30, 80)));
  });

  test('stands a throw in the dirt over the ground', () => {
    const { y } = plateScale([at(1.4, 0)], ROOM, 100, -1);
    expect(y(inchesToM(1.4))).toBeLessThan(y(0));
  });
});
