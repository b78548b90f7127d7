import type { Response } from 'express';

/** Answers a request that cannot be served, in the form that every refusal has. */
export function refuse(response: Response, status: number, code: string, path: string, sentence: string): void {
  response.status(status).json({ code, path, sentence });
}
