import { asked } from './asked.ts';
import { learn } from './language.ts';

/** What the pictures on request say. */
learn({ asked });
