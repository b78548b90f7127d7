import type { LetteredMark, LetteredPlaneData } from '../charts/lettered-plane.ts';
import type { FoldedSession } from '../trials/record.ts';
import { planeOf } from '../wall/plane-of.ts';
import type { Speech } from '../words/speech.ts';

/** The Wall's own plane of a session with every throw alike: no newest, no miss, none faded. Its fastballs are the cloud. */
export function sessionPlane({ view }: FoldedSession, speech: Speech): LetteredPlaneData {
  const { marks, ...plane } = planeOf(view, speech);
  return {
    plane,
    marks: marks.filter(({ fastball }) => !fastball).map((mark): LetteredMark => ({ ...mark, form: 'round', letter: mark.trial ?? '' })),
    spreads: [null, null],
  };
}
