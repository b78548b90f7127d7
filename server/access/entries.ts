import type { Logger } from 'pino';
import { Patience } from '../patience.ts';

/** Refusals written at once, and one more every ten seconds: whoever guesses shall not fill the disk. */
const AT_ONCE = 20;
const A_SECOND = 0.1;

/** Writes into the diary how people come in and are refused. What they came by is written, never who they are or from where. */
export interface Entries {
  cameIn(by: 'passphrase' | 'code' | 'link'): void;
  leftByThemselves(): void;
  wasRefused(by: 'passphrase' | 'code', code: string): void;
}

export function writeEntries(diary: Pick<Logger, 'info' | 'warn'>, nowMs: () => number): Entries {
  const patience = new Patience(AT_ONCE, A_SECOND, nowMs);
  let unwritten = 0;
  return {
    cameIn: (by) => diary.info({ by }, 'somebody was let in'),
    leftByThemselves: () => diary.info('somebody signed out'),
    wasRefused(by, code) {
      if (!patience.spend(1)) {
        unwritten += 1;
        return;
      }
      diary.warn({ by, code, ...(unwritten === 0 ? {} : { unwrittenBefore: unwritten }) }, 'somebody was refused at the door');
      unwritten = 0;
    },
  };
}
