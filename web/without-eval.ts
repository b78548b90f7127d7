import { config } from 'zod';

/** The page's policy forbids code made from text, and the schema library would try it once and be refused loudly. */
config({ jitless: true });
