import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { FACT_VERSION } from '../../core/facts/fact.ts';
import { PROTOCOL_VERSION } from '../../core/facts/frames.ts';
import { SCIENCE_VERSION } from '../../core/session/analyse.ts';

const read = (file: string): string => readFileSync(new URL(`../../${file}`, import.meta.url), 'utf8');

test('the newest entry of the changelog is of this version, and names the versions of protocol, facts and science that the code has', () => {
  const [, version, entry] = /^## (\d+\.\d+\.\d+).*\n\n(.+)$/m.exec(read('CHANGELOG.md'))!;
  expect(version).toBe((JSON.parse(read('package.json')) as { version: string }).version);
  expect(entry).toBe(`Device protocol ${PROTOCOL_VERSION} · facts ${FACT_VERSION} · science ${SCIENCE_VERSION}`);
});
