import './of-glance.ts';
import './of-pictures.ts';
import './of-start.ts';
import { aims } from './aims.ts';
import { bench } from './bench.ts';
import { keys } from './keys.ts';
import { learn } from './language.ts';
import { observed } from './observed.ts';
import { plan } from './plan.ts';
import { playback } from './playback.ts';
import { report } from './report.ts';
import { takingOut } from './taking-out.ts';
import { throwNumbers } from './throw-numbers.ts';
import { trials } from './trials.ts';

/** What the screens of coach and staff say: everything. */
learn({ aims, bench, keys, observed, plan, playback, report, takingOut, throwNumbers, trials });
