import type { ArmCare } from '../../core/facts/care-view.ts';
import { useSpeech } from '../words/use-words.tsx';
import type { OpenedComparison } from './comparison-of.ts';
import type { Names } from './names.ts';
import { nextWords } from './next-words.ts';
import { Sentences } from './verdict.tsx';

/** What to throw next, or why nothing is suggested. */
export function NextThrows(props: { readonly found: OpenedComparison; readonly care: ArmCare; readonly names: Names }) {
  const speech = useSpeech();
  return <Sentences class="next-throws" title={speech().words.trials.pair.next} sentences={nextWords(props.found.compared, props.found.taken, props.care, props.names, speech())} />;
}
