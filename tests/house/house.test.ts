import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { checkHouse } from '../../scripts/house/check.mjs';
import { RULE_IDS } from '../../scripts/house/rules.mjs';

const FIXTURES = fileURLToPath(new URL('fixtures', import.meta.url));
const HOUSE = fileURLToPath(new URL('../..', import.meta.url));

/** What each small house has to be found guilty of: the places, in order. Everything else in it is allowed. */
const BREACHES: Record<string, string[]> = {
  'core-imports-nothing-of-ours': ['core/session/fold.ts:1'],
  'server-stands-alone': ['server/api/page.ts:1'],
  'web-stands-alone': ['web/wall/plane.ts:1'],
  'simulators-stand-alone': ['simulators/device.ts:1'],
  'device-knows-the-protocol': ['device/client.ts:1'],
  'adapters-stand-alone': ['adapters/folder.ts:1'],
  'conformance-stands-alone': ['conformance/device.ts:1'],
  'studies-ask-core': ['studies/verdict.ts:1'],
  'command-shows-no-screen': ['command/serve.ts:1'],
  'units-stand-at-the-bottom': ['core/units/convert.ts:1'],
  'facts-know-only-units': ['core/facts/frame.ts:1'],
  'flight-knows-only-units': ['core/flight/fly.ts:1'],
  'statistics-know-only-units': ['core/statistics/mean.ts:1'],
  'coaching-does-not-know-sessions': ['core/coaching/judge.ts:1'],
  'core-has-no-node': ['core/facts/read.ts:1'],
  'core-libraries': ['core/statistics/quantile.ts:1'],
  'devices-do-not-reach-viewers': ['server/devices/door.ts:1'],
  'd3-only-in-charts': ['web/wall/plane.ts:1'],
  'charts-without-solid': ['web/charts/plane.ts:1'],
  'charts-without-a-connection': ['web/charts/plane.ts:1'],
  'solid-only-in-web': ['server/api/page.ts:1'],
  'rxjs-only-in-streams': ['core/flight/fly.ts:1'],
  'libsql-only-in-log': ['server/api/sessions.ts:1'],
  'mqtt-only-in-its-adapter': ['server/devices/door.ts:1'],
  'socket-io-only-for-viewers': ['server/devices/door.ts:1'],
  'core-has-no-clock': ['core/session/fold.ts:1', 'core/session/fold.ts:3', 'core/session/fold.ts:4', 'core/session/fold.ts:5'],
  'no-randomness-of-its-own': ['simulators/athlete.ts:1'],
  'core-touches-nothing': ['core/session/window.ts:2', 'core/session/window.ts:3'],
  'server-has-one-clock': ['server/devices/door.ts:2', 'server/devices/door.ts:3'],
  'web-has-one-clock': ['web/wall/stale.ts:1'],
  'devices-have-one-clock': ['simulators/rhythm.ts:1'],
  'no-vague-names': ['core/flight/utils.ts:1'],
  'no-cycles': ['core/flight/axis.ts:1'],
};

describe('the rules of the house', () => {
  test('each has a small house that breaks it', () => {
    expect(readdirSync(FIXTURES).toSorted()).toEqual(RULE_IDS.toSorted());
    expect(Object.keys(BREACHES).toSorted()).toEqual(RULE_IDS.toSorted());
  });

  test.each(RULE_IDS)('%s: the house that breaks it is found out, there and nowhere else', (rule) => {
    const { breaches } = checkHouse(`${FIXTURES}/${rule}`);
    expect(breaches.map(({ file, line }) => `${file}:${line}`)).toEqual(BREACHES[rule]);
    expect(new Set(breaches.map((breach) => breach.rule))).toEqual(new Set([rule]));
  });

  test.each(RULE_IDS)('%s: the message says what was done and why that is not', (rule) => {
    for (const { message } of checkHouse(`${FIXTURES}/${rule}`).breaches) {
      expect(message).toMatch(/^(?:imports|takes|uses|is called) .+: .{30,}$/);
    }
  });

  test('Offpace itself keeps them', () => {
    const { files, breaches } = checkHouse(HOUSE);
    expect(files).toBeGreaterThan(20);
    expect(breaches).toEqual([]);
  });
});
