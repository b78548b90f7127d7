import type { IncomingMessage } from 'node:http';
import { hostname } from 'node:os';
import { expect, test } from 'vitest';
import { foreignness } from '../../../server/access/origin.ts';

const asked = (headers: IncomingMessage['headers'], encrypted = false) => ({ headers, socket: { encrypted } as unknown as IncomingMessage['socket'] });

test.each([
  [{ host: '127.0.0.1:8080' }],
  [{ host: 'localhost:8080', origin: 'http://localhost:8080' }],
  [{ host: '[::1]:8080', origin: 'http://[::1]:8080' }],
  [{ host: '192.168.4.20:8080' }],
  [{ host: `${hostname()}:8080` }],
  [{ host: `${hostname()}.local:8080` }],
  [{ host: 'bullpen.example:8080', origin: 'http://bullpen.example:8080' }],
])('a request to us and from a page of ours is let in: %j', (headers) => {
  expect(foreignness(asked(headers), 'Bullpen.example')).toBeNull();
});

test.each([
  [{}],
  [{ host: 'rebound.example:8080' }],
  [{ host: 'rebound.example:8080', origin: 'http://rebound.example:8080' }],
  [{ host: '127.0.0.1:8080', origin: 'http://127.0.0.1:9090' }],
  [{ host: '127.0.0.1:8080', origin: 'http://elsewhere.example' }],
  [{ host: '127.0.0.1:8080', origin: 'null' }],
  [{ host: 'not a host' }],
  [{ host: '127.0.0.1:8080', origin: 'https://127.0.0.1:8080' }],
])('a request under a foreign name or from a foreign page is turned away: %j', (headers) => {
  expect(foreignness(asked(headers), '127.0.0.1')).toMatch(/^[A-Z].*\.$/);
});

test('over TLS a page that came without it is foreign', () => {
  const host = '192.168.4.20:8080';
  expect(foreignness(asked({ host, origin: `https://${host}` }, true), '0.0.0.0')).toBeNull();
  expect(foreignness(asked({ host, origin: `http://${host}` }, true), '0.0.0.0')).toMatch(/^Pages of other sites/);
});
