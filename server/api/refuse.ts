import type { Response } from 'express';
import type { ZodError } from 'zod';

/** Answers a request that cannot be served, in the form that every refusal has. */
export function refuse(response: Response, status: number, code: string, path: string, sentence: string): void {
  response.status(status).json({ code, path, sentence });
}

/** @param what was asked for, such as "Throws cannot be given out" */
export function notAQuestion(response: Response, what: string, { issues }: ZodError): void {
  const { path, message } = issues[0]!;
  refuse(response, 400, 'not-a-question', path.join('.'), `${what} like this: ${path.join('.') || 'the question'}: ${message}.`);
}

export function unknownSession(response: Response): void {
  refuse(response, 404, 'unknown-session', 'id', 'There is no session with this id; the list of sessions has those there are.');
}

export function unknownAthlete(response: Response): void {
  refuse(response, 404, 'unknown-athlete', 'id', 'There is no athlete with this id: there never was one, or the athlete was erased already. The list of athletes has those there are.');
}
