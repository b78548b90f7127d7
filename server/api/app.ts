import express, { type ErrorRequestHandler, type Express, type Router } from 'express';
import helmet from 'helmet';
import type { Listening } from '../access/addresses.ts';
import { foreignness } from '../access/origin.ts';
import { overTls } from './over-tls.ts';
import { refuse } from './refuse.ts';

/** Everything that is served over plain HTTP, behind one set of protections. */
export function httpApp({ api, metrics, pages, listening, onTrouble }: { api: Router; metrics: Router; pages: Router; listening: Listening; onTrouble(error: unknown): void }): Express {
  const app = express();
  app.disable('x-powered-by');
  app.use(protections());
  app.use((request, response, next) => {
    const foreign = foreignness(request, listening.host);
    if (foreign === null) next();
    else refuse(response, 403, 'foreign', '', foreign);
  });
  app.use(overTls(listening));
  app.use('/api', api);
  app.use(metrics);
  app.use(pages);
  app.use((request, response) => refuse(response, 404, 'unknown-address', '', `There is no ${request.path}; the start page lists the screens.`));
  app.use(failures(onTrouble));
  return app;
}

/** The pages run no inline script and carry no inline style; what d3 and solid set on elements goes past this policy. */
function protections(): ReturnType<typeof helmet> {
  return helmet({
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: ["'self'"],
        // A video that a viewer has chosen is shown from this browser's own memory.
        mediaSrc: ["'self'", 'blob:'],
        imgSrc: ["'self'", 'data:'],
        objectSrc: ["'none'"],
        baseUri: ["'none'"],
        formAction: ["'self'"],
        frameAncestors: ["'none'"],
      },
    },
    // Plain HTTP on this machine; a browser told to insist on TLS would never come back.
    strictTransportSecurity: false,
  });
}

/** A bad address is the caller's; anything else is a bug: reported in full to the log, in one sentence to the caller. */
function failures(onTrouble: (error: unknown) => void): ErrorRequestHandler {
  return (error: { readonly status?: number; readonly type?: string }, _, response, next) => {
    if (response.headersSent) return next(error);
    if (error.status !== undefined && error.status < 500) return refuse(response, error.status, 'malformed', '', error.type === undefined ? 'This address cannot be read; check its spelling.' : 'What was sent cannot be read; send JSON, and less of it.');
    onTrouble(error);
    refuse(response, 500, 'internal', '', 'The server met a fault of its own; its log says which. What was thrown is safe.');
  };
}
