import { hashOf, sameHash } from './grants.ts';

/** To walk from the Wall to the phone and back; longer would only serve who photographs the Wall. */
const OPEN_FOR_MS = 5 * 60_000;
/** Codes kept, for the answer to what became of one. */
const MOST_KEPT = 200;

type CodeState = 'open' | 'used' | 'over';

interface Code {
  readonly hash: string;
  readonly mound: string;
  readonly session: string;
  readonly endsAtMs: number;
  used: boolean;
}

/** Codes that let one phone in, once and soon. They are gone when the server stops: a new one costs a tap. */
export interface GlanceCodes {
  /** A session has one open code: a new one ends the one before. */
  make(mound: string, session: string): { readonly id: string; readonly code: string; readonly endsAtMs: number };
  /** Uses a code up; null when there is none such, or no longer. */
  use(code: string): { readonly mound: string; readonly session: string } | null;
  stateOf(id: string): CodeState | null;
}

export function glanceCodes({ nowMs, newId, newSecret }: { nowMs(): number; newId(): string; newSecret(): string }): GlanceCodes {
  const codes = new Map<string, Code>();
  const stateOf = ({ used, endsAtMs }: Code): CodeState => (used ? 'used' : endsAtMs <= nowMs() ? 'over' : 'open');

  return {
    make(mound, session) {
      for (const [id, code] of codes) if (code.session === session && !code.used) codes.set(id, { ...code, endsAtMs: 0 });
      const [id, secret] = [newId(), newSecret()];
      const endsAtMs = nowMs() + OPEN_FOR_MS;
      codes.set(id, { hash: hashOf(secret), mound, session, endsAtMs, used: false });
      for (const old of [...codes.keys()].slice(0, Math.max(0, codes.size - MOST_KEPT))) codes.delete(old);
      return { id, code: `${id}.${secret}`, endsAtMs };
    },
    use(given) {
      const [id = '', secret = ''] = given.split('.', 2);
      const code = codes.get(id);
      if (code === undefined || stateOf(code) !== 'open' || !sameHash(code.hash, hashOf(secret))) return null;
      code.used = true;
      return { mound: code.mound, session: code.session };
    },
    stateOf(id) {
      const code = codes.get(id);
      return code === undefined ? null : stateOf(code);
    },
  };
}
