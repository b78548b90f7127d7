import { describe, expect, test } from 'vitest';
import { moundView } from '../../core/session/view.ts';
import { gapsOfPair, planeOfPair, type Pair } from '../../web/playback/against/pair-of.ts';
import { pairRows } from '../../web/playback/against/pair-rows.ts';
import '../../web/words/of-desk.ts';
import { speechIn } from '../../web/words/speech.ts';
import { fiveFastballs, Story, ZONE } from '../core/session/story.ts';

const EN = speechIn('en', 'imperial');
const story = new Story().open('s1', 'ada').intent('s1', 'four-seam');
fiveFastballs(story);
story.say({ kind: 'zone-set', session: 's1', zone: ZONE, speedBand: null, reason: null }).say({ kind: 'trial-begun', session: 's1', intent: 'changeup', grip: null, cue: null });
const places = [story.throw(80, 8, -10), story.throw(82, 6, -12), story.throw(81, 7, -11)];
story.say({ kind: 'throws-excluded', session: 's1', places: [places[2]!], reason: 'slipped' });
const { session, throws } = moundView(story.ledger(), 's1');
const side = (index: number) => ({ session: session!, thrown: throws.find(({ place }) => place === places[index])! });
const pair: Pair = [side(0), side(1)];
const difference = (of: Pair, name: string): string => pairRows(of, EN).find((row) => row.name === name)!.difference;

describe('two throws laid over each other', () => {
  test('are told apart measure by measure, the second against the first', () => {
    expect(difference(pair, 'Speed')).toBe('2.0 mph faster');
    expect(difference(pair, 'Separation, vertical')).toBe('2.0 in down');
    expect(difference(pair, 'Separation, horizontal')).toBe('2.0 in arm side');
    expect(difference([side(0), side(0)], 'Speed')).toBe('none');
    expect(pairRows(pair, EN).at(-1)).toMatchObject({ name: 'Target', first: 'On target', second: 'On target' });
  });

  test('say how sure a difference is where both measurements tell, and never that the doubt is nothing', () => {
    const known = (index: number, verticalM: number): Pair[0] => ({ ...side(index), thrown: { ...side(index).thrown, standardErrors: { verticalM, speedMps: 1e-6 } as never } });
    // Root of (0.3² + 0.4²) in is 0.5 in; 1.96 of them.
    expect(difference([known(0, 0.3 * 0.0254), known(1, 0.4 * 0.0254)], 'Separation, vertical')).toBe('2.0 in down ± 1.0 in');
    expect(difference([known(0, 0.01), known(1, 0.01)], 'Speed')).toBe('2.0 mph faster ± 0.1 mph');
    expect(difference([known(0, 0.01), side(1)], 'Separation, vertical')).toBe('2.0 in down');
    const elsewhere: Pair[0] = { ...known(1, 0.01), session: { ...session!, id: 's2' } };
    expect(difference([known(0, 0.01), elsewhere], 'Separation, vertical')).toBe('2.0 in down');
    expect(difference([known(0, 0.01), elsewhere], 'Speed')).toContain('±');
  });

  test('stand on one plane, square and round; one that has no place there is said to be missing', () => {
    const { data, missing } = planeOfPair(pair, EN);
    expect(data!.marks.map(({ form, letter, onTarget }) => [form, letter, onTarget])).toEqual([['square', '1', true], ['round', '2', true]]);
    expect([data!.plane.zone, missing]).toEqual([session!.zone, []]);
    expect(planeOfPair([side(0), side(2)], EN)).toMatchObject({ data: { marks: [{ letter: '1' }] }, missing: ['Throw 8 is not on the plane: excluded.'] });
    expect(planeOfPair([side(2), side(2)], EN)).toMatchObject({ data: null });
  });

  test('from two stages share no target', () => {
    const other: Pair[0] = { ...side(0), thrown: { ...side(0).thrown, stage: 'flat-ground' } };
    expect(planeOfPair([other, side(1)], EN).data!.plane).toMatchObject({ zone: null, cloud: [] });
  });

  test('whose path nobody saw have no gap lines, and it is said why', () => {
    expect(gapsOfPair(pair, EN)).toEqual({ data: null, missing: [expect.stringMatching(/^Throw 6 has no gap line: path of the ball not sent\.$/), expect.stringMatching(/^Throw 7 has no gap line/)] });
  });
});
