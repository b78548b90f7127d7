import { door } from './door.ts';
import { learn } from './language.ts';

/** What is said before anybody is let in. */
learn({ door });
