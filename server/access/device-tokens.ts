import { chmodSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import type { Hello } from '../../core/facts/frames.ts';
import { hashOf, sameHash, type Grants } from './grants.ts';
import { isFromHere, type Connected } from './loopback.ts';

/** What a device may do that showed a good token. */
export interface Welcome {
  readonly kind: 'welcome';
  /** False once its token was ended. */
  readonly holds: () => boolean;
  readonly reaches: (mound: string) => boolean;
}

type Entry = Welcome | { readonly kind: 'refused'; readonly sentence: string };

export interface DeviceTokens {
  /** Holds the token for devices on this machine. */
  readonly file: string;
  entryFor(hello: Pick<Hello, 'token' | 'mound'>, from: Connected): Entry;
}

/**
 * A coach gives each mound a token of its own, and the device that shows it may send throws there and do nothing else.
 * For devices on this machine, on whichever mound, there is one more in the file `device-token` of the data folder, made when
 * it is missing; only the owner of the folder can read it.
 */
export function deviceTokens(dataFolder: string, grants: Pick<Grants, 'of' | 'holds'>, newSecret: () => string): DeviceTokens {
  const file = path.join(dataFolder, 'device-token');
  if (!existsSync(file)) writeFileSync(file, `${newSecret()}\n`, { mode: 0o600 });
  chmodSync(file, 0o600);
  const hereHash = hashOf(readFileSync(file, 'utf8').trim());

  return {
    file,
    entryFor({ token, mound }, from) {
      if (sameHash(hashOf(token), hereHash)) return isFromHere(from) ? { kind: 'welcome', holds: () => true, reaches: () => true } : refused(`The token of the file device-token is for devices on the server's own machine; ask a coach for the token of mound ${mound}.`);
      const grant = grants.of(token);
      if (grant?.to.kind !== 'device') return refused(`This token is not known here; ask a coach for the token of mound ${mound}. For a device on the server's own machine there is one in the file device-token of its data folder.`);
      if (grant.to.mound !== mound) return refused(`This token belongs to mound ${grant.to.mound}; say hello for that one, or ask a coach for the token of mound ${mound}.`);
      return { kind: 'welcome', holds: () => grants.holds(grant.id), reaches: (other) => other === mound };
    },
  };
}

function refused(sentence: string): Entry {
  return { kind: 'refused', sentence };
}
