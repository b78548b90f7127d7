import { setImmediate } from 'node:timers/promises';
import type { Fact } from '../../core/facts/fact.ts';
import { foldOrPass } from '../../core/session/fold-or-pass.ts';
import { emptyLedger, sessionIn, thrownBy, type SessionEntry, type Thrown } from '../../core/session/ledger.ts';
import { lastTouch, noTouches, noteTouches, settledIn, withoutSettled } from '../../core/session/settled.ts';
import type { ReadableLog } from './readable-log.ts';

/** A session as it stands at the end of its mound's log. */
export interface SettledSession {
  readonly mound: string;
  readonly session: SessionEntry;
  readonly thrown: Thrown;
  /** The newest fact that has to do with it. */
  readonly lastPlace: number;
}

type Opens = Extract<Fact['said'], { kind: 'session-opened' | 'session-imported' }>;

/** Facts read at once: whatever else the program does comes in between. */
const PAGE = 256;

/**
 * The sessions of a mound one after the other, each once nothing later changes it. Reads the log twice, and holds only what can
 * still change and a few numbers of every session: what is written meanwhile is not in it.
 * @param isAsked whether anybody asks about a session that this fact opens: a mound without one is read once, and nothing is worked out of it
 */
export async function* settledSessions(log: ReadableLog, mound: string, isAsked: (opens: Opens) => boolean = () => true): AsyncGenerator<SettledSession> {
  const touches = noTouches();
  let asked = false;
  for await (const page of pagesOf(log, mound, Infinity)) {
    for (const fact of page) {
      noteTouches(touches, fact);
      if (fact.said.kind === 'session-opened' || fact.said.kind === 'session-imported') asked ||= isAsked(fact.said);
    }
  }
  if (!asked) return;
  let ledger = emptyLedger(mound);
  for await (const page of pagesOf(log, mound, touches.through)) {
    ledger = page.reduce((before, fact) => foldOrPass(before, fact), ledger);
    const settled = settledIn(ledger, touches);
    for (const id of settled) yield { mound, session: sessionIn(ledger, id)!, thrown: thrownBy(ledger, id), lastPlace: lastTouch(touches, ledger, id) };
    ledger = withoutSettled(ledger, settled, touches);
  }
}

/** The facts of a mound up to a place, page by page. */
export async function* pagesOf(log: ReadableLog, mound: string, through: number): AsyncGenerator<readonly Fact[]> {
  for (let after = 0; after < through;) {
    const page: Fact[] = [];
    for (const fact of log.read(mound, after)) {
      if (fact.place <= through) page.push(fact);
      if (page.length === PAGE || fact.place >= through) break;
    }
    if (page.length > 0) yield page;
    if (page.length < PAGE) return;
    after = page.at(-1)!.place;
    await setImmediate();
  }
}
