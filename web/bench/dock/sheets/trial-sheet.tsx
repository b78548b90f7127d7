import { For, Show } from 'solid-js';
import type { SessionView } from '../../../../core/facts/views.ts';
import { letterOf } from '../../../../core/session/letter.ts';
import { Answer } from '../../../desk/answer.tsx';
import { useDesk } from '../../../desk/desk.ts';
import { trialWords } from '../../../grip/grip-words.ts';
import { useWords } from '../../../words/use-words.tsx';
import type { OneTap } from '../one-tap.ts';

/** Begins a trial with the last grip and cue, goes back to one, or leaves them: each one tap. Another grip or cue has a place of its own. */
export function TrialSheet(props: { readonly session: SessionView; readonly oneTap: OneTap; readonly onDone: () => void; readonly onGrip: () => void }) {
  const desk = useDesk();
  const words = useWords();
  const say = () => words().bench.dock;
  const last = () => props.session.trial ?? props.session.trials.at(-1) ?? null;
  const earlier = () => props.session.trials.filter(({ letter }) => letter !== props.session.trial?.letter).toReversed();
  const begin = () => {
    const letter = letterOf(props.session.trials.length);
    return last() === null ? words().bench.trial.begin(letter) : say().beginSame(letter, last()!.letter);
  };
  const resume = (trial: string) => void desk.say('trial', { kind: 'trial-resumed', session: props.session.id, trial });
  const leave = () => void desk.say('trial', { kind: 'trial-left', session: props.session.id });
  const done = (act: () => void) => () => { act(); props.onDone(); };
  return (
    <>
      <Answer corner="trial" />
      <button type="button" class="main" onClick={done(() => props.oneTap.beginSame())}>{begin()}</button>
      <ul class="sheet-trials">
        <For each={earlier()}>
          {(trial) => <li><button type="button" onClick={done(() => resume(trial.letter))}><b>{words().bench.trial.resume(trial.letter)}</b> <span class="quiet">{trialWords(trial, words())}</span></button></li>}
        </For>
      </ul>
      <div class="row">
        <button type="button" onClick={() => props.onGrip()}>{say().otherGrip}</button>
        <Show when={props.session.trial !== null}><button type="button" aria-label={say().leaveWhole} onClick={done(leave)}>{say().leave}</button></Show>
      </div>
    </>
  );
}
