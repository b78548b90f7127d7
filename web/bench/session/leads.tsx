import { For } from 'solid-js';
import type { SessionView } from '../../../core/facts/views.ts';
import { useWords } from '../../words/use-words.tsx';
import { useDesk } from '../../desk/desk.ts';

const SCREENS = ['plan', 'wall', 'glance'] as const;

/** Where one goes on from this session: its report, and on a narrow screen, whose head has no room for them, the other screens. */
export function Leads(props: { readonly session: SessionView }) {
  const desk = useDesk();
  const words = useWords();
  return (
    <nav class="leads" aria-label={words().bench.session.leads}>
      <For each={SCREENS}>{(screen) => <a class="of-head" href={`/${screen}/${encodeURIComponent(desk.mound)}`}>{words().start.screens[screen]}</a>}</For>
      <a class="of-head" href={`/trials/${encodeURIComponent(props.session.athlete.id)}`}>{words().trials.frame.onTrials}</a>
      <a href={`/report/${encodeURIComponent(props.session.id)}`}>{words().trials.frame.report}</a>
    </nav>
  );
}
