import { copyFileSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { EXIT } from '../../command/failure.ts';
import { offpace } from '../../command/offpace.ts';
import { ledgersIn } from '../../command/recorded.ts';
import { broughtIn } from '../../server/files-in/brought-in.ts';
import { typed, typedHearing } from '../command/typed.ts';
import { thirtyLineDevice } from '../conformance/thirty-lines.ts';
import { folderForTest } from '../server/folder.ts';
import { readyServer } from '../server/forked.ts';

const PAGE = readFileSync(new URL('../../docs/command-line.md', import.meta.url), 'utf8');
const COMMANDS = [...PAGE.matchAll(/^ {4}offpace (.+)$/gm)].map(([, words]) => words!);
/** A page says what a person would wait for; a test need not. */
const QUICKER: Readonly<Record<string, string>> = { 'conform device': '--listen 0 --heartbeat 0.05 --quiet 0.1' };
/** With so few simulated evenings chance alone misses bounds, as the page says. */
/** These say on standard error what a person does next, or keeps private. */
const SAY_MORE = ['conform device', 'export'];
const FINDS_FAULTS = ['study'];

const names = offpace('/').commands.flatMap((command) => [...command.commands.map((below) => `${command.name()} ${below.name()}`), command.name()]);
const namedBy = (words: string): string => names.find((name) => `${words} `.startsWith(`${name} `))!;

test('the page names every command and every exit code', () => {
  const rows = [...PAGE.matchAll(/^\| (`[^|]+`) \|/gm)].flatMap(([, names]) => [...names!.matchAll(/`(\w+)`/g)].map(([, name]) => name));
  expect(rows.toSorted()).toEqual(offpace('/').commands.map((command) => command.name()).toSorted());
  expect([...PAGE.matchAll(/^\| (\d+) \|/gm)].map(([, code]) => Number(code))).toEqual(Object.values(EXIT));
});

test('every command on the page does what it is there for, one after the other as they stand', async () => {
  const folder = folderForTest();
  const here = (word: string): string => (/^(?:bullpen(?!s)|kept|(?:report|session|throws|facts|bullpens|choices|refused)\.\w+$)/.test(word) ? path.join(folder, word) : word);
  copyFileSync(new URL('../../docs/import/bullpens.csv', import.meta.url), here('bullpens.csv'));
  writeFileSync(here('choices.json'), JSON.stringify({ timeZone: 'America/Chicago', athletes: { 'Alba Inventada': athlete('alba', 'right'), 'Bruno Inventado': athlete('bruno', 'left') } }));
  const [serve, ...rest] = COMMANDS;
  const server = await readyServer(serve!.split(' ').slice(1).map((word) => here(word.replace('8100', '0'))));
  const { host } = new URL(server.address);
  const done: string[] = [];
  for (const words of rest) {
    const name = namedBy(words);
    const session = (): string => ledgersIn(path.join(folder, 'bullpen')).flatMap(({ order }) => order)[0]!;
    const meant = `${words} ${QUICKER[name] ?? ''}`.trim().replace('127.0.0.1:8100', host).replace('SESSION', () => session()).replace('IMPORT', () => broughtIn(ledgersIn(path.join(folder, 'bullpen-imported')))[0]!.id);
    const { code, err } = await typedHearing(beginDevice, ...meant.split(' ').map(here));
    expect({ words, code, err: SAY_MORE.includes(name) ? '' : err }).toEqual({ words, code: FINDS_FAULTS.includes(name) ? EXIT.refused : EXIT.done, err: '' });
    done.push(name);
  }
  expect(done).toEqual(['simulate', 'replay', 'report', 'report', 'export', 'export', 'export', 'import', 'replay', 'import', 'import list', 'import withdraw', 'backup', 'restore', 'conform server', 'conform device', 'study']);
  expect((await typed('report', '--session', 'nowhere', '--data', path.join(folder, 'bullpen-again'))).code).toBe(EXIT.refused);
}, 120_000);

const athlete = (id: string, hand: string): object => ({ id, name: id, hand, birthYear: 2001, mainFastball: 'four-seam', units: 'imperial', language: 'es' });

function beginDevice(remark: string): void {
  const [, url, mound, token] = /address (\S+), mound (\S+), token (\S+)\.$/m.exec(remark) ?? [];
  if (url !== undefined) onTestFinished(thirtyLineDevice(url, null, { mound: mound!, token: token! }));
}
