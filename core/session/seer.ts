import type { Source } from '../facts/fact.ts';

/** What the device that saw a throw can know, and how it tells it. */
export type Seer = Pick<Source, 'sight' | 'axis' | 'units' | 'standardErrors'>;
