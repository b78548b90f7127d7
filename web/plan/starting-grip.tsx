import { Show } from 'solid-js';
import { FAMILY_INTENT, STARTING_GRIP } from '../../core/coaching/starting-grip.ts';
import type { SessionView } from '../../core/facts/views.ts';
import type { Family } from '../../core/facts/vocabulary.ts';
import { letterOf } from '../../core/session/letter.ts';
import { Answer } from '../desk/answer.tsx';
import { useDesk } from '../desk/desk.ts';
import { NextDay } from '../next-day/next-day.tsx';
import { GripBall } from '../grip/grip-ball.tsx';
import { gripWords } from '../grip/grip-words.ts';
import { useWords } from '../words/use-words.tsx';

/** The grip that a family's trials begin with, and the trial itself where throwing may be advised. */
export function StartingGrip(props: { readonly session: SessionView; readonly family: Family; readonly mayThrow: boolean }) {
  const desk = useDesk();
  const words = useWords();
  const say = () => words().plan.target;
  const grip = () => STARTING_GRIP[props.family];
  const begun = () => {
    const { trial } = props.session;
    return trial !== null && trial.family === props.family && JSON.stringify(trial.grip) === JSON.stringify(grip()) ? trial : null;
  };
  const begin = () => void desk.say('trial', { kind: 'trial-begun', session: props.session.id, intent: FAMILY_INTENT[props.family], grip: grip(), cue: null, family: props.family });
  return (
    <section class="plan-grip" aria-labelledby="grip-title">
      <h2 id="grip-title">{say().grip}</h2>
      <div class="grip-shown">
        <GripBall grip={grip()} hand={props.session.athlete.hand} />
        <div>
          <p class="grip-said">{gripWords(grip(), words())}</p>
          <p class="quiet small">{say().gripWhy} {say().learn}</p>
        </div>
      </div>
      <Show when={props.mayThrow && props.session.closedAtMs === null}>
        <Show when={begun()} fallback={<button type="button" class="main" onClick={begin}>{say().begin(letterOf(props.session.trials.length))}</button>}>
          {(trial) => <p class="done">{say().begun(trial().letter)}</p>}
        </Show>
        <Answer corner="trial" />
      </Show>
      <NextDay session={props.session} mayThrow={props.mayThrow} />
    </section>
  );
}
