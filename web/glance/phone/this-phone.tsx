import { For, Show } from 'solid-js';
import type { Awake } from '../../live/keep-awake.ts';
import { useWords } from '../../words/use-words.tsx';
import type { AloudState } from '../aloud/use-aloud.ts';
import { isInstalled } from '../kept/installable.ts';

const ABLE = ['awake', 'offline', 'home', 'aloud'] as const;
type Able = (typeof ABLE)[number];

/** What this phone can do for Glance and what not, behind one small line; over plain HTTP browsers hold most of it back. */
export function ThisPhone(props: { readonly awake: Awake; readonly aloud: AloudState }) {
  const words = useWords();
  const say = () => words().glance.phone;
  const has = (able: Able): boolean => {
    switch (able) {
      case 'awake': return props.awake === 'awake' || props.awake === 'not-asked';
      case 'offline': return 'serviceWorker' in navigator;
      case 'home': return isSecureContext;
      case 'aloud': return props.aloud !== 'cannot' && props.aloud !== 'no-voice';
    }
  };
  const why = (able: Able): string => {
    if (has(able)) return able === 'home' && isInstalled() ? say().isHome : say().can[able];
    if (able === 'aloud') return props.aloud === 'no-voice' ? say().noVoice : say().cannot;
    if (!isSecureContext) return say().needsTls;
    return able === 'awake' && props.awake === 'refused' ? say().refused : say().cannot;
  };
  const missing = () => ABLE.filter((able) => !has(able)).length;
  return (
    <details class="glance-phone" data-missing={missing()}>
      <summary>{say().line(missing())}</summary>
      <dl><For each={ABLE}>{(able) => <div data-able={able} data-has={has(able) ? 'yes' : 'no'}><dt>{say().name[able]}</dt><dd>{why(able)}</dd></div>}</For></dl>
      <Show when={!isSecureContext}><p>{say().plainHttp}</p></Show>
    </details>
  );
}
