import { createEffect, createMemo, createSignal, on, Show } from 'solid-js';
import type { SpeedBand, TargetZone } from '../../../core/facts/coach.ts';
import type { SessionView } from '../../../core/facts/views.ts';
import { bandWords, centreWords } from '../../words/target-words.ts';
import { useSpeech } from '../../words/use-words.tsx';
import { familyAimedAt } from '../../aims/family-aimed-at.ts';
import { Aims } from '../../aims/aims.tsx';
import { Answer } from '../../desk/answer.tsx';
import { useDesk } from '../../desk/desk.ts';
import { TextField } from '../../desk/text-field.tsx';
import { createOnItsWay } from '../../desk/on-its-way.ts';
import { Baseline } from './baseline.tsx';
import { TakeAway } from './take-away.tsx';
import { ZonePlane } from './zone-plane.tsx';
import { ZoneFields } from './zone-fields.tsx';
import { draftOf, STARTING_BAND, STARTING_ZONE, sameTarget, zoneFrom, type ZoneDraft, type ZonePart } from './zone-draft.ts';

/** The target: dragged on the plane, or set in numbers. What is drawn is the server's, but for a zone under the finger or on its way. */
export function TargetPart(props: { readonly session: SessionView }) {
  const desk = useDesk();
  const speech = useSpeech();
  const say = () => speech().words.bench.target;
  const underway = createOnItsWay<TargetZone>(() => desk.view().place);
  const [typed, setTyped] = createSignal<ZoneDraft | null>(null);
  const [wrong, setWrong] = createSignal<ZonePart | null>(null);
  const [reason, setReason] = createSignal('');
  const zone = () => underway.value() ?? props.session.zone;
  const draft = () => typed() ?? draftOf(zone() ?? STARTING_ZONE, props.session.speedBand, speech().units);
  const letGoOfDraft = () => { setTyped(null); setWrong(null); setReason(''); };
  /** Set here: the newest that the view has held, and what is still on its way. */
  let sent: readonly { readonly zone: TargetZone; readonly band: SpeedBand | null }[] = [];
  const said = createMemo(() => JSON.stringify([props.session.id, props.session.zone, props.session.speedBand]));
  // A target set at another tablet replaces whatever was half typed here; the answer to what was set here does not, however many are on their way.
  createEffect(on(said, () => {
    const held = sent.findIndex((target) => sameTarget(target, props.session));
    if (held < 0) letGoOfDraft();
    else sent = sent.slice(held);
  }, { defer: true }));
  const whose = createMemo(() => props.session.id);
  createEffect(on(whose, () => { sent = []; letGoOfDraft(); }, { defer: true }));

  const set = async (next: TargetZone, speedBand: SpeedBand | null) => {
    const why = reason().trim();
    const draftThen = typed();
    sent = [...sent, { zone: next, band: speedBand }];
    const place = await underway.send(next, desk.say('target', { kind: 'zone-set', session: props.session.id, zone: next, speedBand, reason: why === '' ? null : why }));
    if (place !== null && typed() === draftThen) letGoOfDraft();
  };
  const setTypedTarget = () => {
    const next = zoneFrom(draft(), speech().units);
    setWrong('wrong' in next ? next.wrong : null);
    if ('zone' in next) void set(next.zone, next.band);
  };
  const open = () => props.session.closedAtMs === null;
  /** In a closed session the target can be read, not set. */
  const standingTarget = () => {
    const { zone: stands, speedBand } = props.session;
    return stands === null ? say().noZone : `${speech().words.plan.target.centre(centreWords(stands, speech()))}, ${bandWords(speedBand, speech())}.`;
  };
  /** What an aim rests on; null while target, fastball or family is missing. */
  const aimed = () => {
    const { baseline } = props.session;
    const [at, family] = [zone(), familyAimedAt(props.session)];
    return at === null || family === null || baseline.kind !== 'baseline' ? null : { zone: at, family, baseline };
  };
  const toggleBand = () => setTyped({ ...draft(), band: draft().band === null ? draftOf(STARTING_ZONE, STARTING_BAND, speech().units).band : null });

  return (
    <section class="part target" aria-labelledby="target-title">
      <h2 id="target-title">{say().title}</h2>
      <ZonePlane session={props.session} zone={zone()} onZone={open() ? (next, letGo) => (letGo ? void set(next, props.session.speedBand) : underway.hold(next)) : null} />
      <Answer corner="target" />
      <Show when={open()} fallback={<p>{standingTarget()}</p>}><Show when={props.session.zone !== null} fallback={
        <div class="propose">
          <p>{say().noZone} <span class="quiet">{say().proposeWhy}</span></p>
          <button type="button" class="main" onClick={() => void set(STARTING_ZONE, STARTING_BAND)}>{say().propose}</button>
        </div>
      }>
        <p class="quiet">{say().dragHow}</p>
        <form class="zone-form" noValidate onSubmit={(event) => { event.preventDefault(); setTypedTarget(); }}>
          <ZoneFields draft={draft()} wrong={wrong()} onDraft={setTyped} />
          <button type="button" class="plain" onClick={toggleBand}>{draft().band === null ? say().addBand : say().dropBand}</button>
          <Show when={typed() !== null}>
            <TextField label={say().reason} text={reason()} longest={200} onText={setReason} />
            <div class="row">
              <button type="submit" class="main">{say().save}</button>
              <button type="button" onClick={letGoOfDraft}>{say().undo}</button>
            </div>
          </Show>
        </form>
        <TakeAway session={props.session} />
      </Show></Show>
      <Show when={aimed()}>{(known) => <Aims view={desk.view()} session={props.session} {...known()} />}</Show>
      <Baseline session={props.session} />
    </section>
  );
}
