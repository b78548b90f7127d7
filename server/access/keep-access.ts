import { newSecret, newShortId, newShortSecret } from '../chance.ts';
import { slowAttempts, type Attempts } from './attempts.ts';
import { glanceCodes, type GlanceCodes } from './codes.ts';
import { deviceTokens, type DeviceTokens } from './device-tokens.ts';
import { keepGrants, type Grants } from './grants.ts';
import { passphraseOf, type PassphraseTold } from './passphrase-file.ts';
import type { Passphrase } from './passphrase.ts';
import { whoAsks, type WhoAsks } from './who-asks.ts';

/** All that the doors of one server know of who may come in. */
export interface Access {
  readonly grants: Grants;
  readonly codes: GlanceCodes;
  readonly attempts: Attempts;
  readonly passphrase: Passphrase | null;
  readonly devices: DeviceTokens;
  readonly whoAsks: WhoAsks;
  nowMs(): number;
}

interface Kept extends PassphraseTold {
  nowMs(): number;
  isOpen(mound: string, session: string): boolean;
}

/** @throws {StartFailure} when what the data folder holds of it cannot be used, or a passphrase is missing */
export async function keepAccess(kept: Kept): Promise<Access> {
  const { host, dataFolder, nowMs, isOpen } = kept;
  const grants = keepGrants({ dataFolder, nowMs, newId: newShortId, newSecret });
  return {
    nowMs,
    grants,
    codes: glanceCodes({ nowMs, newId: newShortId, newSecret: newShortSecret }),
    attempts: slowAttempts(nowMs),
    // Who signed in by the one before has to know the new one.
    passphrase: await passphraseOf(kept, newSecret, () => grants.end(({ to }) => to.kind === 'coach')),
    devices: deviceTokens(dataFolder, grants, newSecret),
    whoAsks: whoAsks({ grants, listenHost: host, isOpen }),
  };
}
