import type { z } from 'zod';
import { sessionQuestionSchema } from '../../../core/facts/session-search.ts';
import { newRecipeSchema, renamingSchema } from '../../files-in/recipes.ts';
import { grantSchema, openSchema } from '../access-routes.ts';
import { erasingSchema } from '../athlete-data.ts';
import { exportQuestionSchema } from '../export-question.ts';
import { importSchema, storeSchema, withdrawSchema } from '../import-routes.ts';
import { signInSchema } from '../sign-in.ts';
import type { AnswerName } from './answers.ts';

/** One thing that /api can be asked. */
export interface Operation {
  readonly method: 'get' | 'post' | 'put' | 'patch' | 'delete';
  /** Below /api, as the routes write it. */
  readonly path: string;
  readonly summary: string;
  /** Who may: whoever comes, or a coach alone (server/access/may.ts). */
  readonly who: 'anyone' | 'coach';
  readonly asks?: z.ZodObject;
  readonly sends?: z.ZodType;
  /** Bytes of any file instead. */
  readonly sendsFile?: true;
  readonly answers: { readonly status: 200 | 201 | 204 } & (
    | { readonly is: AnswerName; readonly list?: true }
    | { readonly file: readonly string[] }
    | { readonly nothing: true }
  );
  /** Statuses of refusals besides those that everything here can have. */
  readonly refuses?: readonly number[];
}

const FACTS = { status: 200, file: ['application/x-ndjson'] } as const;
const THROWS = { status: 200, file: ['text/csv', 'application/vnd.apache.parquet'] } as const;

/** Everything below /api. A route that is not here, or the other way round, fails a test: add its row with the route. */
export const OPERATIONS: readonly Operation[] = [
  { method: 'get', path: '/health', summary: 'Whether the server works; to a coach also which log it has and what it refused.', who: 'anyone', answers: { status: 200, is: 'Health' } },
  { method: 'get', path: '/certificate', summary: 'The fingerprint of the certificate that was made here.', who: 'anyone', answers: { status: 200, is: 'Certificate' }, refuses: [404] },
  { method: 'get', path: '/openapi.json', summary: 'This document.', who: 'anyone', answers: { status: 200, file: ['application/json'] } },
  { method: 'get', path: '/me', summary: 'Who the asking browser is.', who: 'anyone', answers: { status: 200, is: 'Who' } },
  { method: 'post', path: '/open', summary: 'Come in by a code or a link.', who: 'anyone', sends: openSchema, answers: { status: 200, is: 'WayOn' }, refuses: [400, 410] },
  { method: 'post', path: '/sign-in', summary: 'Sign a coach in.', who: 'anyone', sends: signInSchema, answers: { status: 200, is: 'Who' }, refuses: [400, 401, 409, 429] },
  { method: 'post', path: '/sign-out', summary: 'Sign out.', who: 'anyone', answers: { status: 200, is: 'Who' } },
  { method: 'post', path: '/sessions/:id/glance-code', summary: 'A code that lets one phone into the Glance of a session.', who: 'coach', answers: { status: 201, is: 'GlanceCode' }, refuses: [404, 409] },
  { method: 'get', path: '/glance-codes/:id', summary: 'Whether a code was used.', who: 'coach', answers: { status: 200, is: 'CodeState' }, refuses: [404] },
  { method: 'get', path: '/grants', summary: 'Who was let in.', who: 'coach', answers: { status: 200, is: 'Grant', list: true } },
  { method: 'post', path: '/grants', summary: 'Let a screen or a device in.', who: 'coach', sends: grantSchema, answers: { status: 201, is: 'MadeGrant' }, refuses: [400] },
  { method: 'delete', path: '/grants/:id', summary: 'End a grant.', who: 'coach', answers: { status: 204, nothing: true }, refuses: [404] },
  { method: 'get', path: '/athletes', summary: 'Every athlete, by name.', who: 'coach', answers: { status: 200, is: 'Athlete', list: true } },
  { method: 'get', path: '/athletes/:id/days', summary: 'The throws of an athlete by day, and what stands unanswered about the arm.', who: 'coach', answers: { status: 200, is: 'AthleteDays' }, refuses: [404] },
  { method: 'get', path: '/athletes/:id/sessions', summary: 'The sessions of an athlete, newest first.', who: 'coach', answers: { status: 200, is: 'SessionListing', list: true }, refuses: [404] },
  { method: 'get', path: '/athletes/:id/records', summary: 'The same as they stand.', who: 'coach', answers: { status: 200, is: 'SessionRecord', list: true }, refuses: [404] },
  { method: 'get', path: '/athletes/:id/throws', summary: 'A table of an athlete’s throws.', who: 'coach', asks: exportQuestionSchema, answers: THROWS, refuses: [400, 404] },
  { method: 'get', path: '/athletes/:id/facts', summary: 'Everything that is kept of an athlete, as JSON Lines.', who: 'coach', answers: FACTS, refuses: [404] },
  { method: 'post', path: '/athletes/:id/erase', summary: 'Erase an athlete for good.', who: 'coach', sends: erasingSchema, answers: { status: 200, is: 'Erased' }, refuses: [400, 404, 409, 503] },
  { method: 'get', path: '/mounds', summary: 'Every mound that has facts or was heard of.', who: 'coach', answers: { status: 200, is: 'MoundListing', list: true } },
  { method: 'get', path: '/sessions', summary: 'The sessions of all mounds, newest first.', who: 'coach', answers: { status: 200, is: 'SessionListing', list: true } },
  { method: 'get', path: '/sessions/found', summary: 'Sessions looked for.', who: 'coach', asks: sessionQuestionSchema, answers: { status: 200, is: 'SessionsFound' }, refuses: [400] },
  { method: 'get', path: '/sessions/:id', summary: 'The recording of a session: the state before it and its facts.', who: 'coach', answers: { status: 200, is: 'Recording' }, refuses: [404] },
  { method: 'get', path: '/sessions/:id/since/:place', summary: 'What a recording has gained behind a place of its log.', who: 'coach', answers: { status: 200, is: 'Growth' }, refuses: [400, 404] },
  { method: 'get', path: '/sessions/:id/record', summary: 'A session as it stands.', who: 'coach', answers: { status: 200, is: 'SessionRecord' }, refuses: [404] },
  { method: 'get', path: '/sessions/:id/throws', summary: 'A table of a session’s throws.', who: 'coach', asks: exportQuestionSchema, answers: THROWS, refuses: [400, 404] },
  { method: 'get', path: '/sessions/:id/facts', summary: 'A session’s facts and those that it rests on, as JSON Lines.', who: 'coach', answers: FACTS, refuses: [404] },
  { method: 'get', path: '/throws', summary: 'A table of all throws.', who: 'coach', asks: exportQuestionSchema, answers: THROWS, refuses: [400] },
  { method: 'get', path: '/facts', summary: 'All facts, as JSON Lines.', who: 'coach', answers: FACTS },
  { method: 'post', path: '/imports/look', summary: 'What the first 64 KiB of a file of throws look like: a guess for each column, and what it rests on.', who: 'coach', sendsFile: true, answers: { status: 200, is: 'FileLook' }, refuses: [400] },
  { method: 'post', path: '/imports', summary: 'Begin an import: what the columns of the file are, and whose its rows.', who: 'coach', sends: importSchema, answers: { status: 201, is: 'ImportBegun' }, refuses: [400] },
  { method: 'put', path: '/imports/:id/file', summary: 'The file itself; the answer says what each of its rows came to.', who: 'coach', sendsFile: true, answers: { status: 200, is: 'ImportReport' }, refuses: [400, 404, 409] },
  { method: 'get', path: '/imports/:id/refused.csv', summary: 'Which rows are refused and why.', who: 'coach', answers: { status: 200, file: ['text/csv'] }, refuses: [404, 409] },
  { method: 'post', path: '/imports/:id/store', summary: 'Store the rows as sessions.', who: 'coach', sends: storeSchema, answers: { status: 200, is: 'ImportStored' }, refuses: [400, 404, 409, 503] },
  { method: 'get', path: '/imports', summary: 'The imports that count, newest first.', who: 'coach', answers: { status: 200, is: 'BroughtImport', list: true } },
  { method: 'post', path: '/imports/:id/withdraw', summary: 'Take an import back as a whole: from here on nothing counts it; the log keeps it.', who: 'coach', sends: withdrawSchema, answers: { status: 200, is: 'ImportWithdrawn' }, refuses: [400, 404, 409, 503] },
  { method: 'delete', path: '/imports/:id', summary: 'Break an import off.', who: 'coach', answers: { status: 204, nothing: true }, refuses: [404] },
  { method: 'get', path: '/recipes', summary: 'How the columns of files are read, as coaches once said.', who: 'coach', answers: { status: 200, is: 'Recipe', list: true }, refuses: [503] },
  { method: 'post', path: '/recipes', summary: 'Keep a recipe, in place of one of the same name.', who: 'coach', sends: newRecipeSchema, answers: { status: 201, is: 'Recipe' }, refuses: [400, 503] },
  { method: 'patch', path: '/recipes/:id', summary: 'Rename a recipe.', who: 'coach', sends: renamingSchema, answers: { status: 200, is: 'Recipe' }, refuses: [400, 404, 503] },
  { method: 'delete', path: '/recipes/:id', summary: 'Remove a recipe.', who: 'coach', answers: { status: 204, nothing: true }, refuses: [404, 503] },
];
