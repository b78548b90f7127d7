import type { ErasedAnswer, Refusal } from '../../core/facts/wire.ts';

const of = (athlete: string): string => `/api/athletes/${encodeURIComponent(athlete)}`;

/** Erases an athlete for good, if the name is the athlete's. */
export async function eraseAthlete(athlete: string, name: string): Promise<ErasedAnswer | Refusal | { readonly kind: 'silent' }> {
  try {
    const response = await fetch(`${of(athlete)}/erase`, { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify({ name }) });
    const body: unknown = await response.json();
    return response.ok ? (body as ErasedAnswer) : { ...(body as Refusal), kind: 'refused' };
  } catch {
    return { kind: 'silent' };
  }
}
