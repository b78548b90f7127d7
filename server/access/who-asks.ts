import type { IncomingMessage } from 'node:http';
import { tokensOf } from './cookies.ts';
import type { Grants } from './grants.ts';
import { isFromHere, isLoopback } from './loopback.ts';
import { COACH_HERE, NOBODY, type Who } from './who.ts';

export type WhoAsks = (request: IncomingMessage) => Who;

interface Known {
  readonly grants: Pick<Grants, 'of'>;
  readonly listenHost: string;
  isOpen(mound: string, session: string): boolean;
}

/**
 * Tells who asks, at the moment of asking: a grant that has ended, or the Glance of a closed session, is nobody's any more.
 * Where only this machine can reach the server, whoever sits at it is coach; what was passed on by another program is not from here.
 */
export function whoAsks({ grants, listenHost, isOpen }: Known): WhoAsks {
  const fromHere = (request: IncomingMessage): boolean => isLoopback(listenHost) && !wasPassedOn(request);
  return (request) => {
    if (fromHere(request)) return COACH_HERE;
    for (const token of tokensOf(request)) {
      const to = grants.of(token)?.to;
      if (to === undefined || to.kind === 'device') continue;
      if (to.kind !== 'glance' || isOpen(to.mound, to.session)) return to;
    }
    return NOBODY;
  };
}

/** Whether a program on this machine asks, and not for somebody else. */
export function isOnThisMachine(request: IncomingMessage): boolean {
  return isFromHere(request.socket) && !wasPassedOn(request);
}

function wasPassedOn({ headers }: IncomingMessage): boolean {
  return ['forwarded', 'via', 'x-forwarded-for', 'x-forwarded-host'].some((name) => headers[name] !== undefined);
}
