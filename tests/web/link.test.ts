import { describe, expect, test } from 'vitest';
import type { Pulse, ViewMessage } from '../../core/facts/wire.ts';
import { changeBetween } from '../../core/session/change.ts';
import { freshnessOf, nextLink, sameFreshness, UNLINKED, type LinkEvent, type LinkState } from '../../web/live/link.ts';
import { isDimmed, standingOf, standingWords } from '../../web/standing/standing.ts';
import { speechIn } from '../../web/words/speech.ts';
import { closedMound, InventedMound, liveMound } from './invented-mound.ts';

const AT = 1_790_000_400_000;
const BEFORE = liveMound().view();
const AFTER = liveMound().throws([7, 14, 83]).view();

const linked = (...events: readonly LinkEvent[]): LinkState => events.reduce(nextLink, UNLINKED);
const viewed = (message: ViewMessage, atMs = AT): LinkEvent => ({ kind: 'view', message, atMs });
const snapshot = (view = BEFORE, log = 'log-1'): LinkEvent => viewed({ kind: 'snapshot', log, reason: 'first', view });
const change = (from = BEFORE.place, log = 'log-1', skipped = 0): LinkEvent => viewed({ kind: 'change', log, from, skipped, ...changeBetween(BEFORE, AFTER) });
const pulse = (extra: Partial<Pulse> = {}, atMs = AT): LinkEvent => ({ kind: 'pulse', atMs, pulse: { mound: 'north-1', serverAtMs: atMs, place: BEFORE.place, device: { verdict: 'fresh', device: 'invented-1', sinceMs: atMs }, build: 'b1', ...extra } });

describe('a viewer', () => {
  test('paints the snapshot, then what changed', () => {
    expect(linked(snapshot(), change()).view).toEqual(AFTER);
  });

  test('does not show a change twice', () => {
    const twice = linked(snapshot(), change(), change());
    expect(twice.view).toEqual(AFTER);
    expect(twice.misfits).toBe(0);
  });

  test('asks again instead of painting over a hole', () => {
    const holed = linked(snapshot(), viewed({ kind: 'change', log: 'log-1', from: BEFORE.place + 3, skipped: 0, ...changeBetween(BEFORE, { ...AFTER, place: BEFORE.place + 9 }) }));
    expect(holed.view).toEqual(BEFORE);
    expect(holed.misfits).toBe(1);
  });

  test('forgets what it knew when the log is another', () => {
    const other = linked(snapshot(), change(BEFORE.place, 'log-2'));
    expect(other.view).toBeNull();
    expect(other.log).toBeNull();
    expect(other.misfits).toBe(1);
  });

  test('keeps the last picture while the line is down', () => {
    expect(linked(snapshot(), { kind: 'disconnected' }).view).toEqual(BEFORE);
  });

  test('counts what was skipped because it was slow', () => {
    expect(linked(snapshot(), change(BEFORE.place, 'log-1', 4)).skipped).toBe(4);
  });
});

describe('freshness', () => {
  test('five seconds without a pulse are not normal', () => {
    const heard = linked({ kind: 'connected' }, snapshot(), pulse());
    expect(freshnessOf(nextLink(heard, { kind: 'tick', atMs: AT + 4900 })).server).toBe('fresh');
    const silent = freshnessOf(nextLink(heard, { kind: 'tick', atMs: AT + 5100 }));
    expect(silent).toMatchObject({ server: 'stale', sinceMs: AT });
  });

  test('five quiet minutes between throws are, while pulses come', () => {
    const quiet = linked({ kind: 'connected' }, snapshot(), pulse({}, AT + 300_000), { kind: 'tick', atMs: AT + 301_000 });
    expect(freshnessOf(quiet).server).toBe('fresh');
  });

  test('a dropped line is stale since the server was last heard', () => {
    expect(freshnessOf(linked({ kind: 'connected' }, snapshot(), { kind: 'disconnected' }))).toMatchObject({ server: 'stale', sinceMs: AT });
  });

  test('one pulse ahead of its view is no reason to say catching up, two are', () => {
    const once = linked({ kind: 'connected' }, snapshot(), pulse({ place: BEFORE.place + 5 }));
    expect(freshnessOf(once).behind).toBeNull();
    expect(freshnessOf(nextLink(once, pulse({ place: BEFORE.place + 6 }))).behind).toEqual({ have: BEFORE.place, of: BEFORE.place + 6 });
  });

  test('a throw more is the same freshness; another word of the device, or a server that went silent, is not', () => {
    const heard = linked({ kind: 'connected' }, snapshot(), pulse());
    const thrown = nextLink(heard, change());
    expect(sameFreshness(freshnessOf(heard), freshnessOf(thrown))).toBe(true);
    expect(sameFreshness(freshnessOf(heard), freshnessOf(nextLink(heard, pulse())))).toBe(true);
    expect(sameFreshness(freshnessOf(heard), freshnessOf(nextLink(heard, pulse({ device: { verdict: 'stale', device: 'invented-1', sinceMs: AT } }))))).toBe(false);
    expect(sameFreshness(freshnessOf(heard), freshnessOf(nextLink(heard, { kind: 'tick', atMs: AT + 5100 })))).toBe(false);
    expect(sameFreshness(freshnessOf(heard), freshnessOf(nextLink(heard, { kind: 'disconnected' })))).toBe(false);
    expect(sameFreshness(freshnessOf(heard), freshnessOf(nextLink(heard, { kind: 'refused', refusal: { kind: 'refused', code: 'not-let-in', path: '', sentence: '' } })))).toBe(false);
    const once = nextLink(heard, pulse({ place: BEFORE.place + 5 }));
    expect(sameFreshness(freshnessOf(once), freshnessOf(nextLink(once, pulse({ place: BEFORE.place + 6 }))))).toBe(false);
  });
});

describe('standing', () => {
  const of = (view = BEFORE, ...events: readonly LinkEvent[]) => standingOf(view, freshnessOf(linked({ kind: 'connected' }, snapshot(view), ...events)));
  const inWords = (standing: ReturnType<typeof of>) => standingWords(standing, 'America/Chicago', speechIn('en', 'imperial'));

  test('live needs a fresh server and a fresh device', () => expect(of(BEFORE, pulse()).kind).toBe('live'));
  test('a silent device is told apart from a silent server', () => {
    expect(of(BEFORE, pulse({ device: { verdict: 'stale', device: 'invented-1', sinceMs: AT - 9000 } }))).toEqual({ kind: 'device-silent', sinceMs: AT - 9000 });
    expect(of(BEFORE, pulse(), { kind: 'tick', atMs: AT + 9000 })).toEqual({ kind: 'server-silent', sinceMs: AT });
  });
  test('a device never heard is unknown, not stale', () => expect(of(BEFORE, pulse({ device: { verdict: 'unknown' } })).kind).toBe('device-unknown'));
  test('a closed session is closed whatever the device does', () => expect(of(closedMound().view(), pulse({ device: { verdict: 'unknown' } })).kind).toBe('closed'));
  test('a mound that nobody has waits', () => expect(of(new InventedMound().throws([8, 9, 84]).view(), pulse()).kind).toBe('waiting'));
  test('only what may no longer be so is dimmed', () => {
    expect(isDimmed(of(BEFORE, pulse(), { kind: 'tick', atMs: AT + 9000 }))).toBe(true);
    expect(isDimmed(of(closedMound().view(), pulse()))).toBe(false);
  });
  test("says since when, in the session's time zone", () => {
    // 1 790 000 400 s are 2026-09-21 14:20:00 UTC, five hours later than in Chicago.
    expect(inWords({ kind: 'server-silent', sinceMs: AT })).toBe('Stale since 09:20:00');
    expect(inWords({ kind: 'behind', seconds: 75 })).toBe('Behind live by 1:15');
  });
});
