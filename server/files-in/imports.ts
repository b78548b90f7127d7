import { readdirSync, rmSync } from 'node:fs';
import path from 'node:path';
import type { ImportChoices, Layout } from '../../core/imports/layout.ts';
import { sessionIn } from '../../core/session/ledger.ts';
import { newShortId } from '../chance.ts';
import type { Ledgers } from '../ledgers.ts';
import type { FactLog } from '../log/fact-log.ts';
import { importsInLedgers } from './earlier-imports.ts';
import { checkFile, STAGED, type CheckedFile } from './import-file.ts';

/** What a coach has said of a file that is still to come, or has come. */
export interface Import {
  readonly id: string;
  readonly name: string;
  readonly layout: Layout;
  readonly choices: ImportChoices;
  /** Null until the file was read. */
  checked: CheckedFile | null;
  readonly breaking: AbortController;
}

/** Imports under way at once: a coach has one, and one that is forgotten goes when others come. */
const MOST = 4;
/** Rows of a file that come over the network: storing all of them keeps devices waiting for about a second. */
const MOST_ROWS = 10_000;

/** The imports that are under way in a running server. None outlives it, and none holds anybody who was erased meanwhile. */
export class Imports {
  readonly #under = new Map<string, Import>();
  readonly #log: FactLog;
  readonly #ledgers: Ledgers;
  readonly #folder: string;

  constructor(log: FactLog, ledgers: Ledgers, folder: string) {
    this.#log = log;
    this.#ledgers = ledgers;
    this.#folder = folder;
    // Left behind by a power cut.
    for (const file of readdirSync(folder)) if (STAGED.test(file)) rmSync(path.join(folder, file), { force: true });
    log.onErased(() => this.close());
  }

  begin(said: Pick<Import, 'name' | 'layout' | 'choices'>): Import {
    const begun: Import = { ...said, id: newShortId(), checked: null, breaking: new AbortController() };
    this.#under.set(begun.id, begun);
    for (const id of [...this.#under.keys()].slice(0, -MOST)) this.end(id);
    return begun;
  }

  of(id: string): Import | undefined {
    return this.#under.get(id);
  }

  /** @throws {UnreadableFile} where the file cannot be read; the reason of the breaking-off where it was broken off */
  async read(under: Import, bytes: AsyncIterable<Uint8Array>): Promise<CheckedFile> {
    this.#forget(under);
    const { name, layout, choices, breaking: { signal } } = under;
    const checked = await checkFile(bytes, { name, layout, choices, signal, log: this.#log, earlier: () => importsInLedgers(this.#ledgers.all()), isWithdrawn: (mound, session) => sessionIn(this.#ledgers.of(mound), session) === undefined, folder: this.#folder, mostRows: MOST_ROWS });
    // The same file can have been sent twice, and the import can have ended meanwhile.
    this.#forget(under);
    under.checked = checked;
    if (signal.aborted) this.#forget(under);
    return checked;
  }

  #forget(under: Import): void {
    under.checked?.drop();
    under.checked = null;
  }

  /** Breaks it off, and forgets its rows; false where there is none. */
  end(id: string): boolean {
    const under = this.#under.get(id);
    this.#under.delete(id);
    if (under === undefined) return false;
    under.breaking.abort(new BrokenOff());
    this.#forget(under);
    return true;
  }

  close(): void {
    for (const id of this.#under.keys()) this.end(id);
  }
}

/** The reason of an import that ends because somebody wants it to. */
export class BrokenOff extends Error {}
