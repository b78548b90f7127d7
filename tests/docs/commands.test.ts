import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { cpSync, existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { expect, onTestFinished, test } from 'vitest';
import { openDevice } from '../../docs/device-example.mjs';
import { keepPassphrase } from '../../server/access/passphrase.ts';
import { backUp } from '../../server/log/backup.ts';
import { DEVICE } from '../adapters/adapting.ts';
import { folderForTest } from '../server/folder.ts';
import { serverForTest, type TestServer } from '../server/running.ts';
import { commandsOn, meantBy, PAGES } from './commands.ts';

const MAIN = fileURLToPath(new URL('../../dist/node/command/main.js', import.meta.url));
const all = PAGES.flatMap(commandsOn);
/** Each once, however many pages have it. */
const ours = [...new Map(all.flatMap(({ line }) => {
  const meant = meantBy(line);
  return meant.kind === 'offpace' ? [[meant.args.join(' '), meant.args] as const] : [];
})).values()];

test('every command on the pages is one that there is', () => {
  expect(all.length).toBeGreaterThan(20);
  expect(all.filter(({ line }) => meantBy(line).kind === 'unknown')).toEqual([]);
});

test('a command that there is not would be found', () => {
  expect(['npm run nothing', 'npm run serve --port 1', 'npx vitest run tests/gone.test.ts', 'node x.js'].map((line) => meantBy(line).kind)).toEqual(['unknown', 'unknown', 'unknown', 'unknown']);
  expect(meantBy('npm run backup -- --to FOLDER')).toEqual({ kind: 'offpace', args: ['backup', '--to', 'FOLDER'] });
});

/** What a reader has to put in, and what a test may not take: fixed ports, and waiting for hours. */
function filledIn(args: readonly string[], server: TestServer): string[] {
  const [command] = args;
  const words = args.map((word, index) => {
    const before = args[index - 1] ?? '';
    if (['--port', '--listen'].includes(before)) return '0';
    if (before === '--token-file') return server.tokenFile;
    if (before === '--count') return '2';
    if (before === '--data' && command === 'backup') return path.join('data', 'own');
    return word.startsWith('ws://127.0.0.1:8080/') ? `${server.address.replace('http', 'ws')}/device` : word;
  });
  if (command === 'serve' || command === 'start') return words.includes('--help') || words.includes('--port') ? words : [...words, '--port', '0'];
  if (command === 'simulate') return [...words, '--interval', '0.1', '--no-coach'];
  return command === 'conform' && words[1] === 'device' ? [...words, '--heartbeat', '0.5', '--quiet', '0.1'] : words;
}

/** A folder with what the pages take for granted: a data folder with a passphrase and a throw, a backup of it, files to name. */
async function home(server: TestServer): Promise<string> {
  const folder = folderForTest();
  const own = path.join(folder, 'data', 'own');
  const before = await serverForTest({ dataFolder: (mkdirSync(own, { recursive: true }), own) });
  await before.close();
  await keepPassphrase(own, 'four quiet words at dusk', '00112233445566778899aabbccddeeff', 16);
  backUp(own, path.join(folder, 'BACKUP'));
  writeFileSync(path.join(folder, 'FILE'), 'four quiet words at dusk\n');
  writeFileSync(path.join(folder, 'passphrase.txt'), 'four quiet words at dusk\n');
  writeFileSync(path.join(folder, 'adapter.json'), JSON.stringify({ server: `${server.address.replace('http', 'ws')}/device`, tokenFile: server.tokenFile, device: { ...DEVICE, mound: 'south-2' }, from: { kind: 'folder', folder: '.' } }));
  return folder;
}

/** The moment at which a command that runs until it is stopped has begun. */
const HAS_BEGUN = /Offpace is ready|takes \*\.jsonl/;

/** Runs one command of a page in a folder of its own; what it said where it did not end well. */
async function run(args: readonly string[], server: TestServer, cwd: string): Promise<string[]> {
  const child = spawn(process.execPath, [MAIN, ...filledIn(args, server)], { cwd, stdio: ['ignore', 'pipe', 'pipe'] });
  onTestFinished(() => void child.kill('SIGKILL'));
  const said: string[] = [];
  const hear = (line: string): void => {
    said.push(line);
    if (HAS_BEGUN.test(line)) child.kill('SIGTERM');
    const url = /address (\S+), mound (\S+), token (\S+)\.$/.exec(line);
    if (url !== null) throwInto(url[1]!, url[2]!, url[3]!);
  };
  createInterface({ input: child.stdout }).on('line', hear);
  createInterface({ input: child.stderr }).on('line', hear);
  const [code, signal] = (await once(child, 'close')) as [number | null, string | null];
  return code === 0 ? [] : [`offpace ${args.join(' ')} ended with ${code ?? signal}`, ...said];
}

test('every command of Offpace on the pages does what it says, in a folder of its own', { timeout: 120_000 }, async () => {
  if (!existsSync(MAIN)) throw new Error(`${MAIN} is missing; run npm run build first.`);
  expect(ours.length).toBeGreaterThan(10);
  const server = await serverForTest();
  const [left, likeAll] = [[...ours], await home(server)];
  const failed: string[] = [];
  const one = async (): Promise<void> => {
    for (let args = left.shift(); args !== undefined; args = left.shift()) {
      const own = folderForTest();
      cpSync(likeAll, own, { recursive: true });
      failed.push(...(await run(args, server, own)));
    }
  };
  await Promise.all([one(), one(), one()]);
  expect(failed).toEqual([]);
});

/** A device that keeps the protocol, for whoever plays the server. */
function throwInto(url: string, mound: string, token: string): void {
  const device = openDevice(url, { kind: 'hello', protocol: 1, device: 'example', run: 'run-1', mound, token, sight: 'spin-only', axis: 'none', units: DEVICE.units }, { pauseMs: 5, longestPauseMs: 20, say: () => {} });
  const throwing = setInterval(() => device.thrown(Date.now(), { summary: { releaseSpeed: 80 } }), 10);
  onTestFinished(() => {
    clearInterval(throwing);
    device.close();
  });
}

test('the four first pages are linked from the README, and every link and picture on them leads somewhere', () => {
  const root = fileURLToPath(new URL('../../', import.meta.url));
  const readme = readFileSync(path.join(root, 'README.md'), 'utf8');
  for (const page of ['docs/for-coaches.md', 'docs/for-device-makers.md', 'docs/for-operators.md', 'DEVELOPERS.md']) expect(readme).toContain(`(${page})`);
  const broken = ['README.md', 'DEVELOPERS.md', 'CHANGELOG.md', ...PAGES].flatMap((page) =>
    [...readFileSync(path.join(root, page), 'utf8').matchAll(/\]\(([^)#:]+)(?:#[^)]*)?\)/g)].map(([, to]) => path.join(path.dirname(page), to!)).filter((to) => !existsSync(path.join(root, to))));
  expect(broken).toEqual([]);
});

test('the page for coaches defers to medical people and to league and local rules before anything else', () => {
  const page = readFileSync(new URL('../../docs/for-coaches.md', import.meta.url), 'utf8');
  const caution = page.slice(0, page.indexOf('\n## '));
  for (const words of ['not medical advice', 'licensed\nmedical professional', 'limits of your league', 'come first', 'stop now']) expect(caution).toContain(words);
});
