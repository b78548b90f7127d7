import { createMemo, Show } from 'solid-js';
import { refusalSaid, type Refused } from '../words/refusals.ts';
import { useSpeech } from '../words/use-words.tsx';

/** A refusal in the viewer's language, the server's own sentence small beside it where that is in another. */
export function RefusalWords(props: { readonly refusal: Refused }) {
  const speech = useSpeech();
  const words = createMemo(() => refusalSaid(props.refusal, speech().language));
  return <>{words().said}<Show when={words().inEnglish}>{(sentence) => <small class="in-english" lang="en"> {sentence()}</small>}</Show></>;
}
