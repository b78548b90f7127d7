import { json, Router, type Response } from 'express';
import { z } from 'zod';
import { giveToken, takeTokens, tokensOf } from '../access/cookies.ts';
import type { Entries } from '../access/entries.ts';
import type { Access } from '../access/keep-access.ts';
import { readBody } from './read-body.ts';
import { refuse } from './refuse.ts';

/** A working day: whoever has the tablet tomorrow signs in again. */
const COACH_LASTS_MS = 12 * 3600_000;

export const signInSchema = z.strictObject({
  name: z.string().trim().min(1).max(40).regex(/^[\p{L}\p{M}\p{N} .'’_-]+$/u, 'must be made of letters, digits, spaces and . \' _ -'),
  passphrase: z.string().min(1).max(1000),
});

/** Signs coaches in, by the passphrase that they share and the name that each gives, and out. */
export function signInRoutes({ grants, attempts, passphrase, entries, nowMs }: Access & { readonly entries: Entries }): Router {
  const routes = Router();
  routes.post('/sign-in', json({ limit: '4kb' }), (request, response) => {
    const body = readBody(signInSchema, request, response);
    if (body === null) return;
    if (passphrase === null) return refuse(response, 409, 'no-passphrase', '', 'Only this machine reaches this server, and whoever sits at it is coach; nobody signs in.');
    const address = request.socket.remoteAddress ?? '';
    const waitMs = attempts.begin(address);
    if (waitMs > 0) {
      entries.wasRefused('passphrase', 'too-many-attempts');
      return tooSoon(response, Math.ceil(waitMs / 1000));
    }
    return passphrase.matches(body.passphrase).then((matches) => {
      if (!matches) {
        entries.wasRefused('passphrase', 'wrong-passphrase');
        return refuse(response, 401, 'wrong-passphrase', 'passphrase', 'This is not the passphrase of this server.');
      }
      attempts.succeeded(address);
      const { token } = grants.make({ kind: 'coach', name: body.name }, nowMs() + COACH_LASTS_MS);
      giveToken(response, 'coach', token, COACH_LASTS_MS);
      entries.cameIn('passphrase');
      response.json({ kind: 'coach', name: body.name });
    });
  });
  routes.post('/sign-out', (request, response) => {
    const own = new Set(tokensOf(request).map((token) => grants.of(token)?.id));
    if (grants.end(({ id, to }) => to.kind !== 'viewer' && own.has(id)) > 0) entries.leftByThemselves();
    takeTokens(response);
    response.json({ kind: 'nobody' });
  });
  return routes;
}

function tooSoon(response: Response, seconds: number): void {
  response.set('Retry-After', String(seconds));
  refuse(response, 429, 'too-many-attempts', '', `There were too many attempts; try again in ${seconds} s.`);
}
