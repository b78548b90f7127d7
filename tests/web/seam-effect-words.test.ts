import { describe, expect, test } from 'vitest';
import type { SeamEffectView } from '../../core/facts/views.ts';
import { inchesToM } from '../../core/units/convert.ts';
import { seamEffectReason, seamEffectWords } from '../../web/words/seam-effect-words.ts';
import { speechIn } from '../../web/words/speech.ts';

const ENGLISH = speechIn('en', 'imperial');
const SPANISH = speechIn('es', 'metric');
const weighed = (kind: 'seen' | 'not-seen' | 'cannot-tell', meanIn: number): SeamEffectView =>
  ({ kind, meanM: inchesToM(meanIn), lowM: inchesToM(meanIn - 0.6), highM: inchesToM(meanIn + 0.6), boundM: inchesToM(2.3), count: 12 });

describe('whether a trial shows a seam effect', () => {
  test('is said with its size and its doubt', () => {
    expect(seamEffectWords(weighed('seen', 3.7), ENGLISH)).toBe('seam effect seen, 3.7 ± 0.6 in');
    expect(seamEffectWords(weighed('not-seen', 0.9), ENGLISH)).toBe('no seam effect seen, 0.9 ± 0.6 in');
    expect(seamEffectWords(weighed('cannot-tell', 2.5), ENGLISH)).toBe('seam effect cannot be told yet, 2.5 ± 0.6 in');
    expect(seamEffectWords(weighed('seen', 3.7), SPANISH)).toBe('efecto de costuras visto, 9.4 ± 1.5 cm');
    expect(seamEffectWords(weighed('not-seen', 0.9), SPANISH)).toBe('efecto de costuras no visto, 2.3 ± 1.5 cm');
  });

  test('has the size of its push, to whichever side it goes', () => {
    expect(seamEffectWords(weighed('seen', -3.7), ENGLISH)).toBe(seamEffectWords(weighed('seen', 3.7), ENGLISH));
  });

  test('is told with what axis and wind may do', () => {
    expect(seamEffectReason(weighed('seen', 3.7), ENGLISH)).toBe('seam effect seen, 3.7 ± 0.6 in across the push of the spin, where axis and wind may do 2.3 in');
  });

  test('counts the throws while there are too few', () => {
    expect(seamEffectWords({ kind: 'too-few', count: 3, need: 5 }, ENGLISH)).toBe('3 of 5 throws to tell a seam effect');
    expect(seamEffectReason({ kind: 'too-few', count: 3, need: 5 }, SPANISH)).toBe('3 de 5 tiros para ver efecto de costuras');
  });

  test.each([
    ['spin-only', 'It did not see the path of the ball.'],
    ['axis-inferred', 'It worked the axis out from the path, so whatever a seam did is already in the axis.'],
    ['no-axis', 'It does not know the spin axis.'],
  ] as const)('is not visible to a device that is %s, and that has its reason', (reason, why) => {
    expect(seamEffectWords({ kind: 'not-visible', reason }, ENGLISH)).toBe('seam effect not visible to this device');
    expect(seamEffectReason({ kind: 'not-visible', reason }, ENGLISH)).toBe(`seam effect not visible to this device. ${why}`);
    expect(seamEffectWords({ kind: 'not-visible', reason }, SPANISH)).toBe('efecto de costuras, este equipo no lo ve');
  });
});
