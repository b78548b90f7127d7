import { expect, test } from 'vitest';
import { idSchema } from '../../../core/facts/spelling.ts';

const complaintOf = (id: string): string | undefined => idSchema.safeParse(id).error?.issues[0]?.message;

test('an id is a short name that may stand in an address', () => {
  expect(['a', 'north-1', 'Bullpen_2.left', 'x'.repeat(64)].map(complaintOf)).toEqual([undefined, undefined, undefined, undefined]);
  for (const id of ['', '-1', '.hidden', 'two words', 'ñandú', 'x'.repeat(65)]) expect(complaintOf(id)).toMatch(/^use 1 to 64 letters/);
});

test('a word that every object answers to is no id: a session of that name would be found where there is none', () => {
  for (const word of ['constructor', 'toString', 'hasOwnProperty', 'valueOf']) expect(complaintOf(word)).toBe('this word cannot be an id; choose another one');
});
