import { json, Router, type Request } from 'express';
import { z } from 'zod';
import { idSchema } from '../../core/facts/spelling.ts';
import { sessionIn } from '../../core/session/ledger.ts';
import { addressForPhones, type Listening } from '../access/addresses.ts';
import { giveToken } from '../access/cookies.ts';
import type { Entries } from '../access/entries.ts';
import type { Access } from '../access/keep-access.ts';
import type { Ledgers } from '../ledgers.ts';
import { moundOf } from './mounds.ts';
import { readBody } from './read-body.ts';
import { refuse, unknownSession } from './refuse.ts';

export interface AccessParts extends Access {
  readonly ledgers: Ledgers;
  readonly listening: Listening;
  readonly entries: Entries;
}

/** A session that nobody closes does not keep its phones for ever. */
const GLANCE_LASTS_MS = 24 * 3600_000;
/** The longest that browsers keep a cookie. */
const SCREEN_LASTS_MS = 400 * 24 * 3600_000;
const LARGEST_BODY = '4kb';

export const openSchema = z.strictObject({ secret: z.string().min(1).max(200) });
export const grantSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('viewer'), mound: idSchema }),
  z.strictObject({ kind: z.literal('device'), mound: idSchema }),
]);

/** What anybody may ask: who they are here, and to be let in by a code or a link. */
export function openRoutes({ grants, codes, entries, whoAsks, nowMs }: AccessParts): Router {
  const routes = Router();
  routes.get('/me', (request, response) => void response.json(whoAsks(request)));
  routes.post('/open', json({ limit: LARGEST_BODY }), (request, response) => {
    const body = readBody(openSchema, request, response);
    if (body === null) return;
    const used = codes.use(body.secret);
    if (used !== null) {
      const { token } = grants.make({ kind: 'glance', ...used }, nowMs() + GLANCE_LASTS_MS);
      giveToken(response, 'glance', token, GLANCE_LASTS_MS);
      entries.cameIn('code');
      return void response.json({ to: `/glance/${used.mound}?session=${used.session}` });
    }
    const to = grants.of(body.secret)?.to;
    if (to?.kind !== 'viewer') {
      entries.wasRefused('code', 'link-over');
      return refuse(response, 410, 'link-over', 'secret', 'This code was used already or is over; ask the coach for a new one.');
    }
    giveToken(response, 'viewer', body.secret, SCREEN_LASTS_MS);
    entries.cameIn('link');
    response.json({ to: `/wall/${to.mound}?kiosk` });
  });
  return routes;
}

/** What a coach may ask: to let others in, to see who was let in, and to end that. */
export function accessRoutes({ ledgers, grants, codes, listening }: AccessParts): Router {
  const routes = Router();
  const linkFor = (request: Request, secret: string) => {
    const { address, reach } = addressForPhones(request, listening);
    // Behind the #, a secret stays in the browser: no server on the way writes it down.
    return { url: `${address}/open#${secret}`, reach };
  };
  routes.post('/sessions/:id/glance-code', (request, response) => {
    const { id: session } = request.params;
    const ledger = moundOf(ledgers.all(), session);
    if (ledger === undefined) return unknownSession(response);
    if (sessionIn(ledger, session)!.closedAtMs !== null) return refuse(response, 409, 'session-closed', 'id', 'This session is closed, and its Glance with it; open another one first.');
    const { id, code, endsAtMs } = codes.make(ledger.mound, session);
    response.status(201).json({ id, code, ...linkFor(request, code), expiresAtMs: endsAtMs });
  });
  routes.get('/glance-codes/:id', (request, response) => {
    const state = codes.stateOf(request.params.id);
    if (state === null) return refuse(response, 404, 'unknown-code', 'id', 'There is no code with this id any more; ask for a new one.');
    response.json({ state });
  });
  routes.get('/grants', (_, response) => void response.json(grants.list().map(({ id, to, madeAtMs, endsAtMs }) => ({ id, to, madeAtMs, endsAtMs }))));
  routes.post('/grants', json({ limit: LARGEST_BODY }), (request, response) => {
    const to = readBody(grantSchema, request, response);
    if (to === null) return;
    const { grant, token } = grants.make(to, null);
    response.status(201).json({ id: grant.id, token, ...(to.kind === 'viewer' ? linkFor(request, token) : {}) });
  });
  routes.delete('/grants/:id', (request, response) => {
    if (grants.end(({ id }) => id === request.params.id) === 0) return refuse(response, 404, 'unknown-grant', 'id', 'There is nobody with this id here; the list of grants has who there is.');
    response.status(204).end();
  });
  return routes;
}
