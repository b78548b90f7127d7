import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { readConfig } from '../../adapters/config.ts';
import { brokerHere } from '../../scripts/steps/broker.mjs';
import { folderForTest } from '../server/folder.ts';
import { DEVICE } from './adapting.ts';

const GOOD = { server: 'ws://127.0.0.1:1/device', tokenFile: 'token', device: DEVICE, from: { kind: 'folder', folder: 'throws' } };

test.each([
  ['no JSON', '{', /adapter\.json is not JSON; docs\/adapters\.md shows what belongs there\.$/],
  ['another scheme', { ...GOOD, server: 'http://127.0.0.1' }, /adapter\.json, server: give the address of the device door, such as ws:/],
  ['a unit that is none', { ...GOOD, device: { ...DEVICE, units: { ...DEVICE.units, speed: 'knots' } } }, /adapter\.json, device\.units\.speed: /],
  ['two topics', { ...GOOD, from: { kind: 'mqtt', broker: 'mqtt://b', topic: 'mounds/#' } }, /adapter\.json, from\.topic: name one topic, without \+ and #/],
  ['a token that is not there', GOOD, /token cannot be read or is empty; it has to hold the secret and nothing else\.$/],
])('a file with %s is one sentence', (_, config, sentence) => {
  const file = path.join(folderForTest(), 'adapter.json');
  writeFileSync(file, typeof config === 'string' ? config : JSON.stringify(config));
  expect(() => readConfig(file)).toThrow(sentence);
});

test('a file that is not there is one sentence', () => {
  expect(() => readConfig('/nowhere/adapter.json')).toThrow('/nowhere/adapter.json cannot be read (ENOENT); give the file that describes the adapter.');
});

test('the broker for tests is the one that OFFPACE_MOSQUITTO names, and a name where no program is, is said', () => {
  expect(brokerHere({ OFFPACE_MOSQUITTO: process.execPath })).toBe(process.execPath);
  expect(() => brokerHere({ OFFPACE_MOSQUITTO: '/nowhere/mosquitto' })).toThrow('OFFPACE_MOSQUITTO is "/nowhere/mosquitto", where there is no program; give the path of a Mosquitto, or unset it.');
});
