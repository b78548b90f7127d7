import './of-desk.ts';
import { imports } from './imports.ts';
import { learn } from './language.ts';

/** What is said where recorded throws come in; also where an imported session is shown. */
learn({ imports });
