import { createResource, createSignal, Match, Show, Switch } from 'solid-js';
import type { Athlete } from '../../../core/facts/coach.ts';
import { yearNow } from '../../live/clock.ts';
import { freshId } from '../../live/fresh-id.ts';
import { answered, askForAthletes } from '../../live/recorded.ts';
import { useSpeech } from '../../words/use-words.tsx';
import { Answer } from '../../desk/answer.tsx';
import { ArmCare } from '../session/arm-care.tsx';
import { StageFields } from '../fields/stage-fields.tsx';
import { useDesk } from '../../desk/desk.ts';
import { athleteFrom, draftOf, emptyDraft, idOf, STAGE_AT_FIRST, type AthleteDraft } from './draft.ts';
import { AthleteData } from './athlete-data.tsx';
import { KnownAthletes } from './known-athletes.tsx';
import { NewAthlete } from './new-athlete.tsx';

/** Opens a session: who throws, and where. Everything else carries over or is said later. */
export function Opening(props: { readonly onBack: (() => void) | null; readonly onOpened: () => void }) {
  const desk = useDesk();
  const speech = useSpeech();
  const say = () => speech().words.bench.opening;
  const [athletes, { refetch }] = createResource(() => answered(askForAthletes()));
  const [chosen, setChosen] = createSignal<Athlete | null>(null);
  const [someoneNew, setSomeoneNew] = createSignal(false);
  const [dataOf, setDataOf] = createSignal<Athlete | null>(null);
  const [draft, setDraft] = createSignal(emptyDraft(speech().units, speech().language));
  const [stage, setStage] = createSignal(STAGE_AT_FIRST);
  const [missing, setMissing] = createSignal<'name' | 'hand' | 'birthYear' | 'athlete' | null>(null);

  const isNew = () => someoneNew() || (athletes.state === 'ready' && (athletes()?.length ?? 0) === 0);
  const name = () => (isNew() ? draft().name.trim() : chosen()?.name ?? '');
  const lacking = () => {
    const part = missing();
    return part === 'athlete' ? null : part;
  };

  const describe = (from: AthleteDraft) => {
    setDraft(from);
    setMissing(null);
    setSomeoneNew(true);
  };
  const open = async () => {
    const wanted = isNew() ? athleteFrom(draft(), freshId(), yearNow()) : chosen() === null ? { missing: 'athlete' as const } : { athlete: chosen()! };
    setMissing('missing' in wanted ? wanted.missing : null);
    if ('missing' in wanted) return;
    const { athlete } = wanted;
    const timeZone = Intl.DateTimeFormat().resolvedOptions().timeZone;
    const place = await desk.say('opening', { kind: 'session-opened', session: idOf(athlete.name, freshId()), athlete, timeZone, ...stage() });
    if (place !== null) props.onOpened();
  };

  const backFromData = (erased: boolean) => {
    setDataOf(null);
    if (!erased) return;
    setChosen(null);
    void refetch();
  };

  return (
    <Show when={dataOf() === null} fallback={<AthleteData athlete={dataOf()!} onBack={backFromData} />}>
      <form class="opening" noValidate onSubmit={(event) => { event.preventDefault(); void open(); }}>
        <h2>{say().who}</h2>
        <Switch>
          <Match when={isNew()}>
            <NewAthlete draft={draft()} missing={lacking()} onDraft={setDraft} />
            <Show when={(athletes()?.length ?? 0) > 0}><button type="button" class="plain" onClick={() => setSomeoneNew(false)}>{say().backToKnown}</button></Show>
          </Match>
          <Match when={athletes()}>
            {(known) => <KnownAthletes athletes={known()} chosen={chosen()?.id ?? null} onChoose={setChosen} />}
          </Match>
          <Match when={athletes.state === 'ready'}>
            <p>{say().athletesUnknown} <button type="button" class="plain" onClick={() => void refetch()}>{say().again}</button></p>
          </Match>
        </Switch>
        <Show when={!isNew()}>
          <div class="row more">
            <button type="button" class="plain" onClick={() => describe(emptyDraft(speech().units, speech().language))}>{say().someone}</button>
            <a class="save" href={`/import?mound=${encodeURIComponent(desk.mound)}`}>{speech().words.start.bringIn}</a>
            <Show when={chosen()}>{(athlete) => <>
              <button type="button" class="plain" onClick={() => describe(draftOf(athlete()))}>{say().correct(athlete().name)}</button>
              <button type="button" class="plain" onClick={() => setDataOf(athlete())}>{speech().words.bench.athleteData.open(athlete().name)}</button>
            </>}</Show>
          </div>
        </Show>
        <StageFields draft={stage()} units={isNew() ? draft().units : chosen()?.units ?? speech().units} onDraft={setStage} />
        <div class="opening-end">
          <Answer corner="opening" />
          <Show when={missing() === 'athlete'}><p class="wrong" role="alert">{say().needAthlete}</p></Show>
          <div class="row">
            <button type="submit" class="main" disabled={athletes.state === 'pending'}>{name() === '' ? say().openNobody : say().open(name())}</button>
            <Show when={props.onBack}>{(back) => <button type="button" onClick={() => back()()}>{say().back}</button>}</Show>
          </div>
        </div>
        <ArmCare />
      </form>
    </Show>
  );
}
