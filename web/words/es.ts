import { aims } from './aims.ts';
import { arm } from './arm.ts';
import { asked } from './asked.ts';
import { bench } from './bench.ts';
import type { Words } from './en.ts';
import { feedback } from './feedback.ts';
import { glance } from './glance.ts';
import { measures } from './measures.ts';
import { plan } from './plan.ts';
import { playback } from './playback.ts';
import { report } from './report.ts';
import { standing } from './standing.ts';
import { start } from './start.ts';
import { throwNumbers } from './throw-numbers.ts';
import { trade } from './trade.ts';
import { trials } from './trials.ts';
import { wall } from './wall.ts';

/** Every text a person reads, in Spanish. */
export const es: Words = { trade: trade.es, aims: aims.es, arm: arm.es, feedback: feedback.es, measures: measures.es, standing: standing.es, start: start.es, wall: wall.es, bench: bench.es, glance: glance.es, playback: playback.es, plan: plan.es, trials: trials.es, report: report.es, asked: asked.es, throwNumbers: throwNumbers.es };
