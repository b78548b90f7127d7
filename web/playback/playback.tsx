import '../words/of-desk.ts';
import { Show } from 'solid-js';
import { SessionList } from './list/session-list.tsx';
import { RecordedSession } from './recorded-session.tsx';
import { TwoSessions } from './two/two-sessions.tsx';
import './playback.css';

/** Playback: the list of recorded sessions, one of them, or one beside another. */
export default function Playback(props: { readonly session: string | null }) {
  const beside = new URLSearchParams(location.search).get('beside');
  return (
    <Show when={props.session} keyed fallback={<SessionList />}>
      {(session) => (beside === null ? <RecordedSession session={session} /> : <TwoSessions first={session} second={beside} />)}
    </Show>
  );
}
