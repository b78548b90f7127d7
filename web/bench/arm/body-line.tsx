import { For } from 'solid-js';
import type { SessionView } from '../../../core/facts/views.ts';
import { useSpeech } from '../../words/use-words.tsx';
import { bodyWords } from './body-words.ts';

/** Whether the body throws this trial like the fastball: one quiet line, the evidence one tap away. */
export function BodyLine(props: { readonly session: SessionView }) {
  const speech = useSpeech();
  const say = () => speech().words.bench.way.body;
  const arm = () => props.session.honestArm;
  return (
    <details class="body-line" data-body={arm().kind}>
      <summary><span>{say().line}: <strong>{say().kind[arm().kind]}</strong></span></summary>
      <div class="body-more">
        <p>{say().basis[arm().basis]}</p>
        <ul><For each={arm().evidence.map((one) => bodyWords(one, speech()))}>{(line) => <li>{line}</li>}</For></ul>
        <p class="quiet">{say().holds}</p>
      </div>
    </details>
  );
}
