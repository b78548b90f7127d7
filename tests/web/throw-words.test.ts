import { describe, expect, test } from 'vitest';
import type { MissView } from '../../core/facts/views.ts';
import { inchesToM, mphToMps } from '../../core/units/convert.ts';
import { speechIn } from '../../web/words/speech.ts';
import { arrivalWords, bandWords, missWords, paceWords, sideWords, verticalWords } from '../../web/words/throw-words.ts';

const ENGLISH = speechIn('en', 'imperial');
const SPANISH = speechIn('es', 'metric');

/** A miss by what was lacking: inches up and inches to the arm side from the throw to the edge. */
function lacking(upIn: number, armSideIn: number): MissView {
  return { onTarget: false, size: 1, toEdgeVerticalM: inchesToM(upIn), toEdgeArmSideM: inchesToM(armSideIn), zoneVerticalM: -0.2, paceOnTarget: null };
}

describe('a miss in words', () => {
  test('too little drop is short', () => expect(missWords(lacking(-4, 0.2), ENGLISH)).toBe('4 in short'));
  test('too much drop is deep', () => expect(missWords(lacking(3, 0), ENGLISH)).toBe('3 in deep'));
  test('what lacks arm side erred to the glove side', () => expect(missWords(lacking(0, 2), ENGLISH)).toBe('2 in glove side'));
  test('what lacks glove side erred to the arm side', () => expect(missWords(lacking(0.1, -2), ENGLISH)).toBe('2 in arm side'));
  test('on a slant both ways are named and the whole distance is said', () => expect(missWords(lacking(-3, 4), ENGLISH)).toBe('5 in short, glove side'));
  test('below an inch it is said to a tenth', () => expect(missWords(lacking(-0.44, 0), ENGLISH)).toBe('0.4 in short'));
  test('a miss is never said to be nothing', () => expect(missWords(lacking(-0.001, 0), ENGLISH)).toBe('0.1 in short'));
  test('a zone above the fastball is missed low, not deep', () => expect(missWords({ ...lacking(3, 0), zoneVerticalM: 0.1 }, ENGLISH)).toBe('3 in too low'));
  test('Spanish says it in centimetres', () => expect(missWords(lacking(-4, 4), SPANISH)).toBe('14 cm corto, lado del guante'));
  test('inside the zone there is no distance to tell', () => expect(missWords({ ...lacking(1, 0), onTarget: true }, ENGLISH)).toBe('On target'));
});

describe('separation in words', () => {
  test('says drop, side, pace and arrival against the fastball', () => {
    expect(verticalWords(inchesToM(-9.2), ENGLISH)).toBe('9 in down');
    expect(sideWords(inchesToM(5.6), ENGLISH, 1)).toBe('5.6 in arm side');
    expect(sideWords(inchesToM(-5.6), ENGLISH)).toBe('6 in glove side');
    expect(paceWords(mphToMps(-10.6), ENGLISH)).toBe('11 mph slower');
    expect(arrivalWords(0.0521, ENGLISH)).toBe('52 ms later');
  });

  test('has words for no difference', () => {
    expect(verticalWords(inchesToM(0.3), ENGLISH)).toBe('no drop from fastball');
    expect(paceWords(mphToMps(0.4), ENGLISH)).toBe('fastball pace');
    expect(arrivalWords(0.0003, ENGLISH)).toBe('arrives together');
  });

  test('the speed gap is held against its band', () => {
    const band = { lowMps: mphToMps(-12), highMps: mphToMps(-8) };
    expect(bandWords(mphToMps(-10), band, ENGLISH)).toBe('pace on target');
    expect(bandWords(mphToMps(-6), band, ENGLISH)).toBe('2 mph too fast');
    expect(bandWords(mphToMps(-12.3), band, ENGLISH)).toBe('0.3 mph too slow');
  });
});
