import type { SessionView } from '../../../core/facts/views.ts';
import { useDesk } from '../../desk/desk.ts';
import { ScreenLinks } from '../../desk/screen-links.tsx';
import { useWords } from '../../words/use-words.tsx';
import { OTHER_SCREENS } from '../head.tsx';

/** Where one goes on from this session: its report, what was recorded elsewhere, and on a narrow screen, whose head has no room for them, the other screens. */
export function Leads(props: { readonly session: SessionView }) {
  const desk = useDesk();
  const words = useWords();
  return (
    <nav class="leads" aria-label={words().bench.session.leads}>
      <ScreenLinks screens={OTHER_SCREENS} class="of-head" />
      <a href={`/report/${encodeURIComponent(props.session.id)}`}>{words().trials.frame.report}</a>
      <a href={`/import?mound=${encodeURIComponent(desk.mound)}`}>{words().start.bringIn}</a>
    </nav>
  );
}
