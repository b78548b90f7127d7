import { z } from 'zod';
import { reportSchema } from '../../../core/facts/arm-says.ts';
import { athleteSchema, type Athlete } from '../../../core/facts/coach.ts';
import type { BroughtImport, CheckAnswer, StoreAnswer, WithdrawAnswer } from '../../../core/facts/import-wire.ts';
import type { SessionsFound } from '../../../core/facts/session-search.ts';
import { effortSchema, idSchema, stageSchema } from '../../../core/facts/spelling.ts';
import type { AthleteDays, DeviceState, ErasedAnswer, SessionListing } from '../../../core/facts/wire.ts';
import { layoutSchema } from '../../../core/imports/layout.ts';
import { recipeSchema } from '../../files-in/recipes.ts';
import { factSchema } from '../../files-out/read-facts.ts';
import type { MoundListing } from '../mounds.ts';

/** What /api answers, as far as a program should rely on it: each is held against its type here, and against the server by a test. */

const ms = z.int().describe('Milliseconds since 1970 on the server’s clock.');

const sessionListing = z.strictObject({
  id: idSchema, mound: idSchema, athleteId: idSchema, athleteName: z.string(), timeZone: z.string(), openedAtMs: ms, closedAtMs: ms.nullable(),
  imported: z.strictObject({ fileName: z.string(), atMs: ms }).nullable(),
  throws: z.int(), stages: z.array(z.string()), trials: z.array(z.string()),
}) satisfies z.ZodType<SessionListing>;

const deviceState = z.discriminatedUnion('verdict', [
  z.strictObject({ verdict: z.enum(['fresh', 'stale']), device: z.string(), sinceMs: ms }),
  z.strictObject({ verdict: z.literal('unknown') }),
]) satisfies z.ZodType<DeviceState>;

const moundListing = z.strictObject({
  mound: idSchema, place: z.int().describe('Of its newest fact.'), device: deviceState,
  openSessions: z.array(z.strictObject({ id: idSchema, athleteName: z.string(), active: z.boolean() })),
}) satisfies z.ZodType<MoundListing>;

const said = z.strictObject({ mound: idSchema, report: reportSchema }).nullable();
const athleteDays = z.strictObject({
  athlete: idSchema,
  days: z.array(z.strictObject({ mound: idSchema, day: z.string(), throws: z.array(z.strictObject({ stage: stageSchema, effort: effortSchema, count: z.int() })) })),
  pain: said, soreness: said,
}) satisfies z.ZodType<AthleteDays>;

const sessionsFound = z.strictObject({
  sessions: z.array(sessionListing.extend({ notes: z.int(), bookmarks: z.int(), trialsFound: z.array(z.string()), notesFound: z.array(z.strictObject({ text: z.string(), place: z.int().nullable() })) })),
  total: z.int(),
  without: z.record(z.string(), z.int()).describe('Where nothing was found: how many there would be without each thing that was asked.'),
}) satisfies z.ZodType<Omit<SessionsFound, 'without'>>;

const erased = z.strictObject({
  kind: z.literal('erased'), facts: z.int(), throws: z.int(), sessions: z.int(), mounds: z.array(z.string()), frames: z.int(), swept: z.boolean(),
  named: z.array(z.strictObject({ mound: z.string(), place: z.int() })), stillIn: z.array(z.string()),
}) satisfies z.ZodType<ErasedAnswer>;

const ledger = z.looseObject({ mound: idSchema, place: z.int() }).describe('What the facts before have said, as core/session/ledger.ts has it; for Offpace’s own screens, and free to change.');
const view = z.looseObject({ mound: idSchema, place: z.int(), scienceVersion: z.int(), throws: z.array(z.looseObject({ place: z.int(), number: z.int(), atMs: ms })) }).describe('What a screen shows, as core/facts/views.ts has it, rounded.');

const count = z.int().min(0);
const importReport = z.looseObject({
  file: z.strictObject({ name: z.string(), sha256: z.string() }), bytes: count, rows: count, good: count, refused: count,
  refusedBecause: z.record(z.string(), count), sessions: count, athletes: count, mounds: z.array(z.string()),
  days: z.strictObject({ first: z.string(), last: z.string() }).nullable(),
  strangers: z.array(z.string()), earlier: z.strictObject({ sessions: count, lastAtMs: ms }).nullable(),
  shown: z.array(z.strictObject({ line: count, code: z.string(), column: z.string(), sentence: z.string() })).describe('The first refused rows.'),
}) satisfies z.ZodType<CheckAnswer>;

const grantedTo = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('coach'), name: z.string() }),
  z.strictObject({ kind: z.enum(['viewer', 'device']), mound: idSchema }),
  z.strictObject({ kind: z.literal('glance'), mound: idSchema, session: idSchema }),
]);
const reach = z.enum(['network', 'this-machine']);

/** By the names that they have in the document. */
export const ANSWERS = {
  Refusal: z.strictObject({ code: z.string(), path: z.string().describe('Where it is wrong.'), sentence: z.string().describe('What is wrong, and what to do.') }),
  Health: z.strictObject({ kind: z.literal('healthy'), build: z.string(), log: z.string().optional(), refusals: z.record(z.string(), z.int()).optional(), damaged: z.array(z.strictObject({ mound: z.string(), place: z.int() })).optional() }),
  Certificate: z.strictObject({ fingerprint: z.string() }),
  Who: z.discriminatedUnion('kind', [...grantedTo.options, z.strictObject({ kind: z.enum(['athlete', 'nobody']) })]),
  WayOn: z.strictObject({ to: z.string().describe('The address of the screen that is open now.') }),
  GlanceCode: z.strictObject({ id: z.string(), code: z.string(), url: z.string(), reach, expiresAtMs: ms }),
  CodeState: z.strictObject({ state: z.enum(['open', 'used', 'over']) }),
  Grant: z.strictObject({ id: z.string(), to: grantedTo, madeAtMs: ms, endsAtMs: ms.nullable() }),
  MadeGrant: z.strictObject({ id: z.string(), token: z.string().describe('Told this once.'), url: z.string().optional(), reach: reach.optional() }),
  Athlete: athleteSchema satisfies z.ZodType<Athlete>,
  AthleteDays: athleteDays,
  Erased: erased,
  MoundListing: moundListing,
  SessionListing: sessionListing,
  SessionsFound: sessionsFound,
  Fact: factSchema,
  FileLook: z.looseObject({ layout: layoutSchema, rows: z.array(z.array(z.unknown())), shape: z.string(), recipe: recipeSchema.nullable() }),
  ImportBegun: z.strictObject({ id: z.string() }),
  ImportReport: importReport,
  ImportStored: z.strictObject({ kind: z.enum(['stored', 'broken-off']), sessions: count, throws: count }) satisfies z.ZodType<StoreAnswer>,
  BroughtImport: z.strictObject({ id: z.string(), fileName: z.string(), atMs: ms, by: z.string(), sessions: count, throws: count, athletes: z.array(z.string()).describe('Their names.'), mounds: z.array(idSchema) }) satisfies z.ZodType<BroughtImport>,
  ImportWithdrawn: z.strictObject({ kind: z.literal('withdrawn'), sessions: count, throws: count }) satisfies z.ZodType<WithdrawAnswer>,
  Recipe: recipeSchema,
  Recording: z.strictObject({ session: idSchema, mound: idSchema, log: z.string(), carry: ledger, facts: z.array(factSchema) }),
  Growth: z.strictObject({ log: z.string(), held: z.int(), facts: z.array(factSchema) }),
  SessionRecord: z.strictObject({ session: idSchema, mound: idSchema, place: z.int(), view, baselines: z.record(z.string(), z.int()), ledger }),
} as const;
export type AnswerName = keyof typeof ANSWERS;
