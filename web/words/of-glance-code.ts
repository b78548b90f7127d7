import { glanceCode } from './glance-code.ts';
import { learn } from './language.ts';

/** What the code for the athlete's phone says. */
learn({ glanceCode });
