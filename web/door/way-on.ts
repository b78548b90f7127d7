import type { Me } from './ask-in.ts';

/** Where somebody wanted to go when they were asked to sign in: only ever a screen of this server. */
export function wantedIn(search: string, origin: string): string {
  const to = new URLSearchParams(search).get('to') ?? '/';
  if (!to.startsWith('/') || !URL.canParse(to, origin)) return '/';
  const address = new URL(to, origin);
  return address.origin === origin && address.pathname !== '/sign-in' ? `${address.pathname}${address.search}` : '/';
}

/** The door that leads back to this very screen. */
export function signInAddress({ pathname, search }: Pick<Location, 'pathname' | 'search'>): string {
  return `/sign-in?to=${encodeURIComponent(`${pathname}${search}`)}`;
}

/** Whether a browser that was let in may go there at once: it came from elsewhere, and browsers then keep back who it is at first. */
export function leadsOn(me: Me, wanted: string): boolean {
  switch (me.kind) {
    case 'coach': return true;
    case 'glance':
    case 'viewer': return wanted.split('?')[0] === `/${me.kind === 'glance' ? 'glance' : 'wall'}/${me.mound}`;
    case 'nobody': return false;
  }
}
