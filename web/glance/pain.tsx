import { createEffect, For, on } from 'solid-js';
import type { ArmArea } from '../../core/facts/arm-says.ts';
import type { ArmReport } from '../../core/facts/care-view.ts';
import type { SessionView } from '../../core/facts/views.ts';
import { reportWords } from '../words/arm-words.ts';
import { capital } from '../words/sentence.ts';
import { useSpeech } from '../words/use-words.tsx';
import { useVoice } from './voice.ts';

type Reported = Pick<ArmReport, 'said' | 'areas'>;

const AREAS = ['shoulder', 'elbow', 'forearm', 'other'] as const;

/** Pain was reported: this stands instead of every number until the coach has answered, and asks where it is. */
export function Pain(props: { readonly session: SessionView; readonly report: ArmReport }) {
  const voice = useVoice();
  const speech = useSpeech();
  const say = () => speech().words.glance;
  /** What was tapped and has not come back yet: the next tap adds to it, so that none takes another one back where the network is slow. */
  let tapped: Reported | null = null;
  let waiting = 0;
  createEffect(on(() => props.report, () => {
    if (waiting === 0) tapped = null;
  }));
  const report = async ({ said, areas }: Reported) => {
    tapped = { said, areas };
    waiting += 1;
    await voice.say({ kind: 'arm-reported', session: props.session.id, from: 'glance', said, areas: [...areas] });
    waiting -= 1;
    if (voice.failed()) tapped = null;
  };
  const toggle = (area: ArmArea) => {
    const { said, areas } = tapped ?? props.report;
    void report({ said: said === 'numb' ? 'numb' : 'pain', areas: areas.includes(area) ? areas.filter((one) => one !== area) : [...areas, area] });
  };
  const toggleNumb = () => {
    const { said, areas } = tapped ?? props.report;
    void report({ said: said === 'numb' ? 'pain' : 'numb', areas });
  };
  return (
    <article class="glance-pain" data-pain={props.report.said}>
      <p class="glance-lead">{say().stop}</p>
      <p class="glance-sentence">{say().stopWhy}</p>
      <div class="glance-asked three" role="group" aria-labelledby="glance-where">
        <h2 id="glance-where">{say().painWhere}</h2>
        <For each={AREAS}>{(area) => <button type="button" aria-pressed={props.report.areas.includes(area)} onClick={() => toggle(area)}>{capital(speech().words.arm.area[area])}</button>}</For>
        <button type="button" aria-pressed={props.report.said === 'numb'} onClick={toggleNumb}>{say().numb}</button>
      </div>
      <p class="glance-unknown">{reportWords(props.report, props.session, speech())}</p>
      <p class="glance-unknown">{say().stopStays}</p>
    </article>
  );
}
