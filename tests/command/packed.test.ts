import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { expect, onTestFinished, test } from 'vitest';
import { readSource } from '../../scripts/house/read-source.mjs';
import { runNpm, runProgram } from '../../scripts/prepare/process.mjs';
import { folderForTest } from '../server/folder.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const { dependencies, version } = JSON.parse(readFileSync(path.join(ROOT, 'package.json'), 'utf8')) as { dependencies: Record<string, string>; version: string };
const UNIT = readFileSync(path.join(ROOT, 'docs', 'deploy', 'offpace.service'), 'utf8');

interface Packed {
  readonly filename: string;
  readonly files: readonly { readonly path: string }[];
}

test('whatever the command line imports, at once or when it is asked for, comes with the package', () => {
  const libraries = new Set<string>();
  const files = new Set([path.join(ROOT, 'dist', 'node', 'command', 'main.js')]);
  for (const file of files) {
    for (const { specifier } of readSource(file, readFileSync(file, 'utf8')).imports) {
      if (specifier.startsWith('.')) files.add(path.join(path.dirname(file), specifier));
      else if (!specifier.startsWith('node:')) libraries.add(specifier.split('/').slice(0, specifier.startsWith('@') ? 2 : 1).join('/'));
    }
  }
  expect(files.size).toBeGreaterThan(300);
  expect([...libraries].filter((name) => dependencies[name] === undefined)).toEqual([]);
  expect(Object.keys(dependencies).filter((name) => !libraries.has(name))).toEqual([]);
});

test('the packed project installs in an empty folder, and serves from there as the unit of systemd has it serve', async () => {
  const folder = folderForTest();
  // What is built is packed as it is: this runs after the build.
  const packing = await runNpm(['pack', '--ignore-scripts', '--json', '--pack-destination', folder]);
  const [{ filename, files }] = JSON.parse(packing.output.slice(packing.output.indexOf('['))) as [Packed];
  expect(files.map((file) => file.path).filter((file) => !/^(?:LICENSE|README\.md|package\.json|bin\/offpace\.mjs|scripts\/node-version\.mjs|dist\/(?:node|web)\/.+)$/.test(file) || /\.(?:map|ts)$/.test(file))).toEqual([]);
  const installing = await runNpm(['install', '--prefix', folder, '--prefer-offline', '--no-audit', '--no-fund', '--omit=dev', path.join(folder, filename)]);
  expect(installing).toMatchObject({ code: 0 });
  const offpace = path.join(folder, 'node_modules', '.bin', 'offpace');
  expect(await runProgram(offpace, ['--version'], { cwd: folder })).toEqual({ code: 0, output: `${version}\n` });

  const served = await serving(offpace, folder);
  expect(await (await fetch(`${served.address}/healthz`)).text()).toContain('healthy');
  expect(await (await fetch(`${served.address}/wall/north-1`)).text()).toContain('<title>Offpace</title>');
  const thrown = ['simulate', '--url', `${served.address.replace('http', 'ws')}/device`, '--token-file', path.join(folder, 'data', 'device-token'), '--interval', '0.1', '--count', '1', '--no-coach', '--json'];
  expect(await runProgram(offpace, thrown, { cwd: folder })).toMatchObject({ code: 0 });
  expect(await served.interrupted()).toEqual({ code: 0, errors: '' });
  expect(existsSync(path.join(folder, 'data', 'facts.db-wal'))).toBe(false);
}, 120_000);

/** The options of the unit, with a port and a folder of this test, and for this machine alone. */
async function serving(offpace: string, folder: string): Promise<{ readonly address: string; interrupted(): Promise<{ code: number | null; errors: string }> }> {
  const words = /^ExecStart=.*offpace\.mjs (.+)$/m.exec(UNIT)![1]!.replace('0.0.0.0', '127.0.0.1').replace('8080', '0').replace('/var/lib/offpace', path.join(folder, 'data')).replace(/ --passphrase-file \S+/, '');
  const child = spawn(offpace, words.split(' '), { cwd: folder, stdio: ['ignore', 'pipe', 'pipe'] });
  onTestFinished(() => void child.kill('SIGKILL'));
  let errors = '';
  child.stderr.on('data', (text: Buffer) => {
    errors += text.toString();
  });
  const ended = once(child, 'exit') as Promise<[number | null]>;
  for await (const line of createInterface({ input: child.stdout })) {
    const { kind, address } = JSON.parse(line) as { kind?: string; address: string };
    if (kind !== 'ready') continue;
    child.stdout.resume();
    return { address, interrupted: async () => (child.kill('SIGINT'), { code: (await ended)[0], errors }) };
  }
  throw new Error(`The server ended before it was ready: ${errors}`);
}
