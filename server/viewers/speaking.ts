import type { CoachSays } from '../../core/facts/coach.ts';
import { FACT_VERSION } from '../../core/facts/fact.ts';
import { saySchema, type Refusal, type SayReply } from '../../core/facts/wire.ts';
import { objection } from '../../core/session/admit.ts';
import { foldFact } from '../../core/session/fold.ts';
import { sessionIn, type Ledger } from '../../core/session/ledger.ts';
import { notTheirs } from '../access/may.ts';
import { signature, type Who } from '../access/who.ts';
import { complaint } from '../complaint.ts';
import type { Ledgers } from '../ledgers.ts';
import type { FactLog } from '../log/fact-log.ts';
import type { OneAtATime } from '../one-at-a-time.ts';
import { toldAfter, toldBefore } from './other-mounds.ts';

/**
 * Takes what coaches and athletes say, one statement after the other: each is judged by a state that holds the one before, so two
 * coaches cannot both close the same session. A request that is said again gets the answer it had.
 */
export function takeStatements(log: FactLog, ledgers: Ledgers, inTurn: OneAtATime): (who: Who, value: unknown) => Promise<SayReply> {
  async function speak(who: Who, value: unknown): Promise<SayReply> {
    const said = saySchema.safeParse(value);
    if (!said.success) return refused({ code: 'malformed', ...complaint(said.error) });
    const { request, mound, says } = said.data;
    const notAllowed = notTheirs(who, { kind: 'say', mound, says });
    if (notAllowed !== null) return refused(within(notAllowed));
    const again = log.knowsRequest(request);
    const tellings = again ? [] : toldBefore(ledgers.all(), mound, says);
    if (!again) {
      const objected = elsewhere(mound, says) ?? objection(havingHeard(ledgers.of(mound), tellings), says);
      if (objected !== null) return refused(within(objected));
    }
    for (const telling of tellings) {
      // A session that opens without knowing of pain elsewhere would advise throws: rather no session.
      const told = await log.append({ ...telling, by: 'server' });
      if (told.kind === 'failed') return refused({ code: 'storage-failed', path: '', sentence: told.sentence });
    }
    const reply = await log.append({ mound, by: signature(who), said: says, request });
    switch (reply.kind) {
      case 'stored': {
        for (const telling of again ? [] : toldAfter(ledgers.all(), mound, says)) await log.append({ ...telling, by: 'server' });
        return { kind: 'stored', place: reply.place };
      }
      case 'failed': return refused({ code: 'storage-failed', path: '', sentence: reply.sentence });
      case 'conflict': return refused(reply);
    }
  }

  /** A session has one mound; its id names it everywhere. */
  function elsewhere(mound: string, says: CoachSays): { code: string; path: string; sentence: string } | null {
    if (says.kind !== 'session-opened') return null;
    const other = ledgers.all().find((ledger) => ledger.mound !== mound && sessionIn(ledger, says.session) !== undefined);
    return other === undefined ? null : { code: 'session-known', path: 'session', sentence: `There is already a session ${says.session} on mound ${other.mound}; choose another id.` };
  }

  return (who, value) => inTurn(() => speak(who, value));
}

/** The state of a mound as it will be once it was told; what is refused then is never told. */
function havingHeard(ledger: Ledger, tellings: ReturnType<typeof toldBefore>): Ledger {
  return tellings.reduce((before, { mound, said }) => foldFact(before, { place: before.place + 1, mound, atMs: before.atMs, by: 'server', version: FACT_VERSION, said }), ledger);
}

/** An objection to what was said, where it stands in the request. */
function within<Objected extends { readonly path: string }>(objected: Objected): Objected {
  return { ...objected, path: objected.path === '' ? 'says' : `says.${objected.path}` };
}

function refused({ code, path, sentence }: { readonly code: string; readonly path: string; readonly sentence: string }): Refusal {
  return { kind: 'refused', code, path, sentence };
}
