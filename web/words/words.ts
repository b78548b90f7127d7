import type { aims } from './aims.ts';
import type { arm } from './arm.ts';
import type { asked } from './asked.ts';
import type { bench } from './bench.ts';
import type { door } from './door.ts';
import type { fault } from './fault.ts';
import type { feedback } from './feedback.ts';
import type { glance } from './glance.ts';
import type { glanceCode } from './glance-code.ts';
import type { imports } from './imports.ts';
import type { keys } from './keys.ts';
import type { measures } from './measures.ts';
import type { observed } from './observed.ts';
import type { plan } from './plan.ts';
import type { plane } from './plane.ts';
import type { playback } from './playback.ts';
import type { report } from './report.ts';
import type { takingOut } from './taking-out.ts';
import type { standing } from './standing.ts';
import type { start } from './start.ts';
import type { throwNumbers } from './throw-numbers.ts';
import type { trade } from './trade.ts';
import type { trials } from './trials.ts';
import type { wall } from './wall.ts';

/** Every text a person reads, by the part of the product that says it, each in English and Spanish. */
export interface BothWords {
  readonly trade: typeof trade;
  readonly aims: typeof aims;
  readonly arm: typeof arm;
  readonly fault: typeof fault;
  readonly feedback: typeof feedback;
  readonly measures: typeof measures;
  readonly standing: typeof standing;
  readonly start: typeof start;
  readonly wall: typeof wall;
  readonly bench: typeof bench;
  readonly door: typeof door;
  readonly glance: typeof glance;
  readonly glanceCode: typeof glanceCode;
  readonly imports: typeof imports;
  readonly keys: typeof keys;
  readonly playback: typeof playback;
  readonly observed: typeof observed;
  readonly plan: typeof plan;
  readonly plane: typeof plane;
  readonly trials: typeof trials;
  readonly report: typeof report;
  readonly takingOut: typeof takingOut;
  readonly asked: typeof asked;
  readonly throwNumbers: typeof throwNumbers;
}
/** All texts in one language; `inBoth` holds the languages to the same names. */
export type Words = { readonly [Part in keyof BothWords]: BothWords[Part]['en'] };
