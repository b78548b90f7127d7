import { For } from 'solid-js';
import type { ArmArea } from '../../core/facts/arm-says.ts';
import type { ArmReport } from '../../core/facts/care-view.ts';
import type { SessionView } from '../../core/facts/views.ts';
import { reportWords } from '../words/arm-words.ts';
import { capital } from '../words/sentence.ts';
import { useSpeech } from '../words/use-words.tsx';
import { useVoice } from './voice.ts';

const AREAS = ['shoulder', 'elbow', 'forearm', 'other'] as const;

/** Pain was reported: this stands instead of every number until the coach has answered, and asks where it is. */
export function Pain(props: { readonly session: SessionView; readonly report: ArmReport }) {
  const voice = useVoice();
  const speech = useSpeech();
  const say = () => speech().words.glance;
  const report = (said: 'pain' | 'numb', areas: readonly ArmArea[]) => void voice.say({ kind: 'arm-reported', session: props.session.id, from: 'glance', said, areas: [...areas] });
  const has = (area: ArmArea) => props.report.areas.includes(area);
  const toggle = (area: ArmArea) => report(props.report.said === 'numb' ? 'numb' : 'pain', has(area) ? props.report.areas.filter((one) => one !== area) : [...props.report.areas, area]);
  const numb = () => props.report.said === 'numb';
  return (
    <article class="glance-pain" data-pain={props.report.said}>
      <p class="glance-lead">{say().stop}</p>
      <p class="glance-sentence">{say().stopWhy}</p>
      <div class="glance-asked three" role="group" aria-labelledby="glance-where">
        <h2 id="glance-where">{say().painWhere}</h2>
        <For each={AREAS}>{(area) => <button type="button" aria-pressed={has(area)} onClick={() => toggle(area)}>{capital(speech().words.arm.area[area])}</button>}</For>
        <button type="button" aria-pressed={numb()} onClick={() => report(numb() ? 'pain' : 'numb', props.report.areas)}>{say().numb}</button>
      </div>
      <p class="glance-unknown">{reportWords(props.report, props.session, speech())}</p>
      <p class="glance-unknown">{say().stopStays}</p>
    </article>
  );
}
