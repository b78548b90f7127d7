import type { Refusal } from '../../core/facts/wire.ts';

/** Who the server takes this browser for. */
export type Me =
  | { readonly kind: 'coach'; readonly name: string }
  | { readonly kind: 'viewer' | 'glance'; readonly mound: string }
  | { readonly kind: 'nobody' };

/** What the server answered at its door. */
export type Answered<T> =
  | { readonly kind: 'yes'; readonly value: T }
  | { readonly kind: 'no'; readonly code: string; readonly waitS: number }
  | { readonly kind: 'silent' };

/** Gives the secret of a code or a link; where it leads is the answer. */
export function openBy(secret: string): Promise<Answered<{ readonly to: string }>> {
  return asked('/api/open', { secret });
}

export function signIn(name: string, passphrase: string): Promise<Answered<Me>> {
  return asked('/api/sign-in', { name, passphrase });
}

export function askWhoIAm(): Promise<Answered<Me>> {
  return asked('/api/me', null);
}

/** Of the certificate that phones have to accept; refused where there is none. */
export function askForFingerprint(): Promise<Answered<{ readonly fingerprint: string }>> {
  return asked('/api/certificate', null);
}

async function asked<T>(address: string, body: object | null): Promise<Answered<T>> {
  try {
    const response = await fetch(address, body === null ? {} : { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) });
    const answer: unknown = await response.json();
    if (response.ok) return { kind: 'yes', value: answer as T };
    return { kind: 'no', code: (answer as Refusal).code, waitS: Number(response.headers.get('retry-after') ?? 0) };
  } catch {
    return { kind: 'silent' };
  }
}
