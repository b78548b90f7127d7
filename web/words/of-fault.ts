import { fault } from './fault.ts';
import { learn } from './language.ts';

/** What stands in place of a screen that failed. */
learn({ fault });
