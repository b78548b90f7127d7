import { z } from 'zod';
import { athleteSchema, distanceSchema } from '../facts/coach.ts';
import { axisSchema, daySchema, effortSchema, idSchema, intentSchema, sightSchema, stageSchema } from '../facts/spelling.ts';
import { isTimeZone } from '../session/local-day.ts';
import { FIELDS, FORMS, SIDES, type Field } from './fields.ts';

const columnSchema = z
  .strictObject({
    header: z.string().max(200),
    field: z.enum(FIELDS).nullable().describe('Null: not read.'),
    unit: z.string().max(12).nullable(),
    towards: z.enum(SIDES).nullable().describe('Where a sideways number is positive: to the right or left of the catcher, or to the arm or glove side.'),
  })
  .refine(({ field, unit }) => field === null || FORMS[field].units.length === 0 || FORMS[field].units.some((one) => one.unit === unit), { path: ['unit'], message: 'say in which unit this column is' })
  .refine(({ field, towards }) => field === null || !FORMS[field].sided || towards !== null, { path: ['towards'], message: 'say to which side this column is positive' });

/** How a file is written and what its columns are: what a recipe keeps. It holds nothing of any athlete. */
export const layoutSchema = z
  .strictObject({
    form: z.enum(['separated', 'json-lines']),
    separator: z.enum([',', ';', '\t']).describe('Between columns; of no meaning in JSON Lines.'),
    decimal: z.enum(['.', ',']),
    columns: z.array(columnSchema).min(1).max(500),
  })
  .refine(({ columns }) => twice(columns) === null, { path: ['columns'], message: 'two columns cannot be the same; set one of them to "not read"' });

export const choicesSchema = z.strictObject({
  athlete: athleteSchema.nullable().describe('Whose all rows are; null where a column says it.'),
  athletes: z.record(z.string().max(200), athleteSchema).describe('By what stands in the column.'),
  intents: z.record(z.string().max(200), intentSchema.nullable()).describe('By what stands in the column; what is not here is guessed from plain words.'),
  mound: idSchema.describe('Into whose log; a column may name another one for a row.'),
  stage: stageSchema,
  distanceM: distanceSchema,
  effort: effortSchema,
  timeZone: z.string().min(1).max(60).refine(isTimeZone, { message: 'no time zone is called that; send a name such as America/Chicago' }).describe('In which the file was written.'),
  day: daySchema.nullable().describe('Of all rows; null where a column says it.'),
  device: idSchema.describe('What measured; `file` where nobody knows.'),
  sight: sightSchema,
  axis: axisSchema,
});

export type Column = z.infer<typeof columnSchema>;
export type Layout = z.infer<typeof layoutSchema>;
export type ImportChoices = z.infer<typeof choicesSchema>;

function twice(columns: readonly { readonly field: Field | null }[]): Field | null {
  return columns.find(({ field }, index) => field !== null && columns.findIndex((other) => other.field === field) !== index)?.field ?? null;
}
