import { createHash, timingSafeEqual } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { z } from 'zod';
import { idSchema } from '../../core/facts/spelling.ts';
import { StartFailure } from '../start-failure.ts';
import { writeWhole } from './write-whole.ts';

/** What a secret lets its holder do. */
const grantedSchema = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('coach'), name: z.string() }),
  z.object({ kind: z.literal('viewer'), mound: idSchema }),
  z.object({ kind: z.literal('device'), mound: idSchema }),
  z.object({ kind: z.literal('glance'), mound: idSchema, session: idSchema }),
]);
export type Granted = z.infer<typeof grantedSchema>;

const grantSchema = z.object({
  /** Names it in lists; no secret. */
  id: z.string(),
  /** SHA-256 of a secret of 256 bits, in hex: long enough not to be guessed back. */
  hash: z.string(),
  madeAtMs: z.number(),
  endsAtMs: z.number().nullable(),
  to: grantedSchema,
});
type Grant = z.infer<typeof grantSchema>;

export interface Grants {
  /** @returns the token to hand out, once: only its hash is kept */
  make(to: Granted, endsAtMs: number | null): { readonly grant: Grant; readonly token: string };
  /** The grant of a token that still holds; null for every other text. */
  of(token: string): Grant | null;
  holds(id: string): boolean;
  list(): readonly Grant[];
  /** Ends those that are chosen, at once and for good; tells how many. */
  end(chosen: (grant: Grant) => boolean): number;
  /** Calls after grants were ended. */
  onEnded(listener: () => void): void;
}

interface GrantsParts {
  readonly dataFolder: string;
  nowMs(): number;
  newId(): string;
  newSecret(): string;
}

/**
 * Keeps who was let in, in `grants.json` of the data folder; only its owner can read it, and no secret stands in it.
 * @throws {StartFailure} when that file cannot be understood
 */
export function keepGrants({ dataFolder, nowMs, newId, newSecret }: GrantsParts): Grants {
  const file = path.join(dataFolder, 'grants.json');
  const listeners: (() => void)[] = [];
  let grants = new Map(readGrants(file).map((grant) => [grant.id, grant]));
  const hasEnded = ({ endsAtMs }: Grant): boolean => endsAtMs !== null && endsAtMs <= nowMs();

  function keep(next: readonly Grant[]): void {
    const lasting = next.filter((grant) => !hasEnded(grant));
    writeWhole(file, `${JSON.stringify(lasting, null, 1)}\n`);
    grants = new Map(lasting.map((grant) => [grant.id, grant]));
  }

  const holding = (id: string): Grant | null => {
    const grant = grants.get(id);
    return grant === undefined || hasEnded(grant) ? null : grant;
  };

  return {
    make(to, endsAtMs) {
      const [id, secret] = [newId(), newSecret()];
      const grant: Grant = { id, hash: hashOf(secret), madeAtMs: nowMs(), endsAtMs, to };
      keep([...grants.values(), grant]);
      return { grant, token: `${id}.${secret}` };
    },
    of(token) {
      const [id = '', secret = ''] = token.split('.', 2);
      const grant = holding(id);
      return grant !== null && sameHash(grant.hash, hashOf(secret)) ? grant : null;
    },
    holds: (id) => holding(id) !== null,
    list: () => [...grants.values()].filter((grant) => !hasEnded(grant)),
    end(chosen) {
      const all = [...grants.values()];
      const ended = all.filter(chosen);
      if (ended.length === 0) return 0;
      keep(all.filter((grant) => !ended.includes(grant)));
      for (const listener of listeners) listener();
      return ended.length;
    },
    onEnded: (listener) => void listeners.push(listener),
  };
}

/** @throws {StartFailure} when the file is there and cannot be understood */
function readGrants(file: string): Grant[] {
  if (!existsSync(file)) return [];
  try {
    return z.array(grantSchema).parse(JSON.parse(readFileSync(file, 'utf8')));
  } catch {
    throw new StartFailure(`${file} is damaged, so nobody who was let in is known; move it away and start again: everybody then has to be let in anew.`);
  }
}

export function hashOf(secret: string): string {
  return createHash('sha256').update(secret).digest('hex');
}

/** In a time that tells nothing about how much of a guess was right. */
export function sameHash(a: string, b: string): boolean {
  const [left, right] = [Buffer.from(a, 'hex'), Buffer.from(b, 'hex')];
  return left.length === right.length && timingSafeEqual(left, right);
}
