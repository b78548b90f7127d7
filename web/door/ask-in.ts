import type { Refusal } from '../../core/facts/wire.ts';
import { heardRefusal } from '../live/nobody-here.ts';

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

/** The name by which a coach is taken for one without signing in: at the machine of a server that only this machine can reach. */
const AT_THE_MACHINE = 'this-machine';

/** The name of who signed in here; null where nobody did, or needs to. */
export function signedInAs(me: Answered<Me> | undefined): string | null {
  return me?.kind === 'yes' && me.value.kind === 'coach' && me.value.name !== AT_THE_MACHINE ? me.value.name : null;
}

/**
 * Ends the sign-in of this browser on the server, open screens and all, and forgets what this page remembered of it.
 * @returns false where the server did not answer: then nothing has ended
 */
export async function signOut(): Promise<boolean> {
  const ended = (await asked('/api/sign-out', {})).kind === 'yes';
  if (ended) sessionStorage.clear();
  return ended;
}

/** Of the certificate that phones have to accept; refused where there is none. */
export function askForFingerprint(): Promise<Answered<{ readonly fingerprint: string }>> {
  return asked('/api/certificate', null);
}

/** Somebody, or something, that was let in. */
export interface Grant {
  readonly id: string;
  readonly madeAtMs: number;
  readonly to: { readonly kind: 'coach'; readonly name: string } | { readonly kind: 'glance' | 'viewer' | 'device'; readonly mound: string };
}

/** What lets a device or a screen in; a screen's comes as an address. */
export interface LetIn {
  readonly token: string;
  readonly url?: string;
}

export function askForGrants(): Promise<Answered<readonly Grant[]>> {
  return asked('/api/grants', null);
}

export function letIn(kind: 'device' | 'viewer', mound: string): Promise<Answered<LetIn>> {
  return asked('/api/grants', { kind, mound });
}

/** One that has ended meanwhile is as good: the list shows it. */
export async function endGrant(id: string): Promise<void> {
  await fetch(`/api/grants/${encodeURIComponent(id)}`, { method: 'DELETE' }).catch(() => null);
}

async function asked<T>(address: string, body: object | null): Promise<Answered<T>> {
  try {
    const response = await fetch(address, body === null ? {} : { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) });
    const answer: unknown = await response.json();
    if (response.ok) return { kind: 'yes', value: answer as T };
    heardRefusal(answer as Refusal);
    return { kind: 'no', code: (answer as Refusal).code, waitS: Number(response.headers.get('retry-after') ?? 0) };
  } catch {
    return { kind: 'silent' };
  }
}
