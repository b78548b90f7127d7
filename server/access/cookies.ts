import { parse } from 'cookie';
import type { CookieOptions, Response } from 'express';
import type { IncomingMessage } from 'node:http';
import type { Granted } from './grants.ts';

/** A coach's browser can show Glance too, so the two do not share a cookie. A device has none. */
const COOKIES = { coach: 'offpace-coach', glance: 'offpace-screen', viewer: 'offpace-screen' } as const;
type InBrowser = Exclude<Granted['kind'], 'device'>;

/** The tokens that a browser shows, a coach's first. */
export function tokensOf(request: IncomingMessage): string[] {
  const { headers, socket } = request;
  const cookies = parse(headers.cookie ?? '');
  return [...new Set(Object.values(COOKIES))].flatMap((name) => cookies[nameOver(isEncrypted(socket), name)] ?? []);
}

/** Gives a browser its token: no script reads it, no other site sends it, and over TLS it never travels without. */
export function giveToken(response: Response, kind: InBrowser, token: string, lastsMs: number): void {
  const secure = isEncrypted(response.req.socket);
  response.cookie(nameOver(secure, COOKIES[kind]), token, { ...attributes(secure), maxAge: lastsMs });
}

export function takeTokens(response: Response): void {
  const secure = isEncrypted(response.req.socket);
  for (const name of new Set(Object.values(COOKIES))) response.clearCookie(nameOver(secure, name), attributes(secure));
}

export function isEncrypted(socket: IncomingMessage['socket']): boolean {
  return 'encrypted' in socket && socket.encrypted === true;
}

const attributes = (secure: boolean): CookieOptions => ({ httpOnly: true, sameSite: 'strict', path: '/', secure });

/** A cookie of this prefix can only have been set over TLS, by this very host. */
const nameOver = (secure: boolean, name: string): string => (secure ? `__Host-${name}` : name);
