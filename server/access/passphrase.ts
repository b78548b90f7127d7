import { scrypt } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { z } from 'zod';
import { sameHash } from './grants.ts';
import { writeWhole } from './write-whole.ts';

const SHORTEST_PASSPHRASE = 12;
const LONGEST_PASSPHRASE = 128;

/** scrypt as OWASP's Password Storage Cheat Sheet advises it: 128 MiB for each guess (N = 2^17, r = 8, p = 1). */
const COST = 2 ** 17;
const keptSchema = z.object({ salt: z.string(), hash: z.string(), cost: z.number() });

/** The one passphrase of the building's coaches. */
export interface Passphrase {
  /** One guess after the other: many at once would take the machine's memory. */
  matches(given: string): Promise<boolean>;
}

/** The passphrase kept in a data folder; null when none was ever given. */
export function keptPassphrase(dataFolder: string): Passphrase | null {
  const file = fileIn(dataFolder);
  if (!existsSync(file)) return null;
  const { salt, hash, cost } = keptSchema.parse(JSON.parse(readFileSync(file, 'utf8')));
  let turn: Promise<unknown> = Promise.resolve();
  return {
    matches(given) {
      const answer = turn.then(async () => given.length <= LONGEST_PASSPHRASE && sameHash(await stretched(given, salt, cost), hash));
      turn = answer.catch(() => {});
      return answer;
    },
  };
}

/** Keeps the hash of a passphrase, in place of the one before; `salt` is 16 or more bytes of chance in hex. */
export async function keepPassphrase(dataFolder: string, text: string, salt: string, cost = COST): Promise<void> {
  writeWhole(fileIn(dataFolder), `${JSON.stringify({ salt, hash: await stretched(text, salt, cost), cost })}\n`);
}

/** What is wrong with a passphrase, as the end of a sentence; null when it will do. */
export function tooWeak(text: string): string | null {
  if (text.length < SHORTEST_PASSPHRASE) return `is too short; give at least ${SHORTEST_PASSPHRASE} characters, such as four words that do not belong together`;
  if (text.length > LONGEST_PASSPHRASE) return `is too long; give at most ${LONGEST_PASSPHRASE} characters`;
  return new Set(text).size < 5 ? 'repeats the same few characters; give four words that do not belong together' : null;
}

const fileIn = (dataFolder: string): string => path.join(dataFolder, 'passphrase.json');

/** The same words typed on another keyboard may be other code points. */
function stretched(text: string, salt: string, cost: number): Promise<string> {
  return new Promise((resolve, reject) => {
    scrypt(text.normalize('NFKC'), Buffer.from(salt, 'hex'), 32, { N: cost, r: 8, p: 1, maxmem: 2 * 128 * cost * 8 }, (error, key) => {
      if (error === null) resolve(key.toString('hex'));
      else reject(error);
    });
  });
}
