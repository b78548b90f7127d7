import { expect, test } from 'vitest';
import { changeBetween } from '../../core/session/change.ts';
import { foldFact } from '../../core/session/fold.ts';
import { emptyLedger, type Ledger } from '../../core/session/ledger.ts';
import { moundView } from '../../core/session/view.ts';
import type { Fact } from '../../core/facts/fact.ts';
import type { MoundView } from '../../core/facts/views.ts';
import type { Shape } from '../parity/flown.ts';
import { longSession, MOUND, OPENING, SESSION } from './long-session.ts';
import { report } from './measure.ts';

// Ratios rather than times: they say the same on a slow machine and on a fast one. The two sides take turns, throw by throw.
const EARLY = 100;
const LATE = 10_000;
const STRETCH = 20;
const ROUNDS = 10;
const MOST = 1.2;

/** One throw, from its fact to the bytes of the message. */
interface Step {
  readonly tookMs: number;
  readonly bytes: number;
}

/** A session that stands before a throw, and goes on throw by throw. */
class Thrown {
  #ledger: Ledger;
  #view: MoundView;
  readonly #coming: Iterator<Fact>;

  constructor(facts: readonly Fact[], throws: number) {
    const before = OPENING + 2 * throws;
    this.#ledger = facts.slice(0, before).reduce(foldFact, emptyLedger(MOUND));
    this.#view = moundView(this.#ledger, SESSION);
    this.#coming = facts.slice(before).values();
  }

  next(): Step {
    const [intent, thrown] = [this.#coming.next().value as Fact, this.#coming.next().value as Fact];
    this.#ledger = foldFact(this.#ledger, intent);
    this.#view = moundView(this.#ledger, SESSION);
    const startedMs = performance.now();
    this.#ledger = foldFact(this.#ledger, thrown);
    const view = moundView(this.#ledger, SESSION);
    const message = JSON.stringify(changeBetween(this.#view, view));
    const tookMs = performance.now() - startedMs;
    this.#view = view;
    return { tookMs, bytes: message.length };
  }
}

const medianOf = (values: readonly number[]): number => values.toSorted((a, b) => a - b)[values.length >> 1]!;

function compare(shape: Shape): { readonly time: number; readonly bytes: number } {
  const facts = longSession(LATE + STRETCH * (ROUNDS + 1), shape);
  const late = new Thrown(facts, LATE - STRETCH);
  const steps = { early: [] as Step[], late: [] as Step[] };
  for (let round = 0; round <= ROUNDS; round += 1) {
    const early = new Thrown(structuredClone(facts.slice(0, OPENING + 2 * (EARLY + STRETCH))), EARLY - STRETCH);
    for (let count = 0; count < STRETCH; count += 1) {
      const pair = { early: early.next(), late: late.next() };
      // The first round warms up.
      if (round === 0) continue;
      steps.early.push(pair.early);
      steps.late.push(pair.late);
    }
  }
  const of = (what: 'tookMs' | 'bytes', side: 'early' | 'late'): number => medianOf(steps[side].map((step) => step[what]));
  const [time, bytes] = [of('tookMs', 'late') / of('tookMs', 'early'), of('bytes', 'late') / of('bytes', 'early')];
  report(`${shape}: throw ${EARLY} costs ${(1000 * of('tookMs', 'early')).toFixed(0)} µs and ${of('bytes', 'early')} bytes, throw ${LATE} ${(1000 * of('tookMs', 'late')).toFixed(0)} µs and ${of('bytes', 'late')} bytes: ${time.toFixed(2)} and ${bytes.toFixed(2)} times`);
  return { time, bytes };
}

test.each(['summary', 'path'] as const)(`throw ${LATE} of a session costs no more than ${MOST} times throw ${EARLY}, in time and in bytes, seen as a %s`, (shape) => {
  const { time, bytes } = compare(shape);
  expect(time).toBeLessThanOrEqual(MOST);
  expect(bytes).toBeLessThanOrEqual(MOST);
});
