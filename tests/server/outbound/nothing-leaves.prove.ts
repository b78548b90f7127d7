import { readFileSync } from 'node:fs';
import path from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import { demandStrace } from '../crash/under-strace.ts';
import { folderForTest } from '../folder.ts';
import { readyServer } from '../forked.ts';
import { wholeEvening } from './whole-evening.ts';

beforeAll(demandStrace);

test('the kernel, too, sees no connection begun through a whole evening, by whatever library', async () => {
  const trace = path.join(folderForTest(), 'trace');
  const server = await readyServer(['--port', '0', '--data', folderForTest()], { under: ['strace', '-f', '-o', trace, '-e', 'trace=connect,listen'] });
  await wholeEvening(server);
  const calls = readFileSync(trace, 'utf8').split('\n');
  expect(calls.filter((line) => / listen\(/.test(line)).length).toBeGreaterThan(0);
  expect(calls.filter((line) => / connect\(/.test(line) && !line.includes('AF_UNIX'))).toEqual([]);
}, 120_000);
