import { Show } from 'solid-js';
import type { SessionView } from '../../../core/facts/views.ts';
import { useWords } from '../../words/use-words.tsx';
import { useDesk } from '../../desk/desk.ts';
import { Choice } from '../fields/choice.tsx';
import { goingTo, neighbours, passing } from './steps.ts';

/** What the athlete says of the grip here, and one tap on or back. The tool suggests; the coach says. */
export function Steps(props: { readonly session: SessionView }) {
  const desk = useDesk();
  const words = useWords();
  const say = () => words().bench.way;
  const stage = () => words().trade.stage;
  const ways = () => neighbours(props.session.stage);
  const advice = () => props.session.progress.advice?.kind ?? null;
  const work = () => props.session.progress.stages.find((one) => one.stage === props.session.stage)?.work ?? null;
  const comfort = () => work()?.comfort ?? null;
  const sayComfort = (comfortable: boolean) => void desk.say('way', { kind: 'comfort-said', session: props.session.id, from: 'bench', comfortable });
  return (
    <>
      <Show when={props.session.trial !== null}>
        <Choice legend={say().isComfortable} options={['yes', 'no'] as const} say={(key) => say().comfort[key]}
          chosen={comfort() === null ? null : comfort()!.comfortable ? 'yes' : 'no'} onChoose={(key) => sayComfort(key === 'yes')} />
      </Show>
      <Show when={adviceWords()}>{(sentence) => <p class="way-advice">{sentence()}</p>}</Show>
      <div class="row way-steps">
        <Show when={ways().before}>
          {(before) => <button type="button" classList={{ main: advice() === 'go-back' }} onClick={() => void desk.say('way', goingTo(props.session, before()))}>{say().back(stage()[before()])}</button>}
        </Show>
        <Show when={props.session.trial !== null}>
          <button type="button" classList={{ main: advice() === 'go-on' || advice() === 'last-stage' }} onClick={() => void desk.sayAll('way', passing(props.session))}>
            {passWords()}
          </button>
        </Show>
      </div>
    </>
  );

  /** Who passes a gate that is not met is told so before it is said. */
  function passWords(): string {
    const { after } = ways();
    const met = work()?.state.kind === 'met';
    if (after === null) return met ? say().passLast : say().passLastOpen;
    return (met ? say().pass : say().passOpen)(stage()[after]);
  }

  function adviceWords(): string | null {
    const { advice: given } = props.session.progress;
    switch (given?.kind) {
      case 'go-on':
      case 'go-back': return say().advice[given.kind](stage()[given.to]);
      case 'last-stage': return say().advice['last-stage'];
      default: return null;
    }
  }
}
