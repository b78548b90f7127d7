import { expect, test } from 'vitest';
import { z } from 'zod';
import { coachSaysSchema } from '../../../core/facts/coach.ts';
import { deviceFrameSchema, helloSchema } from '../../../core/facts/frames.ts';
import { saySchema } from '../../../core/facts/wire.ts';
import { ATHLETE, opened } from '../../server/frames.ts';

/** Every field that a schema knows, however deep. */
function fieldsOf(schema: unknown): string[] {
  if (typeof schema !== 'object' || schema === null) return [];
  return Object.entries(schema).flatMap(([name, value]) => (name === 'properties' ? [...Object.keys(value as object), ...Object.values(value as object).flatMap(fieldsOf)] : fieldsOf(value)));
}

test('of a birth only the year has a field, whoever speaks', () => {
  const fields = [coachSaysSchema, saySchema, helloSchema, deviceFrameSchema].flatMap((schema) => fieldsOf(z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any' })));
  expect(fields.length).toBeGreaterThan(100);
  expect([...new Set(fields.filter((name) => /birth|born|dob|^age/i.test(name)))]).toEqual(['birthYear']);
});

test.each([
  ['a date beside it', { birthDate: '2011-04-02' }],
  ['a date in its place', { birthYear: '2011-04-02' }],
  ['the digits of a date', { birthYear: 20110402 }],
  ['a time since 1970', { birthYear: 1_301_702_400_000 }],
  ['a part of a year', { birthYear: 2011.25 }],
])('a birth year with %s is not taken', (_, more) => {
  expect(coachSaysSchema.safeParse(opened('s-1')).success).toBe(true);
  expect(coachSaysSchema.safeParse(opened('s-1', { athlete: { ...ATHLETE, ...more } as never })).success).toBe(false);
});
