import { Show } from 'solid-js';
import type { SessionView } from '../../../core/facts/views.ts';
import { hourText } from '../../words/moments.ts';
import { useSpeech } from '../../words/use-words.tsx';
import { Answer } from '../../desk/answer.tsx';
import { useDesk } from '../../desk/desk.ts';
import { createOnItsWay } from '../../desk/on-its-way.ts';
import { AskTwice } from '../fields/ask-twice.tsx';
import { Here } from '../screen/here.tsx';
import { StageFields } from '../fields/stage-fields.tsx';
import type { StageDraft } from '../opening/draft.ts';
import { DecisionChoice } from './decision.tsx';
import { FeedbackChoice } from './feedback.tsx';
import { Way } from '../way/way.tsx';
import { Leads } from './leads.tsx';
import { Notes } from './notes.tsx';

/** The session: its stage, its notes, its end, and the door to another one. */
export function SessionPart(props: { readonly session: SessionView; readonly onAnother: () => void; readonly onKeys: () => void }) {
  const desk = useDesk();
  const speech = useSpeech();
  const say = () => speech().words.bench.session;
  const underway = createOnItsWay<StageDraft>(() => desk.view().place);
  const stage = (): StageDraft => underway.value() ?? { stage: props.session.stage, distanceM: props.session.distanceM, effort: props.session.effort };
  const setStage = (draft: StageDraft) => void underway.send(draft, desk.say('session', { kind: 'stage-set', session: props.session.id, ...draft }));
  const hour = (atMs: number) => hourText(atMs, props.session.timeZone, speech().language);
  const openWords = () => (props.session.closedAtMs === null ? say().since(hour(props.session.openedAtMs)) : say().until(hour(props.session.openedAtMs), hour(props.session.closedAtMs)));
  return (
    <section class="part session" aria-labelledby="session-title">
      <h2 id="session-title">{speech().words.bench.frame.place.session}</h2>
      <p class="quiet">
        {props.session.athlete.name}, {openWords()}
      </p>
      <Show when={props.session.closedAtMs === null}>
        <h3 class="unseen">{say().stageNow}</h3>
        <StageFields draft={stage()} units={speech().units} onDraft={setStage} />
        <Answer corner="session" />
      </Show>
      <Way session={props.session} />
      <Show when={props.session.closedAtMs === null}>
        <FeedbackChoice session={props.session} />
        <DecisionChoice session={props.session} />
      </Show>
      <Notes session={props.session} />
      <Here onKeys={props.onKeys} />
      <Leads session={props.session} />
      <div class="session-end">
        <Show when={props.session.closedAtMs === null}>
          <button type="button" onClick={() => props.onAnother()}>{say().another}</button>
          <AskTwice label={say().close} question={say().closeAsk(props.session.athlete.name)} yes={say().closeYes}
            onYes={() => void desk.say('closing', { kind: 'session-closed', session: props.session.id })} />
        </Show>
        <Answer corner="closing" />
      </div>
    </section>
  );
}
