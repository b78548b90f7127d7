import { createHash, timingSafeEqual } from 'node:crypto';
import { chmodSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';

export interface DeviceToken {
  readonly file: string;
  /** Compares in a time that tells nothing about how much of a guess was right. */
  matches(given: string): boolean;
}

/**
 * The token that devices show in their hello, from `device-token` in the data folder; made there when it is missing.
 * Only the owner of the folder can read it.
 */
export function deviceToken(dataFolder: string, newSecret: () => string): DeviceToken {
  const file = path.join(dataFolder, 'device-token');
  if (!existsSync(file)) writeFileSync(file, `${newSecret()}\n`, { mode: 0o600 });
  chmodSync(file, 0o600);
  const expected = digest(readFileSync(file, 'utf8').trim());
  return { file, matches: (given) => timingSafeEqual(digest(given), expected) };
}

/** Of equal length whatever was given. */
function digest(text: string): Buffer {
  return createHash('sha256').update(text).digest();
}
