import { aims } from './aims.ts';
import { arm } from './arm.ts';
import { asked } from './asked.ts';
import { bench } from './bench.ts';
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

/** Every text a person reads, in English. */
export const en = { trade: trade.en, aims: aims.en, arm: arm.en, feedback: feedback.en, measures: measures.en, standing: standing.en, start: start.en, wall: wall.en, bench: bench.en, glance: glance.en, playback: playback.en, plan: plan.en, trials: trials.en, report: report.en, asked: asked.en, throwNumbers: throwNumbers.en };
export type Words = typeof en;
