import { Validator } from '@seriousme/openapi-schema-validator';
import { Ajv2020 } from 'ajv/dist/2020.js';
import addFormats from 'ajv-formats';
import type { Router } from 'express';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { openapiDocument } from '../../../server/api/described/openapi.ts';
import { OPERATIONS } from '../../../server/api/described/operations.ts';
import { overTls } from '../../../server/api/over-tls.ts';
import { apiRoutes } from '../../../server/api/routes.ts';
import { Browser, coachAt, openServer } from '../access/open-server.ts';
import { DeviceClient } from '../device-client.ts';
import { opened, summary } from '../frames.ts';

interface Layer {
  readonly route?: { readonly path: string; readonly methods: Readonly<Record<string, boolean>> };
  readonly handle: { readonly stack?: readonly Layer[] };
}

/** Every route of a router and of those within it, as METHOD and path. */
function routesOf(layers: readonly Layer[]): string[] {
  return layers.flatMap(({ route, handle }) => (route === undefined ? routesOf(handle.stack ?? []) : Object.keys(route.methods).map((method) => `${method} ${route.path}`)));
}

const stackOf = (router: Router): readonly Layer[] => router.stack as unknown as readonly Layer[];
const NO_PARTS = { listening: { host: '', tls: false, authority: null } } as unknown as Parameters<typeof apiRoutes>[0];
const described = OPERATIONS.map(({ method, path }) => `${method} ${path}`);

describe('The description of the API', () => {
  test('has every route that the server has, and no other', () => {
    const served = [...routesOf(stackOf(apiRoutes(NO_PARTS))), ...routesOf(stackOf(overTls(NO_PARTS.listening))).filter((route) => route.includes(' /api/')).map((route) => route.replace(' /api', ' '))];
    expect(served.length).toBeGreaterThan(25);
    expect(described.toSorted()).toEqual(served.toSorted());
  });

  test('is a document of OpenAPI 3.1, and stands in docs/api as it is', async () => {
    const document = openapiDocument();
    const { valid, errors } = await new Validator().validate(structuredClone(document) as Record<string, unknown>);
    expect(errors ?? []).toEqual([]);
    expect(valid).toBe(true);
    await expect(`${JSON.stringify(document, null, 1)}\n`).toMatchFileSnapshot(fileURLToPath(new URL('../../../docs/api/openapi.json', import.meta.url)));
  });

  test('would be found wrong where it is wrong', async () => {
    const { valid } = await new Validator().validate({ ...openapiDocument(), paths: { '/x': { get: { responses: 'none' } } } });
    expect(valid).toBe(false);
  });

  test('says of every address who may ask, as the door does, and what a coach is answered', async () => {
    const server = await openServer();
    const coach = await coachAt(server);
    await coach.screen().say(opened());
    const { client } = await DeviceClient.greet(server.address, server.token);
    await client.ask({ kind: 'throw', sequence: 1, time: 1, body: summary() });
    const ajv = new Ajv2020({ strict: false, allErrors: true });
    addFormats.default(ajv);
    ajv.addSchema(openapiDocument(), 'api');
    const code = (await coach.ask('POST', '/api/sessions/s-1/glance-code')).body;
    const ids: Readonly<Record<string, string>> = { athletes: 'ana-1', sessions: 's-1', 'glance-codes': code['id'] as string };
    for (const { method, path, who, answers } of OPERATIONS) {
      const address = `/api${path.replace(':id', ids[path.split('/')[1]!] ?? 'none').replace(':place', '0')}`;
      const stranger = await new Browser(server).ask(method.toUpperCase(), address, method === 'post' ? {} : undefined);
      expect([address, stranger.body['code'] === 'not-let-in']).toEqual([address, who === 'coach']);
      if (method !== 'get' || path === '/certificate' || !('is' in answers)) continue;
      const { status, body } = await coach.ask('GET', address);
      const pointer = `api#/paths/${path.replaceAll(/:(\w+)/g, '{$1}').replaceAll('/', '~1')}/get/responses/${status}/content/application~1json/schema`;
      const check = ajv.getSchema(encodeURI(pointer));
      expect([address, status, check?.(body), check?.errors ?? null]).toEqual([address, 200, true, null]);
    }
  });
});
