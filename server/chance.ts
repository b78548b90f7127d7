import { randomBytes, randomUUID } from 'node:crypto';

/** The server's only source of chance: names and secrets, never a number that is computed with. */
export const newId = (): string => randomUUID();

/** A secret of 256 bits in hex. */
export const newSecret = (): string => randomBytes(32).toString('hex');
