import { expect, onTestFinished, test, vi } from 'vitest';
import { progress, remark, say } from '../../command/talk.ts';

const CLEARED = '\r\u001B[K';

test('a bar on a terminal gives way to whatever is said next, and leaves nothing of itself', () => {
  const written: string[] = [];
  const write = (text: unknown): boolean => Boolean(written.push(String(text)));
  for (const stream of [process.stdout, process.stderr]) {
    const spy = vi.spyOn(stream, 'write').mockImplementation(write);
    onTestFinished(() => spy.mockRestore());
  }
  const terminal = { isTTY: true, write } as unknown as NodeJS.WriteStream;
  const bar = progress(4, 'throws', terminal);
  bar.at(2);
  remark('The device was refused.');
  say('Half of it came.');
  bar.at(4);
  bar.end();
  bar.end();
  expect(written).toEqual([
    CLEARED, `[${'#'.repeat(12)}${'.'.repeat(12)}] 2 of 4 throws`,
    CLEARED, 'The device was refused.\n', 'Half of it came.\n',
    CLEARED, `[${'#'.repeat(24)}] 4 of 4 throws`, CLEARED,
  ]);
});

test('nothing is drawn where nobody looks', () => {
  const write = vi.fn<(text: unknown) => boolean>(() => true);
  const bar = progress(4, 'throws', { isTTY: false, write } as unknown as NodeJS.WriteStream);
  bar.at(4);
  bar.end();
  expect(write).not.toHaveBeenCalled();
});
