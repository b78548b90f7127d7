import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FASTEST_RATE, movePlayhead, playheadAtStart, SLOWEST_RATE, type Playhead, type PlayheadMove, type Recording } from '../../../core/session/playhead.ts';

/** Opened, three throws with a note after the second, closed: at 0, 1, 4, 5, 9 and 10 s. */
const CLOSED: Recording = {
  timelineMs: [0, 1000, 4000, 5000, 9000, 10_000],
  isThrow: [false, true, true, false, true, false],
  open: false,
};
const OPEN: Recording = { ...CLOSED, open: true };
const EMPTY: Recording = { timelineMs: [], isThrow: [], open: false };

const paused = (applied: number, recording = CLOSED): Playhead => movePlayhead(playheadAtStart({ ...recording, open: false }), { kind: 'seek', applied }, recording);
const playing = (applied: number, recording = CLOSED): Playhead => movePlayhead(paused(applied, recording), { kind: 'play' }, recording);
const following = (): Playhead => playheadAtStart(OPEN);
const seen = ({ mode, applied, reachedMs, part: over }: Playhead): string => `${mode} ${applied} at ${reachedMs}${over === null ? '' : `, over ${over.from} to ${over.to}`}`;
/** Paused at the end of a part. */
const part = (from: number, to: number): Playhead =>
  ([{ kind: 'part-from-here' }, { kind: 'seek', applied: to }, { kind: 'part-to-here' }] as const).reduce<Playhead>((head, move) => movePlayhead(head, move, CLOSED), paused(from));

/** Every move in every mode, written down: from → move → to. */
const TABLE: readonly (readonly [from: () => Playhead, recording: Recording, move: PlayheadMove, to: string])[] = [
  [() => paused(2), CLOSED, { kind: 'play' }, 'playing 2 at 1000'],
  [() => paused(2), CLOSED, { kind: 'pause' }, 'paused 2 at 1000'],
  [() => paused(2), CLOSED, { kind: 'follow' }, 'paused 6 at 10000'],
  [() => paused(2), CLOSED, { kind: 'rate', rate: 8 }, 'paused 2 at 1000'],
  [() => paused(2), CLOSED, { kind: 'seek', applied: 4 }, 'paused 4 at 5000'],
  [() => paused(2), CLOSED, { kind: 'scrub', reachedMs: 4500 }, 'paused 3 at 4500'],
  [() => paused(2), CLOSED, { kind: 'step-throw', by: 1 }, 'paused 3 at 4000'],
  [() => paused(2), CLOSED, { kind: 'step-throw', by: -1 }, 'paused 1 at 0'],
  [() => paused(2), CLOSED, { kind: 'tick', elapsedMs: 5000 }, 'paused 2 at 1000'],
  [() => paused(2), CLOSED, { kind: 'recording-changed' }, 'paused 2 at 1000'],
  [() => paused(2), CLOSED, { kind: 'part-from-here' }, 'paused 2 at 1000, over 2 to 6'],
  [() => paused(3), CLOSED, { kind: 'part-to-here' }, 'paused 3 at 4000, over 1 to 3'],
  [() => part(2, 4), CLOSED, { kind: 'whole' }, 'paused 4 at 5000'],
  [() => paused(6), CLOSED, { kind: 'play' }, 'playing 1 at 0'],

  [() => playing(2), CLOSED, { kind: 'play' }, 'playing 2 at 1000'],
  [() => playing(2), CLOSED, { kind: 'pause' }, 'paused 2 at 1000'],
  [() => playing(2), CLOSED, { kind: 'follow' }, 'paused 6 at 10000'],
  [() => playing(2), OPEN, { kind: 'follow' }, 'following 6 at 10000'],
  [() => playing(2), CLOSED, { kind: 'rate', rate: 8 }, 'playing 2 at 1000'],
  [() => playing(2), CLOSED, { kind: 'seek', applied: 4 }, 'playing 4 at 5000'],
  [() => playing(2), CLOSED, { kind: 'scrub', reachedMs: 4500 }, 'playing 3 at 4500'],
  [() => playing(2), CLOSED, { kind: 'step-throw', by: 1 }, 'paused 3 at 4000'],
  [() => playing(4), CLOSED, { kind: 'step-throw', by: -1 }, 'paused 3 at 4000'],
  [() => playing(2), CLOSED, { kind: 'tick', elapsedMs: 2000 }, 'playing 2 at 3000'],
  [() => playing(2), CLOSED, { kind: 'tick', elapsedMs: 4000 }, 'playing 4 at 5000'],
  [() => playing(2), CLOSED, { kind: 'tick', elapsedMs: 60_000 }, 'paused 6 at 10000'],
  [() => playing(2), OPEN, { kind: 'tick', elapsedMs: 60_000 }, 'following 6 at 10000'],
  [() => playing(2), CLOSED, { kind: 'recording-changed' }, 'playing 2 at 1000'],

  [() => playing(2), CLOSED, { kind: 'part-from-here' }, 'playing 2 at 1000, over 2 to 6'],
  [() => playing(3), CLOSED, { kind: 'part-to-here' }, 'playing 3 at 4000, over 1 to 3'],
  [() => playing(3), CLOSED, { kind: 'whole' }, 'playing 3 at 4000'],

  [following, OPEN, { kind: 'part-from-here' }, 'following 6 at 10000, over 6 to 6'],
  [following, OPEN, { kind: 'part-to-here' }, 'following 6 at 10000, over 1 to 6'],
  [following, OPEN, { kind: 'whole' }, 'following 6 at 10000'],
  [following, OPEN, { kind: 'play' }, 'following 6 at 10000'],
  [following, OPEN, { kind: 'pause' }, 'paused 6 at 10000'],
  [following, OPEN, { kind: 'follow' }, 'following 6 at 10000'],
  [following, OPEN, { kind: 'rate', rate: 8 }, 'following 6 at 10000'],
  [following, OPEN, { kind: 'seek', applied: 4 }, 'paused 4 at 5000'],
  [following, OPEN, { kind: 'seek', applied: 6 }, 'paused 6 at 10000'],
  [following, OPEN, { kind: 'scrub', reachedMs: 4500 }, 'paused 3 at 4500'],
  [following, OPEN, { kind: 'scrub', reachedMs: 99_000 }, 'paused 6 at 10000'],
  [following, OPEN, { kind: 'step-throw', by: 1 }, 'paused 6 at 10000'],
  [following, OPEN, { kind: 'step-throw', by: -1 }, 'paused 5 at 9000'],
  [following, OPEN, { kind: 'tick', elapsedMs: 5000 }, 'following 6 at 10000'],
  [following, { timelineMs: [...OPEN.timelineMs, 12_000], isThrow: [...OPEN.isThrow, true], open: true }, { kind: 'recording-changed' }, 'following 7 at 12000'],
  [following, CLOSED, { kind: 'recording-changed' }, 'paused 6 at 10000'],
];

describe('the table of moves', () => {
  it.each(TABLE.map(([from, recording, move, to]) => [`${from().mode} at ${from().applied}${recording.open ? ' of an open session' : ''}`, JSON.stringify(move), to, from, recording, move] as const))(
    '%s: %s leads to %s',
    (_from, _move, to, from, recording, move) => {
      expect(seen(movePlayhead(from(), move, recording))).toBe(to);
    },
  );

  it('holds every move in every mode', () => {
    const rows = new Set(TABLE.map(([from, , move]) => `${from().mode} ${move.kind}`));
    const kinds = ['play', 'pause', 'follow', 'rate', 'seek', 'scrub', 'step-throw', 'part-from-here', 'part-to-here', 'whole', 'tick', 'recording-changed'];
    expect([...rows].toSorted()).toEqual(['paused', 'playing', 'following'].flatMap((mode) => kinds.map((kind) => `${mode} ${kind}`)).toSorted());
  });
});

describe('a playhead', () => {
  it('stands at the first fact of a closed session and follows an open one', () => {
    expect(seen(playheadAtStart(CLOSED))).toBe('paused 1 at 0');
    expect(seen(playheadAtStart(OPEN))).toBe('following 6 at 10000');
  });

  it('stays exactly where the hand has put the scrubber, between two facts too', () => {
    const scrubbed = movePlayhead(paused(1), { kind: 'scrub', reachedMs: 8999 }, CLOSED);
    expect(seen(scrubbed)).toBe('paused 4 at 8999');
    expect(seen(movePlayhead(scrubbed, { kind: 'scrub', reachedMs: 9000 }, CLOSED))).toBe('paused 5 at 9000');
    expect(seen(movePlayhead(scrubbed, { kind: 'scrub', reachedMs: -1 }, CLOSED))).toBe('paused 1 at 0');
  });

  it('plays at the rate it is set to, and keeps to what is offered', () => {
    const at = (rate: number): Playhead => movePlayhead(playing(0), { kind: 'rate', rate }, CLOSED);
    expect(movePlayhead(at(4), { kind: 'tick', elapsedMs: 250 }, CLOSED).reachedMs).toBe(1000);
    expect(movePlayhead(at(0.5), { kind: 'tick', elapsedMs: 250 }, CLOSED).reachedMs).toBe(125);
    expect(at(1000).rate).toBe(FASTEST_RATE);
    expect(at(0).rate).toBe(SLOWEST_RATE);
  });

  it('steps through the throws both ways and visits each once', () => {
    const visited = (by: 1 | -1, from: Playhead): number[] => {
      const stops: number[] = [];
      for (let head = from, round = 0; round < 5; round += 1) {
        head = movePlayhead(head, { kind: 'step-throw', by }, CLOSED);
        stops.push(head.applied);
      }
      return stops;
    };
    expect(visited(1, paused(0))).toEqual([2, 3, 5, 6, 6]);
    expect(visited(-1, paused(6))).toEqual([5, 3, 2, 1, 1]);
  });

  it('raises the generation when facts are skipped or taken back, and not while they pass one by one', () => {
    const start = playing(2);
    expect(movePlayhead(start, { kind: 'tick', elapsedMs: 4000 }, CLOSED).generation).toBe(start.generation);
    expect(movePlayhead(start, { kind: 'seek', applied: 1 }, CLOSED).generation).toBe(start.generation + 1);
    expect(movePlayhead(start, { kind: 'seek', applied: 2 }, CLOSED).generation).toBe(start.generation);
  });

  it('plays a part over and over, its last fact seen for a moment, until the whole is asked for', () => {
    const over = movePlayhead(part(2, 3), { kind: 'seek', applied: 2 }, CLOSED);
    const start = movePlayhead(over, { kind: 'play' }, CLOSED);
    const after = (elapsedMs: number): string => seen(movePlayhead(start, { kind: 'tick', elapsedMs }, CLOSED));
    // From 1000 to the third fact at 4000; the fourth comes at 5000, sooner than the moment would be over.
    expect(after(3500)).toBe('playing 3 at 4500, over 2 to 3');
    expect(after(4000)).toBe('playing 2 at 1000, over 2 to 3');
    expect(after(4000 * 7 + 3200)).toBe('playing 3 at 4200, over 2 to 3');
    const late = movePlayhead(start, { kind: 'tick', elapsedMs: 3900 }, CLOSED);
    expect(movePlayhead(late, { kind: 'tick', elapsedMs: 100 }, CLOSED).generation).toBe(late.generation + 1);
    expect(seen(movePlayhead(movePlayhead(start, { kind: 'whole' }, CLOSED), { kind: 'tick', elapsedMs: 4000 }, CLOSED))).toBe('playing 4 at 5000');
  });

  it('does not come back to a part that the hand has gone beyond', () => {
    const beyond = movePlayhead(movePlayhead(part(2, 3), { kind: 'seek', applied: 4 }, CLOSED), { kind: 'play' }, CLOSED);
    expect(seen(movePlayhead(beyond, { kind: 'tick', elapsedMs: 60_000 }, CLOSED))).toBe('paused 6 at 10000, over 2 to 3');
  });

  it('an end before the beginning of the part, or a beginning after its end, is moved out of the way', () => {
    const to = (applied: number, kind: 'part-from-here' | 'part-to-here') => seen(movePlayhead(movePlayhead(part(3, 4), { kind: 'seek', applied }, CLOSED), { kind }, CLOSED));
    expect(to(2, 'part-to-here')).toBe('paused 2 at 1000, over 1 to 2');
    expect(to(5, 'part-from-here')).toBe('paused 5 at 9000, over 5 to 6');
  });

  it('keeps its fact when quiet is folded or spread out again', () => {
    const folded: Recording = { ...CLOSED, timelineMs: [0, 1000, 2000, 3000, 4000, 5000] };
    expect(seen(movePlayhead(paused(4), { kind: 'recording-changed' }, folded))).toBe('paused 4 at 3000');
  });

  it('stays where it is, between two facts too, while an open session grows behind its back', () => {
    const longer: Recording = { timelineMs: [...OPEN.timelineMs, 12_000], isThrow: [...OPEN.isThrow, true], open: true };
    const scrubbed = movePlayhead(following(), { kind: 'seek', applied: 3 }, OPEN);
    expect(seen(movePlayhead(scrubbed, { kind: 'recording-changed' }, longer))).toBe('paused 3 at 4000');
    const between = movePlayhead(scrubbed, { kind: 'scrub', reachedMs: 4321 }, OPEN);
    expect(seen(movePlayhead(between, { kind: 'recording-changed' }, longer))).toBe('paused 3 at 4321');
  });

  it('has nowhere to go in a recording without facts', () => {
    const start = playheadAtStart(EMPTY);
    for (const move of [{ kind: 'play' }, { kind: 'step-throw', by: 1 }, { kind: 'step-throw', by: -1 }, { kind: 'seek', applied: 3 }, { kind: 'follow' }] as const) {
      expect(movePlayhead(start, move, EMPTY)).toMatchObject({ applied: 0, reachedMs: 0 });
    }
    expect(movePlayhead(movePlayhead(start, { kind: 'play' }, EMPTY), { kind: 'tick', elapsedMs: 16 }, EMPTY).mode).toBe('paused');
  });
});

const recordings = fc.array(fc.record({ gapMs: fc.nat(400_000), isThrow: fc.boolean() }), { maxLength: 40 }).chain((facts) =>
  fc.boolean().map((open): Recording => {
    let reachedMs = 0;
    return { timelineMs: facts.map(({ gapMs }, index) => (reachedMs += index === 0 ? 0 : gapMs)), isThrow: facts.map(({ isThrow }) => isThrow), open };
  }));
const anyNumber = fc.oneof(fc.integer({ min: -100, max: 100 }), fc.double());
const moves: fc.Arbitrary<PlayheadMove> = fc.oneof(
  fc.constantFrom<PlayheadMove>({ kind: 'play' }, { kind: 'pause' }, { kind: 'follow' }, { kind: 'step-throw', by: 1 }, { kind: 'step-throw', by: -1 }, { kind: 'part-from-here' }, { kind: 'part-to-here' }, { kind: 'whole' }, { kind: 'recording-changed' }),
  anyNumber.map((rate): PlayheadMove => ({ kind: 'rate', rate })),
  anyNumber.map((applied): PlayheadMove => ({ kind: 'seek', applied })),
  fc.oneof(fc.integer({ min: -1000, max: 4_000_000 }), fc.double()).map((reachedMs): PlayheadMove => ({ kind: 'scrub', reachedMs })),
  fc.oneof(fc.integer({ min: 0, max: 100_000 }), fc.double()).map((elapsedMs): PlayheadMove => ({ kind: 'tick', elapsedMs })),
);
const walk = (recording: Recording, steps: readonly PlayheadMove[]): Playhead => steps.reduce((head, move) => movePlayhead(head, move, recording), playheadAtStart(recording));
const SEED = { seed: 20_260_301 };

describe('whatever the hand does', () => {
  it('the playhead stands inside the recording, at a time between its neighbours', () => {
    fc.assert(fc.property(recordings, fc.array(moves, { maxLength: 30 }), (recording, steps) => {
      const { applied, reachedMs, rate } = walk(recording, steps);
      const { timelineMs } = recording;
      expect(Number.isInteger(applied) && applied >= Math.min(1, timelineMs.length) && applied <= timelineMs.length).toBe(true);
      expect(rate >= SLOWEST_RATE && rate <= FASTEST_RATE).toBe(true);
      expect(reachedMs).toBeGreaterThanOrEqual(timelineMs[applied - 1] ?? 0);
      expect(reachedMs).toBeLessThanOrEqual(timelineMs[applied] ?? timelineMs.at(-1) ?? 0);
    }), SEED);
  });

  it('a playhead follows only an open session, and then stands at its newest fact', () => {
    fc.assert(fc.property(recordings, fc.array(moves, { maxLength: 30 }), (recording, steps) => {
      const { mode, applied } = walk(recording, steps);
      expect(mode !== 'following' || (recording.open && applied === recording.timelineMs.length)).toBe(true);
    }), SEED);
  });

  it('any scrub leaves following, and one move returns to live', () => {
    fc.assert(fc.property(recordings, fc.array(moves, { maxLength: 30 }), anyNumber, (recording, steps, applied) => {
      const open = { ...recording, open: true };
      const scrubbed = movePlayhead(movePlayhead(walk(open, steps), { kind: 'follow' }, open), { kind: 'seek', applied: Number.isNaN(applied) ? 0 : applied }, open);
      expect(scrubbed.mode).not.toBe('following');
      expect(movePlayhead(scrubbed, { kind: 'follow' }, open)).toMatchObject({ mode: 'following', applied: open.timelineMs.length });
    }), SEED);
  });

  it('time played in many small ticks reaches the same facts as in one', () => {
    fc.assert(fc.property(recordings, fc.array(fc.integer({ min: 1, max: 5000 }), { minLength: 1, maxLength: 40 }), (recording, ticks) => {
      const start = movePlayhead({ ...playheadAtStart({ ...recording, open: false }) }, { kind: 'play' }, recording);
      const many = ticks.reduce((head, elapsedMs) => movePlayhead(head, { kind: 'tick', elapsedMs }, recording), start);
      const one = movePlayhead(start, { kind: 'tick', elapsedMs: ticks.reduce((sum, elapsedMs) => sum + elapsedMs, 0) }, recording);
      expect(many).toEqual(one);
    }), SEED);
  });

  it('a step forward and a step back stand on throws, or at the ends', () => {
    fc.assert(fc.property(recordings, fc.array(moves, { maxLength: 10 }), fc.constantFrom<1 | -1>(1, -1), (recording, steps, by) => {
      const { applied } = movePlayhead(walk(recording, steps), { kind: 'step-throw', by }, recording);
      expect(applied <= 1 || applied === recording.timelineMs.length || recording.isThrow[applied - 1]).toBe(true);
    }), SEED);
  });
});
