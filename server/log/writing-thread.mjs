// The thread that writes the log, while the program reads, checks and shows. Plain JavaScript, because a thread is started from a
// file that Node itself can read. What it is told and answers stands in writing.ts.
import Database from 'libsql';
import { closeSync, fdatasyncSync, openSync } from 'node:fs';
import { workerData } from 'node:worker_threads';

/** Rows to a statement: a call costs more than a row. */
const HANDFUL = 16;

/** @type {import('./writing.ts').ThreadStart} */
const { file, tables, largestPages, pagesBeside, port, ended } = workerData;

/** Prepares to insert rows of a table, given value by value. @param {Database.Database} database @param {import('./tables.ts').Table} table */
function inserting(database, { name, columns, onConflict = '' }) {
  const row = `(${columns.map(() => '?').join(', ')})`;
  const insert = (/** @type {number} */ rows) => database.prepare(`INSERT INTO ${name} (${columns.join(', ')}) VALUES ${Array.from({ length: rows }, () => row).join(', ')} ${onConflict}`);
  const [handful, single] = [insert(HANDFUL), insert(1)];
  return (/** @type {readonly import('./tables.ts').Value[]} */ values) => {
    let from = 0;
    for (const step = HANDFUL * columns.length; from + step <= values.length; from += step) handful.run(values.slice(from, from + step));
    for (const step = columns.length; from < values.length; from += step) single.run(values.slice(from, from + step));
  };
}

/** Opens the file as the program did; what it is, the program has seen to. */
function open() {
  const database = new Database(file);
  // A commit is written here and flushed below: the two are told apart where one of them fails.
  database.pragma('synchronous = NORMAL');
  database.pragma(`wal_autocheckpoint = ${pagesBeside}`);
  if (largestPages !== null) database.pragma(`max_page_count = ${largestPages}`);
  const beside = openSync(`${file}-wal`, 'r+');
  const inserts = tables.map((table) => inserting(database, table));
  /** @type {Error | null} */
  let notFlushed = null;

  return {
    /** @param {import('./writing.ts').RowsOfTables} rows */
    commit(rows) {
      database.exec('BEGIN IMMEDIATE');
      try {
        for (const [table, values] of rows.entries()) inserts[table](values);
        database.exec('COMMIT');
      } catch (error) {
        // A full disk may already have rolled back.
        if (database.inTransaction) database.exec('ROLLBACK');
        throw error;
      }
    },
    // After one flush that failed every further one fails: the system may have dropped the very pages that it could not write,
    // and would call the next flush a success all the same.
    flush() {
      try {
        if (notFlushed === null) fdatasyncSync(beside);
      } catch (error) {
        notFlushed = /** @type {Error} */ (error);
      }
      return notFlushed;
    },
    close() {
      database.close();
      closeSync(beside);
    },
  };
}

/** @returns {import('./writing.ts').ThreadSays} */
function failed(/** @type {unknown} */ error) {
  const { code, message } = /** @type {{ code?: string, message: string }} */ (error);
  return { kind: 'failed', code, message, why: 'itself' };
}

/** @type {ReturnType<typeof open> | null} */
let log = null;
/** @type {unknown} */
let notOpened;
try {
  log = open();
} catch (error) {
  notOpened = error;
}

/** Attempts are counted anew after each failure; of the one that failed nothing more is written, because it builds on what is not there. */
let failedAttempt = -1;

/** @returns {import('./writing.ts').ThreadSays} */
function write(/** @type {import('./writing.ts').Rows} */ { attempt, tables: rows }) {
  if (log === null) return failed(notOpened);
  if (attempt === failedAttempt) return { kind: 'failed', message: 'What was to be written before it was not.', why: 'behind-another' };
  try {
    log.commit(rows);
  } catch (error) {
    failedAttempt = attempt;
    return failed(error);
  }
  const notFlushed = log.flush();
  return notFlushed === null ? { kind: 'lasts' } : { ...failed(notFlushed), why: 'not-known' };
}

/** Whoever waits for the end finds the answer there. */
function say(/** @type {import('./writing.ts').ThreadSays} */ says) {
  port.postMessage(says);
  Atomics.add(ended, 0, 1);
  Atomics.notify(ended, 0);
}

port.on('message', (/** @type {import('./writing.ts').Rows | null} */ rows) => {
  if (rows !== null) return say(write(rows));
  log?.close();
  say({ kind: 'lasts' });
  port.close();
});
