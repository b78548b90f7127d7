import { createMemo, createSignal, Match, Show, Switch } from 'solid-js';
import { FASTBALLS_NEEDED } from '../../core/coaching/baseline.ts';
import type { BaselineView, MoundView, SessionView } from '../../core/facts/views.ts';
import type { Family } from '../../core/facts/vocabulary.ts';
import { reachRegion } from '../../core/flight/reach.ts';
import { seamEffectVisible } from '../../core/session/family-evidence.ts';
import { useDesk } from '../desk/desk.ts';
import { createOnItsWay } from '../desk/on-its-way.ts';
import { Observed } from '../observed/observed.tsx';
import { armToPlan } from '../reach/arm-to-plan.ts';
import { useWords } from '../words/use-words.tsx';
import { mayAdvise } from './care.ts';
import { evidenceOf, familyToOpen, type PlanEvidence } from './evidence.ts';
import { Families } from './families.tsx';
import { Fastball } from './fastball.tsx';
import { FirstFastballs } from './first-fastballs.tsx';
import { MedicalSentence, NotToday } from './no-advice.tsx';
import type { PlannedTarget } from './planned-target.ts';
import { StartingGrip } from './starting-grip.tsx';
import { Takes } from './takes.tsx';
import { Target } from './target.tsx';
import { proposalFor, zoneTakes } from './within-arm.ts';

/** The plan of one session: what is known of the fastball, and as much of a plan as the arm allows. */
export function SessionPlan(props: { readonly view: MoundView; readonly session: SessionView }) {
  const words = useWords();
  const evidence = createMemo(() => evidenceOf(props.view, props.session));
  const baseline = () => (props.session.baseline.kind === 'baseline' ? props.session.baseline : null);
  const forming = () => (props.session.baseline.kind === 'forming' ? props.session.baseline : { have: 0, need: FASTBALLS_NEEDED });
  const may = () => mayAdvise(props.session.armCare);
  const report = () => (props.session.armCare.kind === 'pain-reported' || props.session.armCare.kind === 'soreness-reported' ? props.session.armCare.report : null);
  const [chosen, setChosen] = createSignal<Family | null>(null);
  const family = () => chosen() ?? familyToOpen(evidence().advice, props.session);
  const rankable = () => baseline() !== null || evidence().noMovement !== null;
  return (
    <main class="plan-main">
      <Show when={props.session.closedAtMs !== null}><p class="not-today">{words().plan.frame.closed}</p></Show>
      <Show when={may() === 'plan'}><NotToday care={props.session.armCare} /></Show>
      <div class="plan-parts" data-advice={may()}>
        <Switch>
          <Match when={report()}>
            {(said) => (
              <>
                <MedicalSentence session={props.session} report={said()} />
                <Show when={rankable()}><Known session={props.session} baseline={baseline()} evidence={evidence()} view={props.view} /></Show>
              </>
            )}
          </Match>
          <Match when={!rankable() && may() === 'throw'}><FirstFastballs session={props.session} have={forming().have} need={forming().need} /></Match>
          <Match when={rankable()}>
            <div class="plan-column">
              <Known session={props.session} baseline={baseline()} evidence={evidence()} view={props.view} />
              <Families advice={evidence().advice} chosen={family()} onChoose={setChosen} mayThrow={may() === 'throw' && props.session.closedAtMs === null} />
              <Observed session={props.session} />
            </div>
            <Show when={baseline()} fallback={<Unplanned evidence={evidence()} session={props.session} family={family()} mayThrow={may() === 'throw'} />}>
              {(from) => <Planned view={props.view} session={props.session} baseline={from()} family={family()} chosen={chosen() !== null} mayThrow={may() === 'throw'} />}
            </Show>
          </Match>
        </Switch>
      </div>
    </main>
  );
}

function Known(props: { readonly view: MoundView; readonly session: SessionView; readonly baseline: BaselineView | null; readonly evidence: PlanEvidence }) {
  return <Fastball session={props.session} baseline={props.baseline} efficiency={props.evidence.efficiency} efficiencyInferred={props.evidence.efficiencyInferred} inferred={props.view.source?.sight === 'spin-only'} />;
}

/** Families and a grip, where movement is not known and so no target can be drawn. */
function Unplanned(props: { readonly evidence: PlanEvidence; readonly session: SessionView; readonly family: Family; readonly mayThrow: boolean }) {
  const words = useWords();
  const why = () => words().measures.missing[props.evidence.noMovement ?? 'not-sent'];
  return (
    <div class="plan-column">
      <p>{words().plan.frame.empty.noMovement(why())}</p>
      <StartingGrip session={props.session} family={props.family} mayThrow={props.mayThrow} />
    </div>
  );
}

/** Target, what it takes, and the grip. The zone under the finger is this screen's alone until it is set. */
function Planned(props: { readonly view: MoundView; readonly session: SessionView; readonly baseline: BaselineView; readonly family: Family; readonly chosen: boolean; readonly mayThrow: boolean }) {
  const desk = useDesk();
  const underway = createOnItsWay<PlannedTarget>(() => desk.view().place);
  const own = createMemo(() => armToPlan(props.view, props.session, props.baseline, props.family));
  const reach = createMemo(() => reachRegion(own().arm));
  const proposal = createMemo(() => proposalFor(props.family, props.session, props.baseline, reach()));
  const proposed = (): PlannedTarget => ({ zone: proposal().zone, band: proposal().speedBand, origin: 'proposed' });
  const [moved, setMoved] = createSignal<{ readonly family: Family; readonly planned: PlannedTarget | null } | null>(null);
  /** What is dragged belongs to the family it was dragged for; another family proposes its own. */
  const planned = (): PlannedTarget | null => {
    const hand = moved();
    if (hand !== null && hand.family === props.family) return hand.planned;
    return props.session.zone === null || props.chosen ? proposed() : null;
  };
  const shown = () => underway.value() ?? planned();
  const zone = () => shown()?.zone ?? props.session.zone ?? proposal().zone;
  const takes = createMemo(() => zoneTakes(own().arm, zone()));
  const set = async (target: PlannedTarget, reason: string) => {
    const { family } = props;
    const stored = await underway.send(target, desk.say('target', { kind: 'zone-set', session: props.session.id, zone: target.zone, speedBand: target.band, reason }));
    if (stored !== null) setMoved({ family, planned: null });
  };
  return (
    <>
      <Target session={props.session} baseline={props.baseline} family={props.family} reach={reach()} proposal={proposal()} planned={shown()} onSet={(target, reason) => void set(target, reason)}
        onPlanned={(target) => setMoved({ family: props.family, planned: target })} />
      <div class="plan-column plan-ways">
        <Takes takes={takes()} hand={props.session.athlete.hand} fastballMps={props.baseline.speedMps} visible={seamEffectVisible(props.view)} assumed={own().assumed} />
        <StartingGrip session={props.session} family={props.family} mayThrow={props.mayThrow} />
      </div>
    </>
  );
}
