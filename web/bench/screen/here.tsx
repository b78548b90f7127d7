import { SignOut } from '../../door/sign-out.tsx';
import { SIDES, THEMES } from '../../settings.ts';
import { theme } from '../../theme.ts';
import { useWords } from '../../words/use-words.tsx';
import { Choice } from '../fields/choice.tsx';
import { chooseHand, hand } from './hand.ts';

/** What this screen is like for whoever holds it; kept on this device. */
export function Here(props: { readonly onKeys: () => void }) {
  const words = useWords();
  const say = () => words().bench.dock;
  return (
    <section class="here" aria-labelledby="here-title">
      <h3 id="here-title">{say().here}</h3>
      <Choice legend={say().theme} options={['device', ...THEMES] as const} say={(one) => say().themes[one]} chosen={theme.chosen() ?? 'device'} onChoose={(one) => theme.choose(one === 'device' ? null : one)} />
      <Choice legend={say().hand} options={SIDES} say={(side) => say().hands[side]} chosen={hand()} onChoose={chooseHand} />
      <button type="button" onClick={() => props.onKeys()}>{words().keys.open}</button>
      <SignOut />
    </section>
  );
}
