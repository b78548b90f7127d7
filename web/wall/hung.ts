import type { LiveMound } from '../live/use-mound.ts';
import type { Standing } from '../standing/standing.ts';

/** One mound on a Wall, as it stands. */
export interface Hung {
  readonly mound: string;
  readonly live: LiveMound;
  readonly standing: () => Standing;
}
