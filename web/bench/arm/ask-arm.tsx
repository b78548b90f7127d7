import { createSignal, For, Show } from 'solid-js';
import type { ArmArea, ArmSaid } from '../../../core/facts/arm-says.ts';
import type { SessionView } from '../../../core/facts/views.ts';
import { reportWords } from '../../words/arm-words.ts';
import { useSpeech } from '../../words/use-words.tsx';
import { Answer } from '../../desk/answer.tsx';
import { useDesk } from '../../desk/desk.ts';
import { Choice } from '../fields/choice.tsx';

const SAID = ['nothing', 'tired', 'sore', 'pain', 'numb'] as const;
const AREAS = ['shoulder', 'elbow', 'forearm', 'hand', 'back', 'other'] as const;

/** The coach asks how the arm feels and keeps what was said. */
export function AskArm(props: { readonly session: SessionView }) {
  const desk = useDesk();
  const speech = useSpeech();
  const say = () => speech().words.bench.arm;
  const [said, setSaid] = createSignal<ArmSaid | null>(null);
  const [areas, setAreas] = createSignal<readonly ArmArea[]>([]);
  const toggle = (area: ArmArea) => setAreas((before) => (before.includes(area) ? before.filter((one) => one !== area) : [...before, area]));
  const hurts = () => said() !== null && said() !== 'nothing';
  const save = async () => {
    const now = said();
    if (now === null) return;
    const place = await desk.say('arm', { kind: 'arm-reported', session: props.session.id, from: 'bench', said: now, areas: hurts() ? [...areas()] : [] });
    if (place === null) return;
    setSaid(null);
    setAreas([]);
  };
  return (
    <form class="arm-ask" onSubmit={(event) => { event.preventDefault(); void save(); }}>
      <Choice legend={say().ask} options={SAID} say={(one) => speech().words.arm.said[one]} chosen={said()} onChoose={setSaid} />
      <Show when={hurts()}>
        <div class="row" role="group" aria-label={say().areas}>
          <For each={AREAS}>{(area) => <button type="button" aria-pressed={areas().includes(area)} onClick={() => toggle(area)}>{speech().words.arm.area[area]}</button>}</For>
        </div>
      </Show>
      <Answer corner="arm" />
      <button type="submit" disabled={said() === null}>{say().report}</button>
      <Show when={props.session.armTalk.lastReport}>{(report) => <p class="quiet">{reportWords(report(), props.session, speech())}</p>}</Show>
    </form>
  );
}
