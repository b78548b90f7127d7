import { Router, type NextFunction, type Request, type Response } from 'express';
import { knowsSession } from '../../core/session/ledger.ts';
import { exportFacts, exportThrows } from '../files-out/export.ts';
import type { ReadableLog } from '../files-out/readable-log.ts';
import type { Of } from '../files-out/rows.ts';
import type { Ledgers } from '../ledgers.ts';
import type { FactLog } from '../log/fact-log.ts';
import { exportQuestionSchema, rangeOf } from './export-question.ts';
import { listAthletes, moundOf } from './mounds.ts';
import { notAQuestion, unknownAthlete, unknownSession } from './refuse.ts';

export interface ExportParts {
  readonly log: FactLog;
  readonly ledgers: Ledgers;
}

type One = Exclude<Of, { kind: 'all' }>;

const TYPES = { csv: 'text/csv; charset=utf-8', parquet: 'application/vnd.apache.parquet', jsonl: 'application/x-ndjson; charset=utf-8' } as const;

/** Everything out: tables of throws, and facts as they were said. A coach's alone. */
export function exportRoutes({ log, ledgers }: ExportParts): Router {
  const routes = Router();
  /** Of a session its own mound alone is read; of an athlete every mound can have heard. */
  const logOf = (of: Of): ReadableLog => ({
    get id() {
      return log.id;
    },
    mounds: () => (of.kind === 'session' ? ledgers.all().flatMap((ledger) => (knowsSession(ledger, of.id) ? [ledger.mound] : [])) : log.mounds()),
    read: log.read,
  });
  const throws = (request: Request, response: Response, next: NextFunction, of: Of): void => {
    const question = exportQuestionSchema.safeParse(request.query);
    if (!question.success) return notAQuestion(response, 'Throws cannot be given out', question.error);
    const { format, units, names } = question.data;
    // An id is made of a name, and so would be the name of the file.
    asFile(response, `offpace-${of.kind === 'all' || names === 'no' ? 'throws' : of.id}.${format}`, TYPES[format]);
    exportThrows(logOf(of), { of, range: rangeOf(question.data), names: names === 'yes' }, { format, units }, response).catch(unlessGone(next));
  };
  const facts = (response: Response, next: NextFunction, of: Of): void => {
    asFile(response, `offpace-${of.kind === 'all' ? 'facts' : of.id}.jsonl`, TYPES.jsonl);
    exportFacts(logOf(of), of, response).catch(unlessGone(next));
  };
  const known = (response: Response, of: One): boolean => {
    if (of.kind === 'session' ? moundOf(ledgers.all(), of.id) !== undefined : listAthletes(ledgers.all()).some(({ id }) => id === of.id)) return true;
    if (of.kind === 'session') unknownSession(response);
    else unknownAthlete(response);
    return false;
  };
  routes.get('/throws', (request, response, next) => throws(request, response, next, { kind: 'all' }));
  routes.get('/facts', (_, response, next) => facts(response, next, { kind: 'all' }));
  for (const kind of ['athlete', 'session'] as const) {
    routes.get(`/${kind}s/:id/throws`, (request, response, next) => {
      const of: One = { kind, id: request.params.id };
      if (known(response, of)) throws(request, response, next, of);
    });
    routes.get(`/${kind}s/:id/facts`, (request, response, next) => {
      const of: One = { kind, id: request.params.id };
      if (known(response, of)) facts(response, next, of);
    });
  }
  return routes;
}

function asFile(response: Response, name: string, type: string): void {
  response.set({ 'Content-Type': type, 'Content-Disposition': `attachment; filename="${name}"` });
}

/** Whoever closed the connection wants nothing any more. */
function unlessGone(next: NextFunction): (error: NodeJS.ErrnoException) => void {
  return (error) => {
    if (error.code !== 'ERR_STREAM_PREMATURE_CLOSE') next(error);
  };
}
