import { describe, expect, test } from 'vitest';
import type { Fact } from '../../../core/facts/fact.ts';
import { importedFacts, type GoodRow } from '../../../core/imports/imported-facts.ts';
import { aboutAthlete, erasing } from '../../../core/session/about-athlete.ts';
import { checkpointsOf, recordingOf } from '../../../core/session/checkpoints.ts';
import { foldFact } from '../../../core/session/fold.ts';
import { emptyLedger, type Ledger } from '../../../core/session/ledger.ts';
import { listSessions, sliceOf } from '../../../core/session/recorded.ts';
import { moundView } from '../../../core/session/view.ts';
import { ABLE, CHOICES, PENA } from '../imports/choices.ts';
import { fiveFastballs, Story, summary, ZONE } from './story.ts';

const FILE = { name: 'bullpens.csv', sha256: 'ab'.repeat(32) };
const SI = { distance: 'm', speed: 'm/s', movement: 'm' } as const;

/** Fastballs of so many mph, and changeups, a minute apart, on a day at five in the afternoon of Chicago. */
function sitting(id: string, day: string, fastballs: readonly number[], changeups: readonly number[] = [], athlete = ABLE): Fact['said'][] {
  const from = Date.parse(`${day}T22:00:00Z`);
  const rows = [...fastballs.map((speed) => [speed, 'four-seam'] as const), ...changeups.map((speed) => [speed, 'changeup'] as const)].map(([speed, intent], index): GoodRow => (
    { line: index + 2, athlete, atMs: from + index * 60_000, intent, trial: '', units: SI, body: summary(speed, intent === 'changeup' ? 7 : 16, -8) }));
  const { session, throws } = importedFacts(id, day, rows, FILE, CHOICES);
  return [session, ...throws];
}

const FAST = [89, 90, 91, 90, 90];

/** Adds facts to a story as the server writes them: at the next places, arriving now. */
function bring(facts: Fact[], said: readonly Fact['said'][]): Fact[] {
  const more = [...facts];
  for (const one of said) more.push({ place: more.length + 1, mound: 'north-1', atMs: (more.at(-1)?.atMs ?? 1_790_000_000_000) + 1000, by: 'coach:Ana', version: 1, said: one });
  return more;
}

const fold = (facts: readonly Fact[]): Ledger => facts.reduce(foldFact, emptyLedger('north-1'));

describe('a session out of a file', () => {
  test('is closed from the beginning and has its own time; when it arrived stands beside it', () => {
    const ledger = fold(bring([], sitting('old', '2024-05-03', FAST, [78, 79])));
    const { session, throws } = moundView(ledger, 'old');
    expect(session).toMatchObject({
      openedAtMs: Date.UTC(2024, 4, 3, 22), closedAtMs: Date.UTC(2024, 4, 3, 22, 6), active: false, imported: { file: FILE, times: 'of-throws', by: 'coach:Ana' },
      baseline: { kind: 'baseline', number: 1, origin: 'this-session' }, counts: { all: 7 },
    });
    expect(session!.imported!.atMs).toBeGreaterThan(1_790_000_000_000);
    expect(throws.map(({ atMs }) => atMs)).toEqual([0, 1, 2, 3, 4, 5, 6].map((minute) => Date.UTC(2024, 4, 3, 22, minute)));
    expect(throws.at(-1)).toMatchObject({ trial: 'A', separation: { speedMps: expect.closeTo(-4.92, 1) } });
    expect(session).toMatchObject({ intent: 'changeup', trial: { letter: 'A' }, counts: { trial: 2 } });
    expect(session!.trials).toMatchObject([{ letter: 'A', intent: 'changeup', grip: null, cue: null, count: 2 }]);
  });

  test('does not disturb the one that is open: it keeps the mound, its throws, its baseline and all that is said of it', () => {
    const story = new Story().open('now', 'able-1').intent('now', 'four-seam');
    fiveFastballs(story);
    const before = moundView(story.ledger(), 'now');
    const ledger = fold(bring(story.facts, [...sitting('old', '2024-05-03', [70, 71, 70, 71, 70]), ...sitting('older', '2023-05-03', FAST)]));
    const { place: _, atMs: __, ...after } = moundView(ledger, null);
    expect(before).toMatchObject(after);
    expect(ledger.active).toBe('now');
    const thrown = { kind: 'throw-measured', source: { device: 'lamp-1', run: 'r1', sequence: 99, time: 1, sight: 'full-flight', axis: 'measured', units: SI }, body: summary(88, 12, -8) } as const;
    expect(fold(bring(story.facts, [...sitting('old', '2024-05-03', FAST), thrown])).throws['now']!.flat()).toHaveLength(6);
  });

  test('thrown long ago gives its fastballs to nobody who has thrown since, and to those without', () => {
    const story = new Story().open('last', 'able-1').intent('last', 'four-seam');
    fiveFastballs(story);
    story.say({ kind: 'session-closed', session: 'last' });
    const opening = new Story().open('next', 'able-1').facts[0]!.said;
    const speedIn = (facts: Fact[]): unknown => {
      const baseline = moundView(fold(facts), 'next').session!.baseline;
      return baseline.kind === 'baseline' ? [baseline.origin, Math.round(baseline.speedMps / 0.44704), baseline.number] : baseline.kind;
    };
    const old = sitting('old', '2024-05-03', [70, 71, 70, 71, 70]);
    expect(speedIn(bring(story.facts, [...old, opening]))).toEqual(['earlier', 90, 1]);
    expect(speedIn(bring([], [...old, opening]))).toEqual(['earlier', 70, 1]);
    // The newer of two out of files, whichever came first.
    expect(speedIn(bring([], [...old, ...sitting('older', '2023-05-03', FAST), opening]))).toEqual(['earlier', 70, 1]);
  });

  test('is held against its own fastballs alone, live and in playback alike', () => {
    const facts = bring([], [...sitting('newer', '2025-05-03', [80, 81, 80, 81, 80]), ...sitting('old', '2024-05-03', [90], [78])]);
    const view = moundView(fold(facts), 'old');
    expect(view.session!.baseline).toEqual({ kind: 'forming', have: 1, need: 5 });
    const slice = sliceOf(facts, 'old')!;
    expect(moundView(slice.facts.reduce(foldFact, slice.carry), 'old')).toEqual(view);
  });

  test('is played back in its own time', () => {
    const slice = sliceOf(bring([], sitting('old', '2024-05-03', FAST)), 'old')!;
    const recording = recordingOf(checkpointsOf(slice, 'old'), false);
    expect(recording.timelineMs).toEqual([0, 0, 60_000, 120_000, 180_000, 240_000]);
    expect(recording.isThrow).toEqual([false, true, true, true, true, true]);
    expect(recording.arrivedMs[0]).toBe(Date.UTC(2024, 4, 3, 22));
  });

  test('stands in the list by its own day, and says which file it came out of', () => {
    const story = new Story().open('now', 'able-1');
    const listed = listSessions(fold(bring(story.facts, sitting('old', '2024-05-03', FAST))));
    expect(listed.map(({ id, imported }) => [id, imported?.fileName ?? null])).toEqual([['now', null], ['old', 'bullpens.csv']]);
  });

  test('counts for the arm on its own day, not on the day of its import', () => {
    const opening = new Story().open('next', 'able-1').facts[0]!.said;
    const care = (day: string): unknown => moundView(fold(bring([], [...sitting('old', day, FAST), opening])), 'next').session!.armCare;
    const now = new Date(1_790_000_006_000).toISOString().slice(0, 10);
    expect(care('2024-05-03')).toMatchObject({ moundThrows: 0 });
    expect(care(now)).toMatchObject({ moundThrows: 5 });
  });

  describe('taken back', () => {
    const withdrawn = { kind: 'import-withdrawn', session: 'old' } as const;
    const opening = new Story().open('next', 'able-1').facts[0]!.said;

    test('is in no list and no view, its fastballs and days are nobody’s, and its log still has every fact', () => {
      const facts = bring([], [...sitting('old', '2024-05-03', FAST, [78]), ...sitting('older', '2023-05-03', FAST.map((speed) => speed - 10)), withdrawn, opening]);
      const ledger = fold(facts);
      expect(listSessions(ledger).map(({ id }) => id)).toEqual(['next', 'older']);
      expect(moundView(ledger, 'old')).toMatchObject({ session: null, throws: [] });
      expect(moundView(ledger, 'next').session!.baseline).toMatchObject({ origin: 'earlier', speedMps: expect.closeTo(80 * 0.44704, 1) });
      expect(ledger.throws).not.toHaveProperty('old');
      expect(ledger.unclaimed.flat()).toEqual([]);
      expect(facts.filter(({ said }) => said.kind === 'throw-imported')).toHaveLength(11);
    });

    test('counts for no arm on its day', () => {
      const day = new Date(1_790_000_006_000).toISOString().slice(0, 10);
      expect(moundView(fold(bring([], [...sitting('old', day, FAST), withdrawn, opening])), 'next').session!.armCare).toMatchObject({ moundThrows: 0 });
    });

    test('leaves throws that were moved on where they are, and measured ones that were moved into it to nobody', () => {
      const story = new Story().open('now', 'able-1').intent('now', 'four-seam');
      fiveFastballs(story);
      const [measured] = story.ledger().throws['now']!.flat().map(({ place }) => place);
      const at = story.facts.length;
      const facts = bring(story.facts, [...sitting('old', '2024-05-03', FAST), { kind: 'throws-moved', places: [at + 2], session: 'now', from: 'old' }, { kind: 'throws-moved', places: [measured!], session: 'old', from: 'now' }, withdrawn]);
      const ledger = fold(facts);
      expect(ledger.throws['now']!.flat()).toHaveLength(5);
      expect(ledger.throws['now']!.flat().map(({ place }) => place)).toContain(at + 2);
      expect(ledger.unclaimed.flat().map(({ place }) => place)).toEqual([measured]);
    });

    test('is no day of a comparison that held it', () => {
      const row = (index: number, speed: number, intent: 'four-seam' | 'changeup', trial: string): GoodRow => ({ line: index + 2, athlete: ABLE, atMs: Date.UTC(2024, 4, 3, 22, index), intent, trial, units: SI, body: summary(speed, intent === 'changeup' ? 7 : 16, -8) });
      const rows = [...FAST.map((speed, index) => row(index, speed, 'four-seam', '')), ...['wide', 'narrow', 'wide', 'narrow'].map((trial, index) => row(FAST.length + index, 78, 'changeup', trial))];
      const { session, throws } = importedFacts('old', '2024-05-03', rows, FILE, CHOICES);
      const facts = bring([], [session, ...throws, { kind: 'comparison-opened', session: 'old', k: 1, stage: 'mound', zone: ZONE, a: 'A', b: 'B', baseline: 1 }]);
      const compared = (some: readonly Fact[]): unknown => fold(some).athletes[ABLE.id]!.plans.compared.map(({ session: of, a, b }) => [of, a.length, b.length]);
      expect(compared(facts)).toEqual([['old', 2, 2]]);
      expect(compared(bring(facts, [withdrawn]))).toEqual([]);
    });

    test('is still its athlete’s when that one is erased', () => {
      const facts = bring([], [...sitting('old', '2024-05-03', [90, 91], [], PENA), withdrawn]);
      const about = aboutAthlete(facts, PENA.id);
      expect(about).toMatchObject({ sessions: ['old'], throws: 2 });
      const left = facts.map((fact) => (about.facts.includes(fact) ? { ...fact, said: erasing(fact, 1) } : fact));
      expect(left.map(({ said }) => said.kind)).toEqual(['erased', 'erased', 'erased', 'erased']);
    });
  });

  test('goes with its athlete when that one is erased, and throws that were moved on stay', () => {
    const story = new Story().open('now', 'other-9');
    const facts = bring(story.facts, [...sitting('old', '2024-05-03', [90, 91], [], PENA), { kind: 'throws-moved', places: [4], session: 'now', from: 'old' }]);
    const about = aboutAthlete(facts, PENA.id);
    expect(about).toMatchObject({ sessions: ['old'], names: ['Inventada Peña'], throws: 1 });
    expect(about.facts.map(({ place }) => place)).toEqual([2, 3]);
    const left = facts.map((fact) => (about.facts.includes(fact) ? { ...fact, said: erasing(fact, 1) } : fact));
    expect(JSON.stringify(left)).not.toContain('Peña');
    expect(fold(left).throws['now']!.flat().map(({ place }) => place)).toEqual([4]);
    expect(fold(left).active).toBe('now');
  });
});
