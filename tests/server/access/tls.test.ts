import { X509Certificate } from 'node:crypto';
import { once } from 'node:events';
import { readFileSync, statSync, writeFileSync } from 'node:fs';
import { request as httpsRequest } from 'node:https';
import { connect as connectPlain } from 'node:net';
import { hostname } from 'node:os';
import path from 'node:path';
import { connect, createServer } from 'node:tls';
import { expect, onTestFinished, test } from 'vitest';
import { selfMade } from '../../../server/access/authority.ts';
import { isPrivate } from '../../../server/access/name-constraints.ts';
import { cameInTheOpen } from '../../../server/access/encrypted.ts';
import { DeviceClient } from '../device-client.ts';
import { folderForTest } from '../folder.ts';
import { handClock } from '../hand-clock.ts';
import { hello } from '../frames.ts';
import { coachAt, openServer } from './open-server.ts';

const SERIAL = '5e'.repeat(32);
const making = (dataFolder: string, hosts: readonly string[], nowMs = Date.UTC(2031, 3, 2)) => ({ dataFolder, hosts, nowMs: () => nowMs, newSerial: () => SERIAL });

/** The certificates of a chain, the server's own first. */
function chain({ cert }: { readonly cert: string }): X509Certificate[] {
  return cert.match(/-----BEGIN[^]+?-----END CERTIFICATE-----/g)!.map((pem) => new X509Certificate(pem));
}

test('the certificate made here is good for every name and address of the machine, for 397 days, and signed by an authority that may sign no other kind', async () => {
  const [own, authority] = chain(await selfMade(making(folderForTest(), ['192.168.4.20', 'bullpen.local', 'localhost', '127.0.0.1'])));
  expect(own!.verify(authority!.publicKey)).toBe(true);
  expect(own!.checkIssued(authority!)).toBe(true);
  expect([own!.checkIP('192.168.4.20'), own!.checkHost('bullpen.local'), own!.checkHost('elsewhere.local')]).toEqual(['192.168.4.20', 'bullpen.local', undefined]);
  expect((Date.parse(own!.validTo) - Date.parse(own!.validFrom)) / 86_400_000).toBe(397);
  expect([own!.ca, authority!.ca]).toEqual([false, true]);
});

test('the authority is kept, so that phones accept it once; it is made anew for a public address that it was not made for', async () => {
  const folder = folderForTest();
  const first = await selfMade(making(folder, ['192.168.4.20']));
  const moved = await selfMade(making(folder, ['10.0.0.7']));
  const elsewhere = await selfMade(making(folder, ['203.0.113.7']));
  expect(moved.authority.fingerprint).toBe(first.authority.fingerprint);
  expect(elsewhere.authority.fingerprint).not.toBe(first.authority.fingerprint);
  expect(statSync(path.join(folder, 'certificate-authority.json')).mode & 0o777).toBe(0o600);
  const late = await selfMade(making(folder, ['203.0.113.7'], Date.UTC(2040, 3, 2)));
  expect(late.authority.fingerprint).not.toBe(elsewhere.authority.fingerprint);
});

test('a damaged authority is said in one sentence and not replaced behind the phones that trust it', async () => {
  const folder = folderForTest();
  writeFileSync(path.join(folder, 'certificate-authority.json'), '{}');
  await expect(selfMade(making(folder, ['127.0.0.1']))).rejects.toThrow(/certificate-authority\.json is damaged; move it away/);
});

test.each([['10.1.2.3', true], ['172.31.0.1', true], ['172.32.0.1', false], ['192.168.4.20', true], ['192.169.0.1', false], ['203.0.113.7', false], ['bullpen.local', true], ['localhost', true], ['bullpen.example', false]])('%s is private: %s', (host, expected) => {
  expect(isPrivate(host)).toBe(expected);
});

test('a phone that trusts the authority trusts it for this building only: what it would sign for a site of the web is refused', async () => {
  const folder = folderForTest();
  const kept = await selfMade(making(folder, ['192.168.4.20'], Date.now()));
  const file = path.join(folder, 'certificate-authority.json');
  // As a thief of the folder would do: the same authority, told that it was made for that site.
  writeFileSync(file, JSON.stringify({ ...JSON.parse(readFileSync(file, 'utf8')), others: ['bank.example'] }));
  const stolen = await selfMade(making(folder, ['bank.example', '127.0.0.1'], Date.now()));
  expect(stolen.authority.fingerprint).toBe(kept.authority.fingerprint);
  const server = createServer({ key: stolen.key, cert: stolen.cert }, (socket) => socket.end());
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');
  onTestFinished(() => void server.close());
  const [, authority] = chain(stolen);
  const asked = connect({ port: (server.address() as { port: number }).port, host: '127.0.0.1', servername: 'bank.example', ca: authority!.toString() });
  const [error] = (await once(asked, 'error')) as [NodeJS.ErrnoException];
  expect(error.message).toMatch(/permitted subtree/);
});

/** One GET over TLS by a program that trusts the server's authority and nothing else. */
function getOverTls(port: number, host: string, address: string, ca: string, headers: Record<string, string> = {}): Promise<{ status: number; headers: NodeJS.Dict<string | string[]>; body: string }> {
  return new Promise((resolve, reject) => {
    httpsRequest({ port, host, path: address, ca, headers }, (response) => {
      let body = '';
      response.setEncoding('utf8').on('data', (text: string) => (body += text)).on('end', () => resolve({ status: response.statusCode!, headers: response.headers, body }));
    }).on('error', reject).end();
  });
}

async function tlsServer() {
  const server = await openServer({ tls: 'self-made' });
  const { certificate } = JSON.parse(readFileSync(path.join(server.dataFolder, 'certificate-authority.json'), 'utf8')) as { certificate: string };
  return { server, ca: certificate };
}

test('one port speaks TLS to those who accept the certificate, by address and by name', async () => {
  const { server, ca } = await tlsServer();
  expect(JSON.parse((await getOverTls(server.port, '127.0.0.1', '/api/me', ca)).body)).toEqual({ kind: 'nobody' });
  expect(JSON.parse((await getOverTls(server.port, 'localhost', '/api/me', ca)).body)).toEqual({ kind: 'nobody' });
  expect(server.exposed).toMatchObject({ encrypted: true, fingerprint: expect.stringMatching(/^(?:[0-9A-F]{2}:){31}[0-9A-F]{2}$/) });
  expect(server.exposed?.addresses).toContain(`https://${hostname()}:${server.port}`);
});

test('TLS older than 1.2 is not spoken', async () => {
  const { server, ca } = await tlsServer();
  const asked = connect({ port: server.port, host: '127.0.0.1', ca, minVersion: 'TLSv1', maxVersion: 'TLSv1.1', ciphers: 'DEFAULT@SECLEVEL=0' });
  const [error] = (await once(asked, 'error')) as [NodeJS.ErrnoException];
  expect(error.code).toMatch(/PROTOCOL_VERSION|ECONNRESET/);
});

test('a cookie over TLS is marked so that it never travels without', async () => {
  const { server, ca } = await tlsServer();
  const answer = await new Promise<NodeJS.Dict<string | string[]>>((resolve, reject) => {
    const asked = httpsRequest({ port: server.port, host: '127.0.0.1', path: '/api/sign-in', method: 'POST', ca, headers: { 'content-type': 'application/json' } }, (response) => resolve(response.resume().headers));
    asked.on('error', reject).end(JSON.stringify({ name: 'Ines Marrow', passphrase: 'four quiet words at dusk' }));
  });
  expect(answer['set-cookie']?.[0]).toMatch(/^__Host-offpace-coach=[^;]+; Max-Age=43200; Path=\/; Expires=[^;]+; HttpOnly; Secure; SameSite=Strict$/);
});

test('programs on this machine go on over plain HTTP, and a device over TLS is taken as well', async () => {
  const { server, ca } = await tlsServer();
  const coach = await coachAt(server);
  const { body } = await coach.ask('POST', '/api/grants', { kind: 'device', mound: 'north-1' });
  const overTls = await DeviceClient.connect(`https://127.0.0.1:${server.port}`, { ca });
  expect(await overTls.ask(hello(String(body['token'])))).toMatchObject({ kind: 'welcome' });
  expect((await DeviceClient.greet(server.address, server.token, { mound: 'south-2', device: 'eye-2' })).welcome).toMatchObject({ kind: 'welcome' });
});

test('from another machine nothing but what a phone needs to trust the server comes without TLS', () => {
  const listening = { host: '0.0.0.0', tls: true, authority: null };
  const socket = (more: object) => ({ socket: { localAddress: '192.168.4.20', ...more } }) as unknown as Parameters<typeof cameInTheOpen>[0];
  expect(cameInTheOpen(socket({ remoteAddress: '192.168.4.31' }), listening)).toBe(true);
  expect(cameInTheOpen(socket({ remoteAddress: '192.168.4.31', encrypted: true }), listening)).toBe(false);
  expect(cameInTheOpen(socket({ remoteAddress: '127.0.0.1' }), listening)).toBe(false);
});

test('a line that says nothing, or nonsense, or breaks off in the middle of a handshake, harms nobody', async () => {
  const { server, ca } = await tlsServer();
  for (const bytes of [Buffer.from([22, 3, 1, 255, 255, 0]), Buffer.from('no protocol at all\r\n\r\n'), Buffer.alloc(0)]) {
    const socket = connectPlain(server.port, '127.0.0.1', () => socket.end(bytes));
    await once(socket.on('error', () => {}).resume(), 'close');
  }
  expect((await getOverTls(server.port, '127.0.0.1', '/api/health', ca)).status).toBe(200);
});

test('a given certificate is used as it is; files that are none, do not belong together or have ended are one sentence', async () => {
  const folder = folderForTest();
  const [certFile, keyFile] = [path.join(folder, 'cert.pem'), path.join(folder, 'key.pem')];
  const made = await selfMade(making(folderForTest(), ['127.0.0.1'], Date.now()));
  writeFileSync(certFile, made.cert);
  writeFileSync(keyFile, made.key);
  const tls = { certFile, keyFile };
  const server = await openServer({ tls });
  expect((await getOverTls(server.port, '127.0.0.1', '/api/health', chain(made)[1]!.toString())).status).toBe(200);
  expect(server.exposed?.fingerprint).toBeNull();
  await expect(openServer({ tls, clock: handClock(Date.now() + 500 * 86_400_000) })).rejects.toThrow(/^The certificate in .*cert\.pem ended on /);
  const other = await selfMade(making(folderForTest(), ['127.0.0.1'], Date.now()));
  writeFileSync(keyFile, other.key);
  await expect(openServer({ tls })).rejects.toThrow(/are no certificate with its key/);
  await expect(openServer({ tls: { certFile: path.join(folder, 'none.pem'), keyFile } })).rejects.toThrow(/none\.pem cannot be read \(ENOENT\); give another file with --cert\.$/);
});
