import type { Refusal } from '../../../core/facts/wire.ts';
import { heardRefusal } from '../../live/nobody-here.ts';

/** A code that lets one phone in, once and soon. */
export interface GlanceCode {
  readonly id: string;
  /** Where the phone finds it, secret and all. */
  readonly url: string;
  /** `this-machine`: no other machine reaches the server. */
  readonly reach: 'network' | 'this-machine';
  readonly expiresAtMs: number;
}
export type CodeState = 'open' | 'used' | 'over';

/** What came of asking. */
export type Asked<T> = { readonly kind: 'answer'; readonly value: T } | { readonly kind: 'refused'; readonly code: string } | { readonly kind: 'silent' };

export function askForCode(session: string): Promise<Asked<GlanceCode>> {
  return ask(`/api/sessions/${encodeURIComponent(session)}/glance-code`, 'POST');
}

/** What became of a code. One that the server no longer knows is over. */
export async function stateOf(id: string): Promise<CodeState | null> {
  const asked = await ask<{ readonly state: CodeState }>(`/api/glance-codes/${encodeURIComponent(id)}`, 'GET');
  switch (asked.kind) {
    case 'answer': return asked.value.state;
    case 'refused': return 'over';
    case 'silent': return null;
  }
}

async function ask<T>(address: string, method: 'GET' | 'POST'): Promise<Asked<T>> {
  try {
    const response = await fetch(address, { method, headers: { accept: 'application/json' } });
    const body: unknown = await response.json();
    if (response.ok) return { kind: 'answer', value: body as T };
    heardRefusal(body as Refusal);
    return { kind: 'refused', code: (body as Refusal).code };
  } catch {
    return { kind: 'silent' };
  }
}
