import { z } from 'zod';
import { FACT_VERSION, saidSchema, type Fact } from '../../core/facts/fact.ts';
import { idSchema } from '../../core/facts/spelling.ts';
import { complaint } from '../complaint.ts';

const readmeSchema = z.looseObject({ kind: z.literal('readme'), facts: z.int().min(0) });

/** A line of such a file; an exact copy of what a log holds. */
export const factSchema = z.strictObject({
  place: z.int().min(1).describe('Order in the mound’s log.'),
  mound: idSchema,
  atMs: z.int().describe('Milliseconds since 1970 on the server’s clock when it arrived.'),
  by: z.string().min(1).max(200).describe('device:<id>, coach:<name>, athlete or server.'),
  version: z.literal(FACT_VERSION),
  said: saidSchema,
});

/** Why a file of facts cannot be taken; the message names the line. */
export class FactsUnreadable extends Error {}

/**
 * The facts of a file that a log gave out as JSON Lines, each as it was checked at the door.
 * @throws {FactsUnreadable} with the first line that is wrong, and where the file ends too early
 */
export async function* factsIn(lines: AsyncIterable<string>): AsyncGenerator<Fact> {
  let promised: number | null = null;
  let [line, facts] = [0, 0];
  for await (const text of lines) {
    line += 1;
    if (text.trim() === '') continue;
    if (promised === null) {
      promised = read(readmeSchema, text, line, 'This is no file of facts: its first line does not say so. ').facts;
      continue;
    }
    yield read(factSchema, text, line, '');
    facts += 1;
  }
  if (promised === null) throw new FactsUnreadable('The file is empty.');
  if (facts !== promised) throw new FactsUnreadable(`The file holds ${facts} facts and says that it has ${promised}; it was broken off or changed, so export it again.`);
}

function read<Line>(schema: z.ZodType<Line>, text: string, line: number, before: string): Line {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    throw new FactsUnreadable(`Line ${line}: ${before}It is not JSON.`);
  }
  const checked = schema.safeParse(value);
  if (checked.success) return checked.data;
  const { path, sentence } = complaint(checked.error);
  throw new FactsUnreadable(`Line ${line}${path === '' ? '' : `, ${path}`}: ${before}${sentence}`);
}
