import { createEffect, createSignal, on } from 'solid-js';
import type { Gate } from '../../../core/facts/plan-says.ts';
import type { SessionView } from '../../../core/facts/views.ts';
import type { Stage } from '../../../core/facts/vocabulary.ts';
import { useWords } from '../../words/use-words.tsx';
import { useDesk } from '../../desk/desk.ts';
import { Choice } from '../fields/choice.tsx';
import { NumberField } from '../fields/number-field.tsx';
import { fieldText, typedNumber } from '../fields/typed-number.ts';
import { typedShare } from './steps.ts';

/** What the gate of one stage asks for: the athlete's word, and an on-target share that must be shown. */
export function GateFields(props: { readonly session: SessionView; readonly stage: Stage; readonly gate: Gate }) {
  const desk = useDesk();
  const words = useWords();
  const say = () => words().bench.way;
  const above = () => (props.gate.shareAbove === null ? '' : fieldText(props.gate.shareAbove * 100, 1));
  const [text, setText] = createSignal(above());
  createEffect(on(above, (now) => setText(now), { defer: true }));
  const typed = () => typedShare(typedNumber(text()), text().trim() === '');
  const set = (gate: Gate) => void desk.say('way', { kind: 'gate-set', session: props.session.id, stage: props.stage, gate });
  const saveShare = () => {
    const share = typed();
    if (share.kind === 'share' && text() !== above()) set({ ...props.gate, shareAbove: share.above });
  };
  return (
    <details class="gate-fields">
      <summary>{say().settings(words().trade.stage[props.stage])}</summary>
      <Choice legend={say().asksComfort} options={['yes', 'no'] as const} say={(key) => say().asks[key]} chosen={props.gate.comfort ? 'yes' : 'no'} onChoose={(key) => set({ ...props.gate, comfort: key === 'yes' })} />
      <NumberField label={say().asksShare} hint={say().asksShareHint} unit="%" step={5} text={text()} wrong={typed().kind === 'wrong' ? say().asksShareWrong : null} onText={setText} onDone={saveShare} />
    </details>
  );
}
