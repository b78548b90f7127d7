import { PassThrough } from 'node:stream';
import { expect, test } from 'vitest';
import { askPassphrase } from '../../../server/access/ask-passphrase.ts';
import { keptPassphrase } from '../../../server/access/passphrase.ts';
import { passphraseOf } from '../../../server/access/passphrase-file.ts';
import { folderForTest } from '../folder.ts';

const GOOD = 'four quiet words at dusk';

/** A terminal at which a person types one line whenever a question ends, and everything that stands on it in the end. */
function terminal(typed: readonly string[]) {
  const [input, output] = [new PassThrough(), new PassThrough()];
  const left = [...typed];
  let shown = '';
  output.on('data', (text: Buffer) => {
    shown += text.toString();
    if (shown.endsWith(': ') && left.length > 0) input.write(left.shift()!);
  });
  return { input, output, shown: () => shown };
}

test('a passphrase is asked for twice and stands nowhere on the terminal', async () => {
  const at = terminal([`${GOOD}\r`, `${GOOD}\r`]);
  expect(await askPassphrase(at)).toBe(GOOD);
  expect(at.shown().split('\n').slice(1)).toEqual(['Passphrase (not shown): ', 'The same once more: ', '']);
  expect(at.shown()).not.toMatch(/four|quiet|dusk/);
});

test('one that will not do, and two that differ, are asked for anew; a key taken back is taken back', async () => {
  const at = terminal(['short\r', `${GOOD}\r`, 'four quiet words at dawn\r', `${GOOD}x\x7f\r`, `${GOOD}\r`]);
  expect(await askPassphrase(at)).toBe(GOOD);
  expect(at.shown()).toContain('That one is too short; give at least 12 characters, such as four words that do not belong together.\n');
  expect(at.shown()).toContain('The two are not the same; type it anew.\n');
});

test.each([['Ctrl-C', '\x03'], ['Ctrl-D', '\x04']])('whoever breaks off with %s starts nothing, and is told', async (_, key) => {
  await expect(askPassphrase(terminal([`${GOOD}\r`, key]))).rejects.toThrow('No passphrase was given, so nothing was started.');
});

test('it is asked for where others reach the server and none is kept, and never again after that', async () => {
  const dataFolder = folderForTest();
  let [asked, changed] = [0, 0];
  const told = { dataFolder, askPassphrase: () => ((asked += 1), Promise.resolve(GOOD)) };
  const start = (host: string) => passphraseOf({ ...told, host }, () => '00112233445566778899aabbccddeeff', () => void (changed += 1));
  expect(await start('127.0.0.1')).toBeNull();
  expect(asked).toBe(0);
  await start('0.0.0.0');
  await start('0.0.0.0');
  expect(asked).toBe(1);
  // Who signed in with one that was kept before, and is gone, signs in anew.
  expect(changed).toBe(1);
  expect(await keptPassphrase(dataFolder)!.matches(GOOD)).toBe(true);
});
