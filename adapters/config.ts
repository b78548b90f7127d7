import { readFileSync } from 'node:fs';
import path from 'node:path';
import { z } from 'zod';
import { helloSchema, PROTOCOL_VERSION, type Hello } from '../core/facts/frames.ts';
import { AdapterFailure } from './forward.ts';

const configSchema = z.strictObject({
  server: z.url({ protocol: /^wss?$/, error: 'give the address of the device door, such as ws://127.0.0.1:8080/device' }),
  tokenFile: z.string().min(1),
  device: helloSchema.omit({ kind: true, protocol: true, run: true, token: true }),
  from: z.discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('mqtt'),
      broker: z.url({ protocol: /^mqtts?$/, error: 'give an address that begins with mqtt:// or mqtts://' }),
      topic: z.string().regex(/^[^+#]{1,200}$/, 'name one topic, without + and #'),
      username: z.string().optional(),
      passwordFile: z.string().optional(),
    }),
    z.strictObject({ kind: z.literal('folder'), folder: z.string().min(1) }),
  ]),
});

/** Where an adapter takes its frames from. */
type From =
  | { readonly kind: 'mqtt'; readonly broker: string; readonly topic: string; readonly username?: string; readonly password?: string }
  | { readonly kind: 'folder'; readonly folder: string };

export interface AdapterConfig {
  /** Of the device door. */
  readonly server: string;
  readonly hello: Omit<Hello, 'run'>;
  readonly from: From;
}

/**
 * Reads what one adapter shall do from a JSON file; paths in it are meant from the folder of that file.
 * @throws {AdapterFailure} with one sentence on the first thing that is wrong
 */
export function readConfig(file: string): AdapterConfig {
  const read = configSchema.safeParse(parsed(file));
  if (!read.success) {
    const { path: at, message } = read.error.issues[0]!;
    throw new AdapterFailure(`${file}${at.length === 0 ? '' : `, ${at.join('.')}`}: ${message}; docs/adapters.md shows what belongs there.`);
  }
  const { server, tokenFile, device, from } = read.data;
  const beside = (name: string): string => path.resolve(path.dirname(file), name);
  const hello = { kind: 'hello', protocol: PROTOCOL_VERSION, token: secretIn(beside(tokenFile)), ...device } as const;
  if (from.kind === 'folder') return { server, hello, from: { kind: 'folder', folder: beside(from.folder) } };
  const { passwordFile, username, ...mqtt } = from;
  return { server, hello, from: { ...mqtt, ...(username === undefined ? {} : { username }), ...(passwordFile === undefined ? {} : { password: secretIn(beside(passwordFile)) }) } };
}

function parsed(file: string): unknown {
  try {
    return JSON.parse(readFileSync(file, 'utf8'));
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    throw new AdapterFailure(code === undefined ? `${file} is not JSON; docs/adapters.md shows what belongs there.` : `${file} cannot be read (${code}); give the file that describes the adapter.`);
  }
}

function secretIn(file: string): string {
  let text = '';
  try {
    text = readFileSync(file, 'utf8').trim();
  } catch {
    // Told below, like an empty file.
  }
  if (text === '') throw new AdapterFailure(`${file} cannot be read or is empty; it has to hold the secret and nothing else.`);
  return text;
}
