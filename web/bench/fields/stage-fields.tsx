import { createSignal } from 'solid-js';
import type { Athlete } from '../../../core/facts/coach.ts';
import { DEFAULT_DISTANCE_M, EFFORTS, STAGES, type Stage } from '../../../core/facts/vocabulary.ts';
import { feetToM, mToFeet } from '../../../core/units/convert.ts';
import { distanceText } from '../../words/numbers.ts';
import { speechIn } from '../../words/speech.ts';
import { useSpeech } from '../../words/use-words.tsx';
import type { StageDraft } from '../opening/draft.ts';
import { Choice } from './choice.tsx';
import { NumberField } from './number-field.tsx';
import { fieldText, typedNumber } from './typed-number.ts';

const SHORTEST_M = 5;
const LONGEST_M = 120;

/** Where it is thrown, from how far and how hard. A stage brings its usual distance along. */
export function StageFields(props: { readonly draft: StageDraft; readonly units: Athlete['units']; readonly onDraft: (draft: StageDraft) => void }) {
  const speech = useSpeech();
  const trade = () => speech().words.trade;
  const say = () => speech().words.bench.opening;
  const shown = () => (props.units === 'imperial' ? fieldText(mToFeet(props.draft.distanceM), 1) : fieldText(props.draft.distanceM, 2));
  /** While a distance is being typed, nothing that arrives rewrites it. */
  const [typed, setTyped] = createSignal<string | null>(null);
  const text = () => typed() ?? shown();
  const typedM = () => {
    const value = typedNumber(text());
    const metres = value === null ? null : props.units === 'imperial' ? feetToM(value) : value;
    return metres !== null && metres >= SHORTEST_M && metres <= LONGEST_M ? metres : null;
  };
  const bound = (metres: number) => distanceText(metres, speechIn(speech().language, props.units), 0);
  const settle = () => {
    const metres = typedM();
    if (metres === null) return;
    if (text() !== shown()) props.onDraft({ ...props.draft, distanceM: metres });
    setTyped(null);
  };
  const setStage = (stage: Stage) => {
    setTyped(null);
    props.onDraft({ ...props.draft, stage, distanceM: DEFAULT_DISTANCE_M[stage] });
  };
  return (
    <div class="stage-fields">
      <Choice legend={say().stage} options={STAGES} say={(stage) => trade().stage[stage]} chosen={props.draft.stage} onChoose={setStage} />
      <Choice legend={say().effort} options={EFFORTS} say={(effort) => trade().effort[effort]} chosen={props.draft.effort} onChoose={(effort) => props.onDraft({ ...props.draft, effort })} />
      <NumberField label={say().distance} unit={props.units === 'imperial' ? 'ft' : 'm'} step={props.units === 'imperial' ? 0.5 : 0.1} text={text()}
        wrong={typedM() === null ? say().needDistance(bound(SHORTEST_M), bound(LONGEST_M)) : null} onText={setTyped} onDone={settle} />
    </div>
  );
}
