import path from 'node:path';
import { openSqliteLog } from '../../server/log/sqlite-log.ts';
import { folderForTest } from '../server/folder.ts';
import { factLogContract } from './fact-log.ts';

let ids = 0;

factLogContract('SQLite', () => {
  const file = path.join(folderForTest(), 'facts.db');
  return {
    open() {
      const opened = openSqliteLog({ file, nowMs: () => 1_700_000_000_000, newId: () => `log-${++ids}`, onTrouble(error) { throw error; } });
      if (opened.kind === 'failed') throw new Error(opened.sentence);
      return opened.log;
    },
  };
});
