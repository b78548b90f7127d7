import { once } from 'node:events';
import { connect, type AddressInfo, type Socket } from 'node:net';
import { expect, onTestFinished, test } from 'vitest';
import { httpServer } from '../../server/listening.ts';

/** A server that waits a twentieth of a second, and what it has answered a connection by its end. */
async function hasty() {
  const http = httpServer((request, response) => void request.resume().on('end', () => response.end('whole')), { headersTimeout: 50, requestTimeout: 100, connectionsCheckingInterval: 20 });
  http.listen(0, '127.0.0.1');
  await once(http, 'listening');
  onTestFinished(() => http.closeAllConnections());
  onTestFinished(() => void http.close());
  return async (sent: string): Promise<string> => {
    const socket: Socket = connect((http.address() as AddressInfo).port, '127.0.0.1');
    let heard = '';
    socket.on('data', (data: Buffer) => (heard += data.toString('latin1')));
    socket.on('error', () => {});
    socket.write(sent);
    await once(socket, 'close');
    return heard.split('\r\n')[0]!;
  };
}

test.each([
  ['whose head never ends', 'GET / HTTP/1.1\r\nHost: a\r\n'],
  ['whose body never ends', 'POST / HTTP/1.1\r\nHost: a\r\nContent-Length: 100\r\n\r\nhalf'],
])('a request %s is given up', async (_, sent) => {
  const ask = await hasty();
  expect(await ask(sent)).toBe('HTTP/1.1 408 Request Timeout');
});

test('a connection on which nothing is asked is given up, and a whole request is answered', async () => {
  const ask = await hasty();
  expect(await ask('')).toMatch(/^(?:HTTP\/1\.1 408 Request Timeout)?$/);
  expect(await ask('GET / HTTP/1.1\r\nHost: a\r\nConnection: close\r\n\r\n')).toBe('HTTP/1.1 200 OK');
});

test('a head beyond 16 KiB is refused', async () => {
  const ask = await hasty();
  expect(await ask(`GET / HTTP/1.1\r\nHost: a\r\nCookie: ${'x'.repeat(17_000)}\r\n\r\n`)).toBe('HTTP/1.1 431 Request Header Fields Too Large');
});
