import { expect, test } from 'vitest';
import { acknowledgementsIn } from './flushed.ts';

const write = (sequence: number) => `7 pwrite64(28</d/facts.db-wal>, "\\0{\\"kind\\":\\"throw-measured\\",\\"source\\":{\\"device\\":\\"eye\\",\\"sequence\\":${sequence},\\"time\\":1}}", 4096, 32) = 4096`;
const told = (...sequences: number[]) => `7 writev(31<socket:[4]>, [${sequences.map((sequence) => `{iov_base="{\\"kind\\":\\"stored\\",\\"sequence\\":${sequence}}", iov_len=30}`).join(', ')}], 2) = 32`;
const FLUSH = '7 fdatasync(28</d/facts.db-wal>) = 0';
const FAILED_FLUSH = '7 fdatasync(28</d/facts.db-wal>) = -1 EIO (Input/output error)';
const BEGUN = '8 fdatasync(28</d/facts.db-wal> <unfinished ...>';
const ENDED = '8 <... fdatasync resumed>) = 0';
const OTHER_FLUSH = '7 fsync(29</d/facts.db>) = 0';
const seen = (...lines: string[]) => acknowledgementsIn(lines.join('\n')).map(({ sequence, flushed }) => [sequence, flushed]);

test('a throw counts as flushed when its write was followed by a flush before it was acknowledged', () => {
  expect(seen(write(1), write(2), FLUSH, told(1, 2))).toEqual([[1, true], [2, true]]);
  expect(seen(write(1), FLUSH, write(1), write(2), told(1), FLUSH, told(2))).toEqual([[1, true], [2, true]]);
});

test('a flush of another thread takes in what was written before it began', () => {
  expect(seen(write(1), BEGUN, write(2), ENDED, told(1, 2))).toEqual([[1, true], [2, false]]);
  expect(seen(write(1), BEGUN, told(1), ENDED)).toEqual([[1, false]]);
});

test.each([
  ['none at all', [write(1), told(1)]],
  ['one before the write', [FLUSH, write(1), told(1)]],
  ['one after the acknowledgement', [write(1), told(1), FLUSH]],
  ['one that failed', [write(1), FAILED_FLUSH, told(1)]],
  ['one that another thread began on another file', [write(1), '8 fsync(29</d/facts.db> <unfinished ...>', '8 <... fsync resumed>) = 0', told(1)]],
  ['one of another file', [write(1), OTHER_FLUSH, told(1)]],
  ['one without a write', [FLUSH, told(1)]],
])('a flush does not count: %s', (_, lines) => {
  expect(seen(...lines)).toEqual([[1, false]]);
});
