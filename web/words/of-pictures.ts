import { asked } from './asked.ts';
import { learn } from './language.ts';
import { wall } from './wall.ts';

/** What the Wall and its pictures say. */
learn({ asked, wall });
