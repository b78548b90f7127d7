import { createEffect } from 'solid-js';
import type { SessionEntry } from '../../core/session/ledger.ts';
import { dateText } from '../words/moments.ts';
import { useSpeech } from '../words/use-words.tsx';

/** Which recording this is, and the way back to all of them. Who throws is said by the picture. */
export function Title(props: { readonly session: SessionEntry; readonly mound: string }) {
  const speech = useSpeech();
  const date = () => dateText(props.session.openedAtMs, props.session.timeZone, speech().language);
  createEffect(() => {
    document.title = `Offpace · ${speech().words.playback.title} · ${props.session.athlete.name} · ${date()}`;
  });
  return (
    <header class="player-title">
      <a href={`/playback${listSearch()}`}>{speech().words.playback.toList}</a>
      <p class="quiet">{date()} · {props.mound}</p>
      <a href={`/trials/${encodeURIComponent(props.session.athlete.id)}`}>{speech().words.trials.frame.onTrials}</a>
      <a href={`/report/${encodeURIComponent(props.session.id)}`}>{speech().words.trials.frame.report}</a>
    </header>
  );
}

/** The list keeps every setting but the place in this session. */
function listSearch(): string {
  const query = new URLSearchParams(location.search);
  for (const own of ['throw', 'against', 'panel']) query.delete(own);
  return query.size === 0 ? '' : `?${query}`;
}
