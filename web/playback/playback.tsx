import '../words/of-desk.ts';
import { Show } from 'solid-js';
import { SessionList } from './list/session-list.tsx';
import { RecordedSession } from './recorded-session.tsx';
import './playback.css';

/** Playback: the list of recorded sessions, or one of them. */
export default function Playback(props: { readonly session: string | null }) {
  return <Show when={props.session} keyed fallback={<SessionList />}>{(session) => <RecordedSession session={session} />}</Show>;
}
