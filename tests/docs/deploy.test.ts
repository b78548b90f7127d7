import { validate } from 'dockerfile-utils';
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { offpace } from '../../command/offpace.ts';

const DEPLOY = new URL('../../docs/deploy/', import.meta.url);
const UNIT = readFileSync(new URL('offpace.service', DEPLOY), 'utf8');
const CONTAINER = readFileSync(new URL('Containerfile', DEPLOY), 'utf8');

/** What systemd itself finds wrong with a unit, where there is a systemd. The program is one that is here, not where a person would install it. */
function foundBySystemd(unit: string): string | null {
  const folder = mkdtempSync(path.join(tmpdir(), 'offpace-unit-'));
  onTestFinished(() => rmSync(folder, { recursive: true }));
  const file = path.join(folder, 'offpace.service');
  writeFileSync(file, unit.replaceAll('/usr/bin/node', process.execPath));
  const { error, stdout, stderr, status } = spawnSync('systemd-analyze', ['verify', '--man=no', file], { encoding: 'utf8' });
  return error === undefined ? `${status} ${stdout}${stderr}`.trim() : null;
}

/** Every line is a section, a remark, or a key with a value, and no key of those that bound it is missing. */
function wellFormed(unit: string): string[] {
  const lines = unit.split('\n').filter((line) => line !== '' && !line.startsWith('#'));
  return lines.filter((line) => !/^(?:\[(?:Unit|Service|Install)\]|[A-Z]\w+=.*)$/.test(line));
}

test('the unit is one that systemd takes, and one with a fault is found out', () => {
  expect(wellFormed(UNIT)).toEqual([]);
  const [found, foundInFaulty] = [foundBySystemd(UNIT), foundBySystemd(UNIT.replace('ProtectSystem=', 'ProtectSystm='))];
  expect([null, '0']).toContain(found);
  if (found !== null) expect(foundInFaulty).toContain('ProtectSystm');
});

test('the container file is one that a builder takes, and one with a fault is found out', () => {
  expect(validate(CONTAINER).map(({ message }) => message)).toEqual([]);
  expect(validate(CONTAINER.replace('WORKDIR', 'WORKDIRE')).map(({ message }) => message)).toEqual(['Unknown instruction: WORKDIRE']);
});

test.each([
  ['unit', /^ExecStart=.*offpace\.mjs (.+)$/m.exec(UNIT)![1]!.split(' ')],
  ['container file', JSON.parse(/^CMD (\[.+\])$/m.exec(CONTAINER)![1]!) as string[]],
])('what the %s serves with are options that the command has', (_, [name, ...words]) => {
  const serve = offpace('/').commands.find((command) => command.name() === name)!;
  expect(serve.parseOptions(words).unknown).toEqual([]);
  expect(serve.opts()).toMatchObject({ json: true, host: '0.0.0.0', port: 8080, tls: true });
});

test('both run as an account without rights that writes athletes’ data in one place', () => {
  expect(UNIT).toMatch(/^DynamicUser=yes$/m);
  expect(UNIT).toMatch(/^StateDirectoryMode=0700$/m);
  expect(CONTAINER).toMatch(/^USER node$/m);
  expect(CONTAINER).toMatch(/^VOLUME \/data$/m);
});
