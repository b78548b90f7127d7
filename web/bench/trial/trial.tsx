import { createEffect, createMemo, createSignal, on, Show } from 'solid-js';
import { mayThrow } from '../../../core/coaching/arm-care.ts';
import { PLAIN_GRIP } from '../../../core/coaching/starting-grip.ts';
import { INTENTS } from '../../../core/facts/vocabulary.ts';
import type { SessionView } from '../../../core/facts/views.ts';
import { letterOf } from '../../../core/session/letter.ts';
import { useWords } from '../../words/use-words.tsx';
import { Answer } from '../../desk/answer.tsx';
import { useArm } from '../arm/arm-state.ts';
import { useDesk } from '../../desk/desk.ts';
import { Choice } from '../fields/choice.tsx';
import { TextField } from '../../desk/text-field.tsx';
import { begun, draftOf, draftToStart, familiesOf, type TrialDraft } from './draft.ts';
import { FoldedGrip } from './grip-fields.tsx';
import { LastTime } from './last-time.tsx';
import { Observed } from '../../observed/observed.tsx';
import { NextDay } from '../../next-day/next-day.tsx';
import { TrialList } from './trial-list.tsx';

/** Says grip and cue and begins a trial with them, or goes back to an earlier one. */
export function TrialPart(props: { readonly session: SessionView }) {
  const desk = useDesk();
  const arm = useArm();
  const words = useWords();
  const say = () => words().bench.trial;
  const [draft, setDraft] = createSignal<TrialDraft>(draftToStart(props.session));
  // Another trial begun or resumed, here or at another tablet, is what the next one carries over from.
  const current = createMemo(() => `${props.session.id} ${props.session.trial?.letter ?? ''}`);
  createEffect(on(current, () => setDraft(draftToStart(props.session)), { defer: true }));
  /** Whether the grip was begun here, from nothing. */
  const [saying, setSaying] = createSignal(false);
  const change = (part: Partial<TrialDraft>) => setDraft((before) => ({ ...before, ...part }));
  const begin = () => void desk.say('trial', begun(props.session.id, draft()));
  const mayGo = () => {
    const state = arm();
    return state !== null && mayThrow(state.care);
  };
  const intents = () => INTENTS.filter((intent) => intent !== props.session.athlete.mainFastball || intent === draft().intent);

  return (
    <section class="part trial" aria-labelledby="trial-title">
      <h2 id="trial-title">{say().title}</h2>
      <NextDay session={props.session} mayThrow={mayGo()} />
      <TrialList session={props.session} />
      <Observed session={props.session} />
      <Show when={arm()?.pain === null} fallback={<p>{words().bench.arm.noThrow}</p>}><form class="trial-form" onSubmit={(event) => { event.preventDefault(); begin(); }}>
        <div class="row">
          <Show when={props.session.trials.at(-1)} fallback={<LastTime session={props.session} onRepeat={(last) => setDraft(draftOf(last))} />}>
            {(last) => <Show when={!same(draft(), draftOf(last()))}><button type="button" onClick={() => setDraft(draftOf(last()))}>{say().repeat(last().letter)}</button></Show>}
          </Show>
        </div>
        <Choice legend={say().forIntent} options={intents()} say={(intent) => words().trade.intent[intent]} chosen={draft().intent} onChoose={(intent) => change({ intent })} />
        <Show when={familiesOf(draft().intent).length > 1}>
          <Choice legend={say().family} options={['none', ...familiesOf(draft().intent)] as const} say={(family) => (family === 'none' ? say().familyUnsaid : words().plan.families.family[family])}
            chosen={draft().family ?? 'none'} onChoose={(family) => change({ family: family === 'none' ? null : family })} />
        </Show>
        <Show when={draft().grip} fallback={<button type="button" onClick={() => { setSaying(true); change({ grip: PLAIN_GRIP }); }}>{say().withGrip}</button>}>
          {(grip) => <FoldedGrip open={saying()} grip={grip()} hand={props.session.athlete.hand} onGrip={(next) => change({ grip: next })} />}
        </Show>
        <TextField label={say().cueWords} text={draft().cueWords} longest={80} onText={(cueWords) => change({ cueWords })} />
        <Show when={draft().cueWords.trim() !== ''}>
          <Choice legend={say().focus} options={['none', 'external', 'internal'] as const} say={(focus) => say().focuses[focus]} chosen={draft().focus ?? 'none'} onChoose={(focus) => change({ focus: focus === 'none' ? null : focus })} />
        </Show>
        <div class="begin">
          <Answer corner="trial" />
          <button type="submit" class="main">{say().begin(letterOf(props.session.trials.length))}</button>
        </div>
      </form></Show>
    </section>
  );
}

/** What carries over needs no button to carry it over. */
function same(a: TrialDraft, b: TrialDraft): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}
