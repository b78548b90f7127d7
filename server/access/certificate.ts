import { X509Certificate } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { createSecureContext } from 'node:tls';
import { StartFailure } from '../start-failure.ts';
import type { Authority } from './authority.ts';

/** How the server encrypts. */
export interface Secured {
  readonly key: string;
  readonly cert: string;
  /** What phones accept once; null where the certificate is one that they trust by themselves. */
  readonly authority: Authority | null;
}

/**
 * A certificate that was bought or given, from its files.
 * @throws {StartFailure} when they cannot be read or do not belong together, or the certificate has ended
 */
export function givenCertificate(certFile: string, keyFile: string, nowMs: number): Secured {
  const [cert, key] = [read(certFile, '--cert'), read(keyFile, '--key')];
  try {
    createSecureContext({ cert, key });
  } catch (error) {
    throw new StartFailure(`${certFile} and ${keyFile} are no certificate with its key (${(error as Error).message}); give both as PEM, with --cert and --key.`);
  }
  const endsAt = new X509Certificate(cert).validTo;
  if (Date.parse(endsAt) < nowMs) throw new StartFailure(`The certificate in ${certFile} ended on ${endsAt}; give a newer one with --cert and --key.`);
  return { cert, key, authority: null };
}

function read(file: string, option: string): string {
  try {
    return readFileSync(file, 'utf8');
  } catch (error) {
    throw new StartFailure(`${file} cannot be read (${(error as NodeJS.ErrnoException).code}); give another file with ${option}.`);
  }
}
