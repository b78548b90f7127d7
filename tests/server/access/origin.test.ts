import { expect, test } from 'vitest';
import { foreignness } from '../../../server/access/origin.ts';

test.each([
  [{ host: '127.0.0.1:8080' }],
  [{ host: 'localhost:8080', origin: 'http://localhost:8080' }],
  [{ host: '[::1]:8080', origin: 'http://[::1]:8080' }],
  [{ host: '192.168.4.20:8080' }],
  [{ host: 'bullpen.example:8080', origin: 'http://bullpen.example:8080' }],
])('a request to us and from a page of ours is let in: %j', (headers) => {
  expect(foreignness(headers, 'Bullpen.example')).toBeNull();
});

test.each([
  [{}],
  [{ host: 'rebound.example:8080' }],
  [{ host: 'rebound.example:8080', origin: 'http://rebound.example:8080' }],
  [{ host: '127.0.0.1:8080', origin: 'http://127.0.0.1:9090' }],
  [{ host: '127.0.0.1:8080', origin: 'http://elsewhere.example' }],
  [{ host: '127.0.0.1:8080', origin: 'null' }],
  [{ host: 'not a host' }],
])('a request under a foreign name or from a foreign page is turned away: %j', (headers) => {
  expect(foreignness(headers, '127.0.0.1')).toMatch(/^[A-Z].*\.$/);
});
