import { readFileSync } from 'node:fs';
import { StartFailure } from '../start-failure.ts';
import { isLoopback } from './loopback.ts';
import { keepPassphrase, keptPassphrase, tooWeak, type Passphrase } from './passphrase.ts';

export interface PassphraseTold {
  readonly host: string;
  readonly dataFolder: string;
  /** Read for the first time or for a change; afterwards the hash in the data folder is enough. */
  readonly passphraseFile?: string;
  /** Asks the person who starts the server for one, where none is kept and no file is given; left out where nobody sits there. */
  askPassphrase?(): Promise<string>;
}

/**
 * What coaches sign in with; null where only this machine reaches the server. `onChanged` is called when it is another one than before.
 * @throws {StartFailure} when there is none, or none that will do
 */
export async function passphraseOf({ host, dataFolder, passphraseFile, askPassphrase }: PassphraseTold, newSalt: () => string, onChanged: () => void): Promise<Passphrase | null> {
  if (passphraseFile !== undefined) await take(passphraseIn(passphraseFile), dataFolder, newSalt, onChanged);
  if (isLoopback(host)) return null;
  if (askPassphrase !== undefined && keptPassphrase(dataFolder) === null) await take(await askPassphrase(), dataFolder, newSalt, onChanged);
  const kept = keptPassphrase(dataFolder);
  if (kept === null) throw new StartFailure(`Listening on ${host} lets other machines in, so coaches need a passphrase; write one into a file and give it with --passphrase-file.`);
  return kept;
}

/** The same passphrase again changes nothing. */
async function take(text: string, dataFolder: string, newSalt: () => string, onChanged: () => void): Promise<void> {
  if (await keptPassphrase(dataFolder)?.matches(text)) return;
  await keepPassphrase(dataFolder, text, newSalt());
  onChanged();
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
