import type { Request, Response } from 'express';
import type { z } from 'zod';
import { complaint } from '../complaint.ts';
import { refuse } from './refuse.ts';

/** The body of a request as it must be; otherwise null, and the request is refused. */
export function readBody<Body>(schema: z.ZodType<Body>, request: Request, response: Response): Body | null {
  const body = schema.safeParse(request.body);
  if (body.success) return body.data;
  const { path, sentence } = complaint(body.error);
  refuse(response, 400, 'malformed', path, sentence);
  return null;
}
