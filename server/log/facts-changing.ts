import type { Database } from 'libsql';

/** Lets facts be changed for as long as `change` runs, inside the caller's transaction: an upgrade and an erasure alone may. */
export function whileFactsChange(database: Database, change: () => void): void {
  database.exec('DROP TRIGGER facts_never_change');
  change();
  database.exec("CREATE TRIGGER facts_never_change BEFORE UPDATE ON facts BEGIN SELECT RAISE(ABORT, 'the log is append-only'); END");
}
