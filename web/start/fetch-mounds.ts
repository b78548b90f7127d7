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
    return answer.ok ? { kind: 'found', mounds: (await answer.json()) as MoundListing[] } : { kind: 'unreachable' };
  } catch {
    return { kind: 'unreachable' };
  }
}
