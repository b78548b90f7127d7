import type { RequestHandler } from 'express';
import { notTheirs, type Deed } from '../access/may.ts';
import type { WhoAsks } from '../access/who-asks.ts';
import { refuse } from './refuse.ts';

/** Lets a request pass whose sender may do this; anybody else is refused. */
export function onlyFor(whoAsks: WhoAsks, deed: Deed): RequestHandler {
  return (request, response, next) => {
    const who = whoAsks(request);
    const refused = notTheirs(who, deed);
    if (refused === null) next();
    else refuse(response, who.kind === 'nobody' ? 401 : 403, refused.code, refused.path, refused.sentence);
  };
}
