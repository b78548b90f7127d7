import type { ReachRegion } from '../../core/flight/reach.ts';
import type { PlaneData } from '../charts/plane-data.ts';
import type { Speech } from '../words/speech.ts';

/** A plane with what the arm can reach behind its target, said in its description too; as it was where that is not known. */
export function withReach(plane: PlaneData, region: ReachRegion | null, { words: { wall } }: Speech): PlaneData {
  if (region === null) return plane;
  const { reach, reachSaid } = wall;
  return { ...plane, reach: { ...region, named: reach }, texts: { ...plane.texts, description: `${plane.texts.description} ${reachSaid}` } };
}
