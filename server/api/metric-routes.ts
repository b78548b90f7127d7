import { Router } from 'express';
import { NOT_LET_IN, NOT_SHOWN, notTheirs } from '../access/may.ts';
import { isOnThisMachine, type WhoAsks } from '../access/who-asks.ts';
import type { Metrics } from '../metrics.ts';
import { refuse } from './refuse.ts';

/** For whoever looks after the server: whether it works, for anybody to ask, and its counts, for a coach or a program on this machine. */
export function metricRoutes(metrics: Metrics, whoAsks: WhoAsks): Router {
  const routes = Router();
  routes.use(['/healthz', '/metrics'], (_, response, next) => {
    response.set('Cache-Control', 'no-store');
    next();
  });
  routes.get('/healthz', (_, response) => {
    if (metrics.canStore()) response.json({ kind: 'healthy' });
    else refuse(response, 503, 'storage-failed', '', 'The newest throw or statement could not be written to disk; its sender was told. Look at the log of the server.');
  });
  routes.get('/metrics', (request, response, next) => {
    const who = whoAsks(request);
    if (notTheirs(who, { kind: 'ask' }) !== null && !isOnThisMachine(request)) {
      const { code, path, sentence } = who.kind === 'nobody' ? NOT_LET_IN : NOT_SHOWN;
      return refuse(response, who.kind === 'nobody' ? 401 : 403, code, path, sentence);
    }
    metrics.read().then(({ type, text }) => response.set('Content-Type', type).send(text), next);
  });
  return routes;
}
