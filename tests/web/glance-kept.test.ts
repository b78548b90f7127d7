import { describe, expect, test } from 'vitest';
import { glanceAddress, keptAddress, keptView } from '../../web/glance/kept/kept-view.ts';
import { UNLINKED, freshnessOf, nextLink } from '../../web/live/link.ts';
import { FASTBALLS, InventedMound, RIGHT_HANDER } from './invented-mound.ts';

const HOUR_MS = 3600_000;
const NOW = 1_700_000_000_000;
const session = `${RIGHT_HANDER.id}-today`;

/** What a browser keeps, without the browser. */
function store() {
  const kept = new Map<string, string>();
  return { kept, getItem: (name: string) => kept.get(name) ?? null, setItem: (name: string, text: string) => void kept.set(name, text), removeItem: (name: string) => void kept.delete(name) };
}

const thrown = (times: number) => {
  const mound = new InventedMound().open(RIGHT_HANDER).say({ kind: 'intent-set', session, intent: 'four-seam' });
  for (let each = 0; each < times; each += 1) mound.throws(FASTBALLS[each % FASTBALLS.length]!);
  return mound.say({ kind: 'note-written', session, text: 'He tires early.', place: null }).view();
};

describe('the state that a phone keeps', () => {
  test('is the one of its own address, with the time at which the server was last heard', () => {
    const own = keptView('north-1', 's1', store());
    const view = thrown(3);
    own.keep(view, NOW);
    expect(own.read(NOW + HOUR_MS)).toMatchObject({ heardAtMs: NOW, view: { place: view.place, throws: [{ number: 1 }, { number: 2 }, { number: 3 }] } });
  });

  test.each([['another session', 'north-1', 's2'], ['another mound', 'south-2', 's1'], ['whoever has the mound', 'north-1', null]] as const)('is never shown at the address of %s, and is gone from then on', (_, mound, other) => {
    const shared = store();
    keptView('north-1', 's1', shared).keep(thrown(1), NOW);
    expect(keptView(mound, other, shared).read(NOW)).toBeNull();
    expect(shared.kept.size).toBe(0);
  });

  test('is one and no more: what is kept of a session takes the place of what was kept of another', () => {
    const shared = store();
    keptView('north-1', 's1', shared).keep(thrown(1), NOW);
    keptView('north-1', 's2', shared).keep(thrown(2), NOW);
    expect(shared.kept.size).toBe(1);
    expect(keptAddress(shared)).toBe('/glance/north-1?session=s2');
  });

  test('is gone after a day, and when it was forgotten', () => {
    const shared = store();
    const own = keptView('north-1', 's1', shared);
    own.keep(thrown(1), NOW);
    expect(own.read(NOW + 25 * HOUR_MS)).toBeNull();
    own.keep(thrown(1), NOW);
    own.forget();
    expect([own.read(NOW), keptAddress(shared)]).toEqual([null, null]);
  });

  test("holds no more than Glance shows: the last throws, none of the coach's notes, nobody else on the mound", () => {
    const own = keptView('north-1', null, store());
    own.keep(thrown(40), NOW);
    const { view } = own.read(NOW)!;
    expect(view.throws.map(({ number }) => number)).toEqual([29, 30, 31, 32, 33, 34, 35, 36, 37, 38, 39, 40]);
    expect([view.session!.notes, view.openSessions, view.unclaimed]).toEqual([[], [], []]);
  });

  test('costs nothing where the browser keeps nothing, or what it kept cannot be read', () => {
    const full = { ...store(), setItem: () => { throw new Error('full'); } };
    const own = keptView('north-1', 's1', full);
    own.keep(thrown(1), NOW);
    expect(own.read(NOW)).toBeNull();
    const torn = store();
    torn.setItem('offpace-glance', '{"mound":"nor');
    expect(keptView('north-1', 's1', torn).read(NOW)).toBeNull();
  });

  test('leads to the address it is of', () => {
    expect(glanceAddress({ mound: 'north-1', session: null })).toBe('/glance/north-1');
    expect(glanceAddress({ mound: 'north-1', session: 's 1' })).toBe('/glance/north-1?session=s%201');
  });
});

describe('a link that remembers', () => {
  test('is stale since the server was heard, and gives way to the first view', () => {
    const remembered = nextLink(UNLINKED, { kind: 'remembered', view: thrown(1), heardAtMs: NOW });
    expect(freshnessOf(remembered)).toMatchObject({ server: 'stale', sinceMs: NOW });
    const view = thrown(2);
    const connected = nextLink(nextLink(remembered, { kind: 'connected' }), { kind: 'view', atMs: NOW + 5, message: { kind: 'snapshot', log: 'l', reason: 'first', view } });
    expect([connected.view, freshnessOf(connected).server]).toEqual([view, 'fresh']);
  });

  test('remembers nothing once the server was heard', () => {
    const heard = nextLink(UNLINKED, { kind: 'view', atMs: NOW, message: { kind: 'snapshot', log: 'l', reason: 'first', view: thrown(2) } });
    expect(nextLink(heard, { kind: 'remembered', view: thrown(1), heardAtMs: NOW - 1 })).toBe(heard);
  });
});
