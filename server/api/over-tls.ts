import { Router } from 'express';
import type { Listening } from '../access/addresses.ts';
import { cameInTheOpen } from '../access/encrypted.ts';
import { refuse } from './refuse.ts';

/** What is served in the open too: without it a phone could not come to trust the server. */
const IN_THE_OPEN = /^\/(?:certificate(?:\.crt)?|api\/certificate|assets\/[^/]+)$/;

/** Leads requests that came without encryption to where there is some, first past what a phone has to accept. */
export function overTls(listening: Listening): Router {
  const { authority } = listening;
  const routes = Router();
  routes.use((request, response, next) => {
    if (!cameInTheOpen(request, listening) || IN_THE_OPEN.test(request.path)) return next();
    if (request.method !== 'GET') return refuse(response, 403, 'needs-tls', '', 'This server is reached over TLS only; use https.');
    const secure = `https://${request.headers.host}${request.originalUrl}`;
    response.redirect(307, authority === null ? secure : `/certificate?to=${encodeURIComponent(request.originalUrl)}`);
  });
  routes.get('/certificate.crt', (_, response) => {
    if (authority === null) return refuse(response, 404, 'unknown-address', '', 'This server made no certificate of its own; there is nothing to accept.');
    response.set({ 'Content-Type': 'application/x-x509-ca-cert', 'Content-Disposition': 'attachment; filename="offpace.crt"', 'Cache-Control': 'no-cache' }).send(authority.der);
  });
  routes.get('/api/certificate', (_, response) => {
    if (authority === null) return refuse(response, 404, 'unknown-address', '', 'This server made no certificate of its own; there is nothing to accept.');
    response.json({ fingerprint: authority.fingerprint });
  });
  return routes;
}
