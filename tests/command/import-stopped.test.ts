import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { CHOICES, ABLE } from '../core/imports/choices.ts';
import { folderForTest } from '../server/folder.ts';
import { typedAlone } from './typed.ts';

test('an import that is finished was not broken off, however soon afterwards somebody asks it to stop', async () => {
  const folder = folderForTest();
  const [file, choices] = [path.join(folder, 'throws.csv'), path.join(folder, 'choices.json')];
  writeFileSync(file, 'speed (mph)\n80\n81\n');
  writeFileSync(choices, JSON.stringify({ ...CHOICES, athlete: ABLE, day: '2025-05-03' }));
  const ended = await typedAlone((said) => void (said.includes('were imported') && process.emit('SIGHUP')), 'import', file, '--data', path.join(folder, 'data'), '--choices', choices);
  expect(ended.out).toContain('2 throws were imported as 1 session.');
  expect([ended.code, ended.err]).toEqual([0, '']);
});
