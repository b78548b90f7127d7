import { Agent, request as begin } from 'node:http';
import { text } from 'node:stream/consumers';
import type { Router } from 'express';
import * as fc from 'fast-check';
import { apiRoutes } from '../../server/api/routes.ts';
import { inBatches, type Chance } from './cases.ts';
import { mutated, texts } from './mutate.ts';
import type { UnderFire } from './server-under-fire.ts';

export interface Route {
  readonly method: string;
  readonly path: string;
}

interface Request extends Route {
  readonly headers: Readonly<Record<string, string>>;
  readonly body: string | null;
}

const AT_ONCE = 16;
const IDS = ['session-1', 'session-2', 'athlete-1', 'fuzz-1', '0', '-1', '99999999999999999999', '%00', '%2e%2e%2f', '%', '%zz', '..', '__proto__', 'constructor', "'", 'x'.repeat(3_000), '%F0%9F%A5%8E', '%ED%A0%80'];
const BODIES = [{ secret: 'guessed' }, { kind: 'viewer', mound: 'fuzz-1' }, { kind: 'device', mound: 'fuzz-1' }, { passphrase: 'wrong' }, {}];
const TYPES = ['application/json', 'application/json; charset=utf-16', 'text/plain', 'multipart/form-data', 'application/x-www-form-urlencoded', 'nonsense'];

/** The routes under /api as the application itself has them, so that a new one is under fire from its first day. */
export function apiRoutesThereAre(): Route[] {
  // Only listed, never asked: what the routes are made of is not touched.
  return routesIn(apiRoutes(new Proxy({}, { get: () => () => () => undefined }) as never)).map(({ method, path }) => ({ method, path: `/api${path}` }));
}

function routesIn(router: Router): Route[] {
  return router.stack.flatMap((layer) => {
    const inner = layer.handle as unknown as Partial<Router>;
    if (layer.route !== undefined) return layer.route.stack.map(({ method }) => ({ method: method.toUpperCase(), path: layer.route!.path as string }));
    return inner.stack === undefined ? [] : routesIn(inner as Router);
  });
}

function requests(routes: readonly Route[]): fc.Arbitrary<Request> {
  const somewhere = fc.oneof(
    { weight: 8, arbitrary: fc.constantFrom(...routes) },
    { weight: 1, arbitrary: fc.record({ method: fc.constantFrom('GET', 'POST', 'PUT', 'DELETE', 'PATCH', 'OPTIONS', 'HEAD', 'TRACE', 'PROPFIND'), path: fc.constantFrom(...routes.map(({ path }) => path), '/wall/north-1', '/', '/assets/none.js', '/nowhere', '/socket.io/', '/device') }) },
  );
  const queries = fc.oneof({ weight: 3, arbitrary: fc.constant('') }, fc.webQueryParameters().map((query) => `?${query}`), fc.constantFrom('?a[b]=c', '?page=-1', '?page=1&page=2', '?from=2026-13-45', '?__proto__[x]=1', `?q=${'a'.repeat(5_000)}`));
  const bodies = fc.option(texts(mutated(fc.constantFrom<unknown>(...BODIES))));
  const headers = fc.record({ 'content-type': fc.constantFrom(...TYPES), 'cookie': fc.constantFrom('', 'coach=x', 'glance=%00; viewer=', `a=${'b'.repeat(2_000)}`), 'accept-encoding': fc.constantFrom('gzip', 'x'), 'range': fc.constantFrom('bytes=0-', 'bytes=9-1'), 'if-none-match': fc.constantFrom('*', 'W/"0"') }, { requiredKeys: [] });
  return fc.tuple(somewhere, fc.array(fc.constantFrom(...IDS), { minLength: 4, maxLength: 4 }), queries, headers, bodies)
    .map(([{ method, path }, ids, query, more, body]) => ({ method, path: `${filled(path, ids)}${query}`, headers: defined(more), body: ['GET', 'HEAD', 'TRACE'].includes(method) ? null : body }));
}

function filled(path: string, ids: readonly string[]): string {
  let next = 0;
  return path.replaceAll(/:[A-Za-z]+/g, () => ids[next++ % ids.length]!);
}

function defined(headers: Readonly<Record<string, string | undefined>>): Record<string, string> {
  return Object.fromEntries(Object.entries(headers).filter((entry): entry is [string, string] => entry[1] !== undefined));
}

/**
 * Asks over HTTP for what there is and for what there is not. No answer may be the server's own fault, and a refusal under /api must say code and sentence.
 * @returns how many requests were answered so
 */
export function fireHttp(server: UnderFire, routes: readonly Route[], chance: Chance): Promise<number> {
  const agent = new Agent({ keepAlive: true, maxSockets: AT_ONCE });
  return inBatches(requests(routes), chance, async (batch) => {
    let done = 0;
    for (let from = 0; from < batch.length; from += AT_ONCE) {
      await Promise.all(batch.slice(from, from + AT_ONCE).map((request) => answered(server, agent, request)));
      done += Math.min(AT_ONCE, batch.length - from);
    }
    return done;
  }).finally(() => agent.destroy());
}

async function answered(server: UnderFire, agent: Agent, { method, path, headers, body }: Request): Promise<void> {
  const { status, said } = await new Promise<{ status: number; said: string }>((resolve, reject) => {
    const { hostname, port } = new URL(server.address);
    const length = body === null ? {} : { 'content-length': Buffer.byteLength(body) };
    const asked = begin({ agent, hostname, port, method, path, headers: { ...headers, ...length } }, (response) => {
      text(response).then((answer) => resolve({ status: response.statusCode ?? 0, said: answer }), reject);
    });
    asked.on('error', (error) => reject(new Error(`${error.message}: ${method} ${path.slice(0, 300)}`)));
    asked.end(body ?? undefined);
  });
  const isOurs = status < 400 || !path.startsWith('/api/') || method === 'HEAD' || ['code', 'sentence'].every((key) => said.includes(`"${key}":"`));
  if (status >= 500 || !isOurs) throw new Error(`${method} ${path.slice(0, 300)} with ${JSON.stringify({ headers, body }).slice(0, 1_000)} was answered with ${status}: ${said.slice(0, 300)}`);
}
