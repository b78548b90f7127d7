import { readFileSync } from 'node:fs';
import { StartFailure } from '../start-failure.ts';
import { isLoopback } from './loopback.ts';
import { keepPassphrase, keptPassphrase, tooWeak, type Passphrase } from './passphrase.ts';

export interface PassphraseTold {
  readonly host: string;
  readonly dataFolder: string;
  /** Read for the first time or for a change; afterwards the hash in the data folder is enough. */
  readonly passphraseFile?: string;
}

/**
 * What coaches sign in with; null where only this machine reaches the server.
 * @throws {StartFailure} when there is none, or none that will do
 */
export async function passphraseOf({ host, dataFolder, passphraseFile }: PassphraseTold, newSalt: () => string): Promise<Passphrase | null> {
  if (passphraseFile !== undefined) await keepPassphrase(dataFolder, passphraseIn(passphraseFile), newSalt());
  if (isLoopback(host)) return null;
  const kept = keptPassphrase(dataFolder);
  if (kept === null) throw new StartFailure(`Listening on ${host} lets other machines in, so coaches need a passphrase; write one into a file and give it with --passphrase-file.`);
  return kept;
}

function passphraseIn(file: string): string {
  const text = firstLine(file);
  const weakness = tooWeak(text);
  if (weakness !== null) throw new StartFailure(`The passphrase in ${file} ${weakness}.`);
  return text;
}

function firstLine(file: string): string {
  try {
    return readFileSync(file, 'utf8').split(/\r?\n/, 1)[0]!;
  } catch (error) {
    throw new StartFailure(`The file ${file} with the passphrase cannot be read (${(error as NodeJS.ErrnoException).code}); give another one with --passphrase-file.`);
  }
}
