import { expect, onTestFinished, test, vi } from 'vitest';
import { logsOfYears } from '../bench/million-throws.ts';
import { seededFolder } from '../bench/seeded-server.ts';
import { typedAlone } from './typed.ts';

test('whoever asks a server to stop while the records are read anew is heard there and then, without a failure', async () => {
  const { folder, remove } = seededFolder(logsOfYears({ mounds: 1, athletesOfMound: 2, sessionsOfMound: 40, throwsOfSession: 60 }));
  onTestFinished(remove);
  let nowMs = 1_700_000_000_000;
  // A slow machine.
  const slow = vi.spyOn(Date, 'now').mockImplementation(() => (nowMs += 3000));
  onTestFinished(() => slow.mockRestore());
  const stopWhenTold = (said: string): void => void (said.startsWith('Reading the records anew') && process.emit('SIGHUP'));
  expect(await typedAlone(stopWhenTold, 'serve', '--port', '0', '--data', folder)).toEqual({
    code: 0, out: 'Stopped before all records were read; the next start goes on from there.\n', err: 'Reading the records anew: 2,048 of 3,040 facts.\n',
  });
});
