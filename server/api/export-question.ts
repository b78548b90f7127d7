import { z } from 'zod';
import { TABLE_FORMATS } from '../files-out/export.ts';
import type { Range } from '../files-out/rows.ts';
import { UNIT_SYSTEMS } from '../files-out/units.ts';

const throwNumber = z.coerce.number().int().min(1).optional();
const moment = z.iso.datetime({ offset: true, error: 'a moment is written as 2026-03-14T17:00:00-05:00' }).optional();

/** How a table of throws is asked for: GET /api/throws?format=parquet&units=si */
export const exportQuestionSchema = z.strictObject({
  format: z.enum(TABLE_FORMATS).default('csv'),
  units: z.enum(UNIT_SYSTEMS).default('imperial').describe('Of all measures: as on the screens, or what the formulas compute in.'),
  names: z.enum(['yes', 'no']).default('yes').describe('`no`: no names, and codes in place of ids and of what somebody wrote.'),
  fromThrow: throwNumber.describe('The first throw, by its number in the session.'),
  toThrow: throwNumber.describe('The last throw.'),
  from: moment.describe('The earliest moment, with its offset.'),
  to: moment.describe('The latest moment.'),
});
export type ExportQuestion = z.infer<typeof exportQuestionSchema>;

/** The part of the throws that a question asks for. */
export function rangeOf({ fromThrow, toThrow, from, to }: ExportQuestion): Range {
  return {
    ...(fromThrow !== undefined && { fromThrow }),
    ...(toThrow !== undefined && { toThrow }),
    ...(from !== undefined && { fromMs: Date.parse(from) }),
    ...(to !== undefined && { toMs: Date.parse(to) }),
  };
}
