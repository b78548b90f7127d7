import type { SessionView } from '../../../core/facts/views.ts';
import { ScreenLinks } from '../../desk/screen-links.tsx';
import { useWords } from '../../words/use-words.tsx';
import { OTHER_SCREENS } from '../head.tsx';

/** Where one goes on from this session: its report, and on a narrow screen, whose head has no room for them, the other screens. */
export function Leads(props: { readonly session: SessionView }) {
  const words = useWords();
  return (
    <nav class="leads" aria-label={words().bench.session.leads}>
      <ScreenLinks screens={OTHER_SCREENS} class="of-head" />
      <a href={`/report/${encodeURIComponent(props.session.id)}`}>{words().trials.frame.report}</a>
    </nav>
  );
}
