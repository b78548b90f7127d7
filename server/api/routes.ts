import { Router } from 'express';
import { sessionQuestionSchema } from '../../core/facts/session-search.ts';
import { idSchema } from '../../core/facts/spelling.ts';
import { growthSince } from '../../core/session/growth.ts';
import { searchSessions } from '../../core/session/session-search.ts';
import { sessionRecord } from '../../core/session/session-record.ts';
import type { Presence } from '../devices/presence.ts';
import { accessRoutes, openRoutes, type AccessParts } from './access-routes.ts';
import { onlyFor } from './only-for.ts';
import { athleteDataRoutes, type AthleteDataParts } from './athlete-data.ts';
import { athleteDays } from './athlete-days.ts';
import { importRoutes, type ImportParts } from './import-routes.ts';
import { athleteRecords } from './athlete-records.ts';
import { listAllSessions, listAthletes, listAthleteSessions, listFindable, listMounds, moundOf } from './mounds.ts';
import { exportRoutes } from './exports.ts';
import { notAQuestion, refuse, unknownAthlete, unknownSession } from './refuse.ts';
import { signInRoutes } from './sign-in.ts';

interface ApiParts extends AccessParts, AthleteDataParts, ImportParts {
  readonly presence: Presence;
  readonly build: string;
}

/** What screens read besides the live views; all of it under /api. What stands behind `onlyFor` is a coach's alone. */
export function apiRoutes(parts: ApiParts): Router {
  const { log, ledgers, presence, build } = parts;
  const routes = Router();
  routes.use((_, response, next) => {
    response.set('Cache-Control', 'no-store');
    next();
  });
  routes.param('id', (_, response, next, id: string) => {
    if (idSchema.safeParse(id).success) next();
    else refuse(response, 404, 'unknown-id', 'id', 'Nothing here can have this id; the lists of sessions and athletes have those there are.');
  });
  routes.get('/health', (request, response) => {
    const inside = { log: log.id, refusals: log.refusals(), damaged: log.damaged() };
    response.json({ kind: 'healthy', build, ...(parts.whoAsks(request).kind === 'coach' ? inside : {}) });
  });
  // Asked for seldom, and made of every schema there is.
  routes.get('/openapi.json', async (_, response) => void response.json((await import('./described/openapi.ts')).openapiDocument()));
  routes.use(openRoutes(parts), signInRoutes(parts));
  routes.use(onlyFor(parts.whoAsks, { kind: 'ask' }));
  routes.use(accessRoutes(parts), athleteDataRoutes(parts), exportRoutes(parts), importRoutes(parts));
  routes.get('/athletes', (_, response) => void response.json(listAthletes(ledgers.all())));
  routes.get('/athletes/:id/days', (request, response) => {
    const days = athleteDays(ledgers.all(), request.params.id);
    if (days === null) return unknownAthlete(response);
    response.json(days);
  });
  routes.get('/athletes/:id/sessions', (request, response) => {
    const sessions = listAthleteSessions(ledgers.all(), request.params.id);
    if (sessions === null) return unknownAthlete(response);
    response.json(sessions);
  });
  routes.get('/athletes/:id/records', (request, response) => {
    const records = athleteRecords(ledgers.all(), request.params.id);
    if (records === null) return unknownAthlete(response);
    response.json(records);
  });
  routes.get('/mounds', (_, response) => void response.json(listMounds(ledgers.all(), presence.mounds(), presence.stateOf)));
  routes.get('/sessions', (_, response) => void response.json(listAllSessions(ledgers.all())));
  routes.get('/sessions/found', (request, response) => {
    const question = sessionQuestionSchema.safeParse(request.query);
    if (!question.success) return notAQuestion(response, 'Sessions cannot be looked for', question.error);
    response.json(searchSessions(listFindable(ledgers.all()), question.data));
  });
  routes.get('/sessions/:id', (request, response) => {
    const { id } = request.params;
    const recorded = ledgers.recorded(id);
    if (recorded === null) return unknownSession(response);
    response.json({ session: id, mound: recorded.mound, log: log.id, ...recorded.slice });
  });
  routes.get('/sessions/:id/since/:place', (request, response) => {
    const { id, place } = request.params;
    if (!/^\d{1,15}$/.test(place)) return refuse(response, 400, 'not-a-place', 'place', `A place in the log is a whole number from 0 on, not "${place}".`);
    const recorded = ledgers.recorded(id);
    if (recorded === null) return unknownSession(response);
    response.json({ log: log.id, ...growthSince(recorded.slice, Number(place)) });
  });
  routes.get('/sessions/:id/record', (request, response) => {
    const { id } = request.params;
    const ledger = moundOf(ledgers.all(), id);
    if (ledger === undefined) return unknownSession(response);
    response.json(sessionRecord(ledger, id));
  });
  routes.use((request, response) => refuse(response, 404, 'unknown-address', '', `There is no ${request.method} ${request.baseUrl}${request.path}.`));
  return routes;
}
