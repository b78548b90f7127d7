import { createEffect, createSignal, on } from 'solid-js';
import type { SessionView } from '../../../core/facts/views.ts';
import { useWords } from '../../words/use-words.tsx';
import { useDesk } from '../../desk/desk.ts';
import { NumberField } from '../fields/number-field.tsx';
import { plannedCount, type PlannedCount } from './planned-count.ts';

/** How many throws are planned from the mound today, and the most of a day where a league or club is stricter than the guideline. */
export function DayPlan(props: { readonly session: SessionView }) {
  const desk = useDesk();
  const words = useWords();
  const say = () => words().bench.arm;
  const planned = () => props.session.plannedThrows;
  const ownMost = () => (props.session.armCare.dayMostFrom === 'own-rule' ? props.session.armCare.dayMost : null);
  const [throwsText, setThrowsText] = createSignal(textOf(planned()));
  const [mostText, setMostText] = createSignal(textOf(ownMost()));
  createEffect(on(planned, (count) => setThrowsText(textOf(count)), { defer: true }));
  createEffect(on(ownMost, (most) => setMostText(textOf(most)), { defer: true }));
  const wrong = (count: PlannedCount) => (count.kind === 'wrong' ? say().planWrong : null);
  const save = () => {
    const [throws, dayMost] = [plannedCount(throwsText()), plannedCount(mostText())];
    if (throws.kind === 'wrong' || dayMost.kind === 'wrong') return;
    if (throws.count === planned() && dayMost.count === ownMost()) return;
    void desk.say('arm', { kind: 'count-planned', session: props.session.id, throws: throws.count, dayMost: dayMost.count });
  };
  return (
    <div class="numbers">
      <NumberField label={say().planThrows} unit="" step={1} text={throwsText()} wrong={wrong(plannedCount(throwsText()))} onText={setThrowsText} onDone={save} />
      <NumberField label={say().planMost} hint={say().planMostHint} unit="" step={1} text={mostText()} wrong={wrong(plannedCount(mostText()))} onText={setMostText} onDone={save} />
    </div>
  );
}

function textOf(count: number | null): string {
  return count === null ? '' : String(count);
}
