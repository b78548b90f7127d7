import { createEffect, Show } from 'solid-js';
import type { SessionEntry } from '../../core/session/ledger.ts';
import { dateText } from '../words/moments.ts';
import { useSpeech } from '../words/use-words.tsx';
import { listAddress } from './place-in-address.ts';

/** Which recording this is, and the way back to all of them. Who throws is said by the picture. */
export function Title(props: { readonly session: SessionEntry; readonly mound: string }) {
  const speech = useSpeech();
  const date = () => dateText(props.session.openedAtMs, props.session.timeZone, speech().language);
  createEffect(() => {
    document.title = `Offpace · ${speech().words.playback.title} · ${props.session.athlete.name} · ${date()}`;
  });
  return (
    <header class="player-title">
      <a href={listAddress()}>{speech().words.playback.toList}</a>
      <p class="quiet">{date()} · {props.mound}<Show when={props.session.imported}>{(from) => <> · {speech().words.playback.search.imported(from().file.name, dateText(from().atMs, null, speech().language))}</>}</Show></p>
      <a href={`/trials/${encodeURIComponent(props.session.athlete.id)}`}>{speech().words.trials.frame.onTrials}</a>
      <a href={`/report/${encodeURIComponent(props.session.id)}`}>{speech().words.trials.frame.report}</a>
    </header>
  );
}
