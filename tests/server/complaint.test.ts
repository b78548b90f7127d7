import { expect, test } from 'vitest';
import { z } from 'zod';
import { complaint } from '../../server/complaint.ts';

const schema = z.strictObject({
  kind: z.literal('throw').optional(),
  name: z.string().max(3).optional(),
  speed: z.number().positive().optional(),
  count: z.int().min(1).optional(),
  places: z.array(z.int()).min(1).optional(),
  size: z.number().max(5, 'a size ends at 5').optional(),
  either: z.union([z.strictObject({ a: z.string() }), z.strictObject({ b: z.number() })]).optional(),
  needed: z.boolean(),
});

test.each([
  [{}, 'needed', 'The field needed is missing; it must be true or false.'],
  [{ needed: 1 }, 'needed', 'The field needed must be true or false.'],
  [[], '', 'The message must be an object.'],
  [{ needed: true, kind: 'hit' }, 'kind', 'The field kind must be "throw".'],
  [{ needed: true, name: 'long' }, 'name', 'The field name must have at most 3 characters.'],
  [{ needed: true, speed: 0 }, 'speed', 'The field speed must be more than 0.'],
  [{ needed: true, count: 0 }, 'count', 'The field count must be at least 1.'],
  [{ needed: true, count: 1.5 }, 'count', 'The field count must be a whole number.'],
  [{ needed: true, places: [] }, 'places', 'The field places must have at least 1 item.'],
  [{ needed: true, places: [1, 'x'] }, 'places.1', 'The field places.1 must be a number.'],
  [{ needed: true, size: 6 }, 'size', 'A size ends at 5.'],
  [{ needed: true, either: { b: 'x' } }, 'either.b', 'The field either.b must be a number.'],
  [{ needed: true, sped: 6 }, 'sped', 'The field sped is not known here; check its spelling or leave it out.'],
])('%j is told to be wrong at "%s"', (value, path, sentence) => {
  const read = schema.safeParse(value);
  expect(read.success ? null : complaint(read.error)).toEqual({ path, sentence });
});
