import type { Refusal } from '../../core/facts/wire.ts';
import { heardRefusal } from '../live/nobody-here.ts';

/** One mound as the start page shows it. */
export interface MoundListing {
  readonly mound: string;
  readonly openSessions: readonly { readonly id: string; readonly athleteName: string; readonly active: boolean }[];
}

export type MoundsFound = { readonly kind: 'found'; readonly mounds: readonly MoundListing[] } | { readonly kind: 'unreachable' };

/** The mounds that the server knows; a server that does not answer is said, not thrown. */
export async function fetchMounds(): Promise<MoundsFound> {
  try {
    const answer = await fetch('/api/mounds');
    const body: unknown = await answer.json();
    if (answer.ok) return { kind: 'found', mounds: body as MoundListing[] };
    heardRefusal(body as Refusal);
    return { kind: 'unreachable' };
  } catch {
    return { kind: 'unreachable' };
  }
}
