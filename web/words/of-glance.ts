import { glance } from './glance.ts';
import { learn } from './language.ts';

/** What the athlete's phone says. */
learn({ glance });
