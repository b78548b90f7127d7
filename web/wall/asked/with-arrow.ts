import type { MoundView } from '../../../core/facts/views.ts';
import type { PlaneData, PlaneUnexplained } from '../../charts/plane-data.ts';
import type { Speech } from '../../words/speech.ts';
import { arrowOf, unexplainedWords } from './unexplained-of.ts';

/**
 * The same plane with an arrow that shows what the last throw's spin does not explain.
 * @param as whether the arrow is named: beside the seam map, which names it, it need not be
 */
export function withArrow(plane: PlaneData, view: MoundView, speech: Speech, as: 'plain' | 'named'): PlaneData {
  const last = view.throws.at(-1);
  if (last === undefined) return plane;
  const said = unexplainedWords(last.unexplained, speech);
  const description = `${plane.texts.description} ${said}.`;
  return { ...plane, unexplained: unexplainedOf(plane, last, as === 'named' ? [said] : []), texts: { ...plane.texts, description } };
}

/** Only the newest throw's, like its miss. */
function unexplainedOf({ marks }: PlaneData, last: MoundView['throws'][number], words: readonly string[]): PlaneUnexplained | null {
  if (last.place !== marks.at(-1)?.place || last.unexplained.kind !== 'unexplained') return null;
  return arrowOf(last.unexplained, last.separation, words);
}
