import { expect, test } from 'vitest';
import { moundView } from '../../core/session/view.ts';
import { captionOf } from '../../web/taking-out/caption.ts';
import { factsAddress, throwsAddress } from '../../web/taking-out/addresses.ts';
import { speechIn } from '../../web/words/speech.ts';
import { fiveFastballs, Story } from '../core/session/story.ts';

const story = new Story().open('s-1', 'ana').intent('s-1', 'four-seam');
fiveFastballs(story);
const view = moundView(story.ledger(), 's-1');

test('a saved picture says who and which throw, when by the bullpen’s clock, whether it is live, and by which formulas', () => {
  expect(captionOf(view, { kind: 'live' }, speechIn('en', 'imperial'))).toEqual(['Invented ana · north-1 · Throw 5', `Sep 21, 2026, 09:13:27 −05:00 (America/Chicago) · Live · science version ${view.scienceVersion}`]);
  expect(captionOf(view, { kind: 'played-back', atMs: view.atMs }, speechIn('es', 'metric'))[1]).toMatch(/^21 sept? 2026, 09:13:27 −05:00 \(America\/Chicago\) · .+ 09:13:27 · versión de las fórmulas \d+$/);
  expect(captionOf({ ...view, session: null }, { kind: 'live' }, speechIn('en', 'imperial'))).toEqual(['north-1']);
});

test('a table is asked for in the viewer’s units, and without names where none are wanted', () => {
  expect(throwsAddress({ kind: 'session', id: 's-1' }, { format: 'csv', units: 'metric', names: false })).toBe('/api/sessions/s-1/throws?format=csv&units=metric&names=no');
  expect(throwsAddress({ kind: 'all' }, { format: 'parquet', units: 'imperial', names: true })).toBe('/api/throws?format=parquet&units=imperial&names=yes');
  expect(factsAddress({ kind: 'athlete', id: 'ana' })).toBe('/api/athletes/ana/facts');
});
