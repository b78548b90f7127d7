import { json, Router } from 'express';
import { z } from 'zod';
import type { ErasedAnswer } from '../../core/facts/wire.ts';
import type { Ledger } from '../../core/session/ledger.ts';
import type { WhoAsks } from '../access/who-asks.ts';
import { signature } from '../access/who.ts';
import type { Ledgers } from '../ledgers.ts';
import type { FactLog } from '../log/fact-log.ts';
import { copiesHolding } from '../log/kept-copies.ts';
import type { OneAtATime } from '../one-at-a-time.ts';
import { listAthletes } from './mounds.ts';
import { readBody } from './read-body.ts';
import { refuse, unknownAthlete } from './refuse.ts';

export interface AthleteDataParts {
  readonly log: FactLog;
  readonly ledgers: Ledgers;
  readonly whoAsks: WhoAsks;
  readonly dataFolder: string;
  /** What is said and what is erased wait for each other: nobody writes of an athlete what was read before the erasure. */
  readonly inTurn: OneAtATime;
}

export const erasingSchema = z.strictObject({ name: z.string().trim().min(1).max(60) });

/** All that is kept of one athlete erased for good; what gives it out stands with the other exports. A coach's alone. */
export function athleteDataRoutes({ log, ledgers, whoAsks, dataFolder, inTurn }: AthleteDataParts): Router {
  const routes = Router();
  routes.post('/athletes/:id/erase', json({ limit: '4kb' }), (request, response) => {
    const { id } = request.params;
    const body = readBody(erasingSchema, request, response);
    if (body === null) return;
    return inTurn(() => whyNot(ledgers.all(), id, body.name) ?? log.erase(id, signature(whoAsks(request)))).then(async (reply) => {
      switch (reply.kind) {
        case 'erased': return void response.json({ ...reply, stillIn: await copiesHolding(dataFolder, id) } satisfies ErasedAnswer);
        case 'unknown': return unknownAthlete(response);
        case 'failed': return refuse(response, 503, 'storage-failed', '', reply.sentence);
        case 'not-yet': return refuse(response, 409, reply.code, reply.path, reply.sentence);
      }
    });
  });
  return routes;
}

interface NotYet {
  readonly kind: 'not-yet';
  readonly code: string;
  readonly path: string;
  readonly sentence: string;
}

/** Why an athlete is not erased at this moment; null where nothing is in the way. */
function whyNot(ledgers: readonly Ledger[], id: string, name: string): NotYet | { readonly kind: 'unknown' } | null {
  const athlete = listAthletes(ledgers).find((one) => one.id === id);
  if (athlete === undefined) return { kind: 'unknown' };
  if (name.normalize() !== athlete.name.normalize()) return { kind: 'not-yet', code: 'other-name', path: 'name', sentence: 'This is not the name of the athlete, so nothing was erased; type it as it stands in the list of athletes.' };
  const open = ledgers.find(({ open }) => Object.values(open).some(({ athlete: one }) => one.id === id));
  return open === undefined ? null : { kind: 'not-yet', code: 'session-open', path: 'id', sentence: `A session of the athlete is open on ${open.mound}, so nothing was erased; close it first.` };
}
