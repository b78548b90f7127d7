import { Show } from 'solid-js';
import { MOVEMENT_UNIT, movementIn, SPEED_UNIT, speedIn, numberText } from '../../words/numbers.ts';
import { useSpeech } from '../../words/use-words.tsx';
import { NumberField } from '../fields/number-field.tsx';
import { LIMITS_M, LIMITS_MPS, type ZoneDraft, type ZonePart } from './zone-draft.ts';

/** Zone and band in exact numbers. */
export function ZoneFields(props: { readonly draft: ZoneDraft; readonly wrong: ZonePart | null; readonly onDraft: (draft: ZoneDraft) => void }) {
  const speech = useSpeech();
  const say = () => speech().words.bench.target;
  const change = (part: Partial<ZoneDraft>) => props.onDraft({ ...props.draft, ...part });
  const limits = (part: keyof typeof LIMITS_M) => {
    const [low, high] = LIMITS_M[part].map((metres) => `${numberText(movementIn(speech().units, metres), 1, speech().language)} ${MOVEMENT_UNIT[speech().units]}`);
    return props.wrong === part ? say().outOf(low!, high!) : null;
  };
  const speedLimits = () => {
    const [low, high] = LIMITS_MPS.map((mps) => `${numberText(speedIn(speech().units, mps), 0, speech().language)} ${SPEED_UNIT[speech().units]}`);
    return say().outOf(low!, high!);
  };
  const unit = () => MOVEMENT_UNIT[speech().units];
  const speedUnit = () => SPEED_UNIT[speech().units];
  return (
    <>
      <div class="numbers">
        <NumberField label={say().below} hint={say().minusAbove} unit={unit()} step={0.5} text={props.draft.below} wrong={limits('below')} onText={(below) => change({ below })} />
        <NumberField label={say().armSide} hint={say().minusGlove} unit={unit()} step={0.5} text={props.draft.armSide} wrong={limits('armSide')} onText={(armSide) => change({ armSide })} />
        <NumberField label={say().height} unit={unit()} step={0.5} text={props.draft.height} wrong={limits('height')} onText={(height) => change({ height })} />
        <NumberField label={say().width} unit={unit()} step={0.5} text={props.draft.width} wrong={limits('width')} onText={(width) => change({ width })} />
      </div>
      <Show when={props.draft.band} fallback={<p class="quiet">{say().noBand}</p>}>
        {(band) => (
          <div class="numbers">
            <NumberField label={say().slowerFrom} unit={speedUnit()} step={0.5} text={band().least} wrong={props.wrong === 'least' ? speedLimits() : null} onText={(least) => change({ band: { ...band(), least } })} />
            <NumberField label={say().slowerTo} unit={speedUnit()} step={0.5} text={band().most} wrong={props.wrong === 'most' ? `${speedLimits()} ${say().bandOrder}` : null} onText={(most) => change({ band: { ...band(), most } })} />
          </div>
        )}
      </Show>
    </>
  );
}
