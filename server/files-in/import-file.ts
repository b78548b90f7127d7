import path from 'node:path';
import type { ImportedFile } from '../../core/facts/import-says.ts';
import type { ImportReport, RowRefusal } from '../../core/facts/import-wire.ts';
import { importedFacts } from '../../core/imports/imported-facts.ts';
import type { ImportChoices, Layout } from '../../core/imports/layout.ts';
import { newShortId } from '../chance.ts';
import type { Entry, FactLog, StorageFailure } from '../log/fact-log.ts';
import { StagedRows, type Sitting, type StagedRow } from '../log/staged-rows.ts';
import { checkRows } from './check-rows.ts';
import { earlierOf, type EarlierImport } from './earlier-imports.ts';

/** A sitting of more throws than this comes as several sessions: nobody throws so many, and a screen shows one at a time. */
const MOST_THROWS = 2000;
/** Staged rows stand beside the log under this name; whatever is left of it after a power cut goes at the next start. */
export const STAGED = /^importing-[0-9a-f]{8}\.db(?:-\w+)?$/;

interface ImportHow {
  /** Of the file, as a person knows it. */
  readonly name: string;
  readonly layout: Layout;
  readonly choices: ImportChoices;
  readonly log: Pick<FactLog, 'appendAll' | 'requested' | 'knowsRequest'>;
  /** Whether an imported session was taken back. */
  isWithdrawn(mound: string, session: string): boolean;
  /** What was imported before. */
  earlier(): Iterable<EarlierImport>;
  /** The data folder: rows wait there between reading and storing. */
  readonly folder: string;
  onProgress?(bytes: number, rows: number): void;
  readonly signal?: AbortSignal;
  /** Left out, as many as there are. */
  readonly mostRows?: number;
}

type StoreMode = 'all-or-nothing' | 'keep-the-good';
type StoreReply =
  | { readonly kind: 'stored'; readonly sessions: number; readonly throws: number }
  /** Nothing, or with `keep-the-good` the sessions so far, is in the log. */
  | { readonly kind: 'refused'; readonly code: 'rows-refused' | 'known-meanwhile' | 'nothing-good'; readonly sentence: string }
  | { readonly kind: 'broken-off'; readonly sessions: number; readonly throws: number }
  | StorageFailure;

/** A file that was read and checked; nothing of it is in the log before `store`. */
export interface CheckedFile {
  readonly report: ImportReport;
  /** The first so many, or all, in the order of the file. */
  refusals(most?: number): Iterable<RowRefusal>;
  store(mode: StoreMode, by: string, signal?: AbortSignal): Promise<StoreReply>;
  /** Forgets the rows; what was stored stays. */
  drop(): void;
}

/**
 * Reads a file of throws and checks every row of it.
 * @throws {UnreadableFile} where the file itself cannot be read; the reason of `signal` where the reading is broken off
 */
export async function checkFile(bytes: AsyncIterable<Uint8Array>, how: ImportHow): Promise<CheckedFile> {
  const { name, log, folder, choices } = how;
  const id = newShortId();
  const staged = new StagedRows(path.join(folder, `importing-${id}.db`));
  try {
    const { sha256, bytes: length, rows, strangers } = await checkRows(bytes, staged, how);
    const file = { name: name.slice(-200), sha256 };
    const sittings = staged.sittings();
    const report: ImportReport = {
      file, rows, strangers, bytes: length, ...staged.counts,
      refusedBecause: staged.refusalsByCode(),
      sessions: sittings.reduce((sum, { throws }) => sum + Math.ceil(throws / MOST_THROWS), 0),
      athletes: new Set(sittings.map(({ athlete }) => athlete)).size,
      mounds: [...new Set(sittings.map(({ mound }) => mound))].sort(),
      days: sittings.length === 0 ? null : { first: sittings[0]!.day, last: sittings.at(-1)!.day },
      earlier: earlierOf(how.earlier(), sha256),
    };
    let isStoring = false;
    let isDropped = false;
    return {
      report,
      refusals: (most) => staged.refusals(most),
      async store(mode, by, signal) {
        isStoring = true;
        try {
          return await store({ log, mode, by, signal, refused: report.refused, sessions: sessionsIn(id, staged, sittings, file, choices) });
        } finally {
          isStoring = false;
          if (isDropped) staged.drop();
        }
      },
      drop() {
        isDropped = true;
        // Whoever stores them still reads them.
        if (!isStoring) staged.drop();
      },
    };
  } catch (error) {
    staged.drop();
    throw error;
  }
}

interface SessionToStore {
  readonly throws: number;
  entries(by: string): Generator<Entry>;
}

/** Read one after the other, so that a file of any length takes no memory. */
function* sessionsIn(id: string, staged: StagedRows, sittings: readonly Sitting[], file: ImportedFile, choices: ImportChoices): Generator<SessionToStore> {
  let number = 0;
  for (const sitting of sittings) {
    for (const rows of staged.rows(sitting, MOST_THROWS)) {
      number += 1;
      yield { throws: rows.length, entries: (by) => entriesOf(`imported-${id}-${number}`, sitting, rows, file, choices, by) };
    }
  }
}

function* entriesOf(session: string, { mound, day }: Sitting, rows: readonly StagedRow[], file: ImportedFile, choices: ImportChoices, by: string): Generator<Entry> {
  const identities = new Map(rows.map(({ line, identity }) => [line, identity]));
  const facts = importedFacts(session, day, rows, file, choices);
  yield { mound, by, said: facts.session };
  for (const said of facts.throws) yield { mound, by, said, request: identities.get(said.source.sequence)! };
}

interface Storing {
  readonly log: Pick<FactLog, 'appendAll'>;
  readonly mode: StoreMode;
  readonly by: string;
  readonly signal: AbortSignal | undefined;
  readonly refused: number;
  readonly sessions: Iterable<SessionToStore>;
}

async function store({ log, mode, by, signal, refused, sessions }: Storing): Promise<StoreReply> {
  if (mode === 'all-or-nothing' && refused > 0) return { kind: 'refused', code: 'rows-refused', sentence: `${refused} ${refused === 1 ? 'row is' : 'rows are'} refused, so nothing was imported; mend the file, or keep the good rows.` };
  const stored = { sessions: 0, throws: 0 };
  const count = ({ throws }: SessionToStore): void => {
    stored.sessions += 1;
    stored.throws += throws;
  };
  if (mode === 'all-or-nothing') {
    const reply = log.appendAll((function* () {
      for (const session of sessions) {
        yield* session.entries(by);
        count(session);
      }
    })());
    return ended(reply.kind === 'stored' ? null : reply, stored);
  }
  for (const session of sessions) {
    if (signal?.aborted) return { kind: 'broken-off', ...stored };
    const reply = log.appendAll(session.entries(by));
    if (reply.kind !== 'stored') return ended(reply, stored);
    count(session);
    await new Promise(setImmediate);
  }
  return ended(null, stored);
}

function ended(trouble: { readonly kind: 'known' } | StorageFailure | null, stored: { readonly sessions: number; readonly throws: number }): StoreReply {
  if (trouble?.kind === 'failed') return trouble;
  if (trouble?.kind === 'known') return { kind: 'refused', code: 'known-meanwhile', sentence: 'Some of these throws were imported by somebody meanwhile; check the file again.' };
  if (stored.throws === 0) return { kind: 'refused', code: 'nothing-good', sentence: 'No row of the file can be imported; the list of refused rows says why.' };
  return { kind: 'stored', ...stored };
}
