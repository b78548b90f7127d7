import { z } from 'zod';
import { AXES, EFFORTS, FAMILIES, INTENTS, OBSERVATIONS, SIGHTS, STAGES } from './vocabulary.ts';

/** How the words of the vocabulary, and names, are spelled in frames and facts. Apart from the vocabulary, so that a screen that only reads words carries no checks. */
export const stageSchema = z.enum(STAGES);
export const effortSchema = z.enum(EFFORTS);
export const intentSchema = z.enum(INTENTS);
export const familySchema = z.enum(FAMILIES);
export const observationSchema = z.enum(OBSERVATIONS);
export const sightSchema = z.enum(SIGHTS);
export const axisSchema = z.enum(AXES);
/** A calendar day such as 2026-04-30. */
export const daySchema = z.string().regex(/^\d{4}-\d{2}-\d{2}$/);
/** The letter of a trial in its session: A … Z, AA, AB … */
export const trialSchema = z.string().regex(/^[A-Z]{1,2}$/);

/**
 * A name that may stand in an address: letters, digits, dash, dot and underscore. Names that every object of the language
 * answers to, such as `constructor`, are no ids: a session of that name would be found where there is none.
 */
export const idSchema = z.string().regex(/^[A-Za-z0-9][A-Za-z0-9._-]{0,63}$/, {
  message: 'use 1 to 64 letters, digits, dashes, dots or underscores, beginning with a letter or digit',
}).refine((id) => !(id in Object.prototype), { message: 'this word cannot be an id; choose another one' });
