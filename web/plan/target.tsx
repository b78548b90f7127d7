import { createSignal, For, Show } from 'solid-js';
import type { ProposedTarget } from '../../core/coaching/propose-target.ts';
import type { BaselineView, SessionView } from '../../core/facts/views.ts';
import type { Family } from '../../core/facts/vocabulary.ts';
import type { ReachRegion } from '../../core/flight/reach.ts';
import { Aims } from '../aims/aims.tsx';
import { Answer } from '../desk/answer.tsx';
import { useDesk } from '../desk/desk.ts';
import { TextField } from '../desk/text-field.tsx';
import { bandWords, centreWords } from '../words/target-words.ts';
import { useSpeech } from '../words/use-words.tsx';
import { LONGEST_REASON, reasonFor, type PlannedTarget } from './planned-target.ts';
import { ReachPlane } from './reach-plane.tsx';
import { targetReasons } from './takes-words.ts';

/** The separation plane with what the arm reaches, the planned target on it, and the button that sets it. */
export function Target(props: {
  readonly session: SessionView;
  readonly baseline: BaselineView;
  readonly family: Family;
  readonly reach: ReachRegion | null;
  readonly proposal: ProposedTarget;
  /** Null while what is shown is the target that is set. */
  readonly planned: PlannedTarget | null;
  readonly onPlanned: (planned: PlannedTarget | null) => void;
  readonly onSet: (planned: PlannedTarget, reason: string) => void;
}) {
  const desk = useDesk();
  const speech = useSpeech();
  const say = () => speech().words.plan.target;
  const [typed, setTyped] = createSignal<string | null>(null);
  const open = () => props.session.closedAtMs === null;
  const zone = () => props.planned?.zone ?? props.session.zone;
  const band = () => (props.planned === null ? props.session.speedBand : props.planned.band);
  const name = () => speech().words.plan.families.family[props.family];
  const standing = () => (props.planned === null ? say().isSet : props.planned.origin === 'proposed' ? say().proposed(name()) : say().moved);
  const set = (planned: PlannedTarget) => {
    const reason = typed()?.trim() ?? '';
    props.onSet(planned, reason === '' ? reasonFor(planned, props.family, speech()) : reason);
    setTyped(null);
  };
  return (
    <section class="plan-target" aria-labelledby="target-title">
      <h2 id="target-title">{say().title}</h2>
      <ReachPlane session={props.session} zone={zone()} reach={props.reach} onZone={open() ? (moved) => props.onPlanned({ zone: moved, band: band(), origin: 'moved' }) : null} />
      <p class="target-said" data-planned={props.planned?.origin ?? 'set'}>
        <Show when={zone()}>{(at) => <b>{say().centre(centreWords(at(), speech()))}, {bandWords(band(), speech())}. </b>}</Show>
        {standing()}
      </p>
      <Show when={open() && props.planned}>
        {(planned) => (
          <form class="set-target" onSubmit={(event) => { event.preventDefault(); set(planned()); }}>
            <TextField label={say().reason} text={typed() ?? reasonFor(planned(), props.family, speech())} longest={LONGEST_REASON} onText={setTyped} />
            <div class="row">
              <button type="submit" class="main">{say().set}</button>
              <Show when={props.session.zone !== null}><button type="button" onClick={() => { setTyped(null); props.onPlanned(null); }}>{say().keep}</button></Show>
            </div>
          </form>
        )}
      </Show>
      <Answer corner="target" />
      <Show when={zone()}>{(at) => <Aims view={desk.view()} session={props.session} baseline={props.baseline} family={props.family} zone={at()} />}</Show>
      <Show when={props.planned?.origin === 'proposed'}>
        <h3>{say().why}</h3>
        <ul class="sentences quiet small"><For each={targetReasons(props.proposal, speech())}>{(reason) => <li>{reason}</li>}</For></ul>
      </Show>
    </section>
  );
}
