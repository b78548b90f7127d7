import { randomBytes, randomUUID } from 'node:crypto';

/** The server's only source of chance: names and secrets, never a number that is computed with. */
export const newId = (): string => randomUUID();

/** Names what people and lists point at, in eight letters of hex. */
export const newShortId = (): string => randomBytes(4).toString('hex');

/** A secret of 128 bits, short enough for a picture that a phone reads from afar: for what is over in minutes. */
export const newShortSecret = (): string => randomBytes(16).toString('base64url');

/** A secret of 256 bits in hex. */
export const newSecret = (): string => randomBytes(32).toString('hex');
