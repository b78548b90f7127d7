import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { runNode } from './run-command.ts';
import { addressOf, warmStart } from './warm-start.ts';

const folder = mkdtempSync(path.join(tmpdir(), 'offpace-start-'));
afterAll(() => rmSync(folder, { recursive: true }));

const offpace = (...args: string[]) => runNode(['scripts/offpace.mjs', ...args]);

// Whoever runs this test alone may have changed a source since the last build.
beforeAll(async () => {
  const command = offpace('serve', '--port', '0', '--data', path.join(folder, 'first'));
  await command.said(/Offpace is ready/);
  command.interrupt();
  expect((await command.ended).code).toBe(0);
}, 120_000);

test('a start with nothing changed installs and builds nothing and serves', async () => {
  const { status, page, out, err } = await warmStart(path.join(folder, 'warm'));
  expect({ status, err }).toEqual({ status: 200, err: '' });
  expect(page).toContain('<title>Offpace</title>');
  expect(out).not.toMatch(/Building|Installing/);
});

test('npm start throws from a simulated mound into its own folder, and Ctrl-C stops everything', async () => {
  const data = path.join(folder, 'demo');
  const command = offpace('start', '--port', '0', '--data', data, '--interval', '0.2', '--seed', '77');
  const [, address] = await command.said(addressOf('Playback'));
  await command.said(/^simulator \| mound north-1: seed 77, /m);
  const [, token = ''] = await command.said(/token for devices is in (\S+)\.$/m);
  expect(token.startsWith(data)).toBe(true);
  expect(readFileSync(token, 'utf8').length).toBeGreaterThan(10);
  command.interrupt();
  const { code, out, err } = await command.ended;
  expect({ code, err }).toEqual({ code: 0, err: '' });
  // The diary writes by itself, so its last line may come after ours.
  expect(out).toMatch(/Stopping …\n(?:simulator +\| .*\n|\{.*\}\n)*Stopped\.\n(?:\{.*\}\n)*$/);
  await expect(fetch(`${address}/playback`)).rejects.toThrow('fetch failed');
});

test('npm run serve has no simulated mound', async () => {
  const command = offpace('serve', '--port', '0', '--data', path.join(folder, 'own'));
  await command.said(/Offpace is ready: no simulated mound\./);
  command.interrupt();
  const { code, out } = await command.ended;
  expect(code).toBe(0);
  expect(out).not.toContain('simulator');
  expect(existsSync(path.join(folder, 'own'))).toBe(true);
});
