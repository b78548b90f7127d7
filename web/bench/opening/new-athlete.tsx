import { HANDS } from '../../../core/facts/vocabulary.ts';
import { yearNow } from '../../live/clock.ts';
import { useWords } from '../../words/use-words.tsx';
import { Choice } from '../fields/choice.tsx';
import { NumberField } from '../fields/number-field.tsx';
import { TextField } from '../../desk/text-field.tsx';
import { FIRST_BIRTH_YEAR, lastBirthYear, type AthleteDraft } from './draft.ts';

/** Somebody who has not thrown here before. Of a birthday only the year is asked. */
export function NewAthlete(props: { readonly draft: AthleteDraft; readonly missing: 'name' | 'hand' | 'birthYear' | null; readonly onDraft: (draft: AthleteDraft) => void }) {
  const words = useWords();
  const say = () => words().bench.opening;
  const change = (part: Partial<AthleteDraft>) => props.onDraft({ ...props.draft, ...part });
  return (
    <section class="new-athlete" aria-label={say().someone}>
      <TextField label={say().name} text={props.draft.name} longest={60} wrong={props.missing === 'name' ? say().needName : null} onText={(name) => change({ name })} />
      <Choice legend={say().hand} options={HANDS} say={(hand) => words().trade.hand[hand]} chosen={props.draft.hand} wrong={props.missing === 'hand' ? say().needHand : null} onChoose={(hand) => change({ hand })} />
      <NumberField label={say().birthYear} hint={say().birthYearWhy} unit="" step={1} text={props.draft.birthYear}
        wrong={props.missing === 'birthYear' ? say().needBirthYear(String(FIRST_BIRTH_YEAR), String(lastBirthYear(yearNow()))) : null} onText={(birthYear) => change({ birthYear })} />
      <Choice legend={say().mainFastball} options={['four-seam', 'sinker', 'cutter'] as const} say={(intent) => words().trade.intent[intent]} chosen={props.draft.mainFastball} onChoose={(mainFastball) => change({ mainFastball })} />
      <Choice legend={say().units} options={['imperial', 'metric'] as const} say={(units) => say().unit[units]} chosen={props.draft.units} onChoose={(units) => change({ units })} />
      <Choice legend={say().language} options={['en', 'es'] as const} say={(language) => say().languages[language]} chosen={props.draft.language} onChoose={(language) => change({ language })} />
    </section>
  );
}
