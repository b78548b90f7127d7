import type { FactLog } from '../log/fact-log.ts';
import { ExportFailure } from './export-failure.ts';

/** A log as far as exports need it. */
export type ReadableLog = Pick<FactLog, 'id' | 'mounds' | 'read'>;

/** The same log for one export: whoever is erased meanwhile must not be half in the file. Reading throws an ExportFailure then. */
export function asOfNow(log: ReadableLog): ReadableLog {
  const { id } = log;
  return {
    id,
    mounds: () => log.mounds(),
    read(mound, afterPlace) {
      if (log.id !== id) throw new ExportFailure('erased', 'An athlete was erased while this was written, so it was broken off; delete the file and ask again.');
      return log.read(mound, afterPlace);
    },
  };
}
