import { learn } from './language.ts';
import { start } from './start.ts';

/** What the start page says, and who leads back to it. */
learn({ start });
