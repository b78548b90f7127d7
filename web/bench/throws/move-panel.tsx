import { createResource, For } from 'solid-js';
import type { SessionListing } from '../../../core/facts/wire.ts';
import { answered, askForSessions } from '../../live/recorded.ts';
import { momentText } from '../../words/moments.ts';
import { useSpeech } from '../../words/use-words.tsx';
import { useDesk } from '../../desk/desk.ts';
import type { PanelProps } from './panel.ts';

/** Closed sessions offered besides the open ones. */
const CLOSED_OFFERED = 4;

/** Gives throws to whom they belong: another open session, a recent closed one of this mound, or nobody yet. */
export function MovePanel(props: PanelProps) {
  const desk = useDesk();
  const speech = useSpeech();
  const say = () => speech().words.bench.throws;
  const [listed] = createResource(() => answered(askForSessions()));
  const open = () => desk.view().openSessions.filter(({ id }) => id !== props.session.id);
  const closed = () => (listed() ?? []).filter(({ id, mound, closedAtMs }) => mound === desk.mound && closedAtMs !== null && id !== props.session.id).slice(0, CLOSED_OFFERED);
  const when = ({ openedAtMs, timeZone }: SessionListing) => momentText(openedAtMs, timeZone, speech().language);
  const move = (session: string | null) => void props.onSay({ kind: 'throws-moved', places: props.selection.places(), session });
  return (
    <div class="panel" role="group" aria-label={say().moveTo}>
      <p class="quiet">{say().moveTo}</p>
      <div class="words">
        <For each={open()}>{({ id, athleteName }) => <button type="button" onClick={() => move(id)}>{athleteName}</button>}</For>
        <For each={closed()}>{(listing) => <button type="button" onClick={() => move(listing.id)}>{say().closedSession(listing.athleteName, when(listing))}</button>}</For>
        <button type="button" onClick={() => move(null)}>{say().moveNowhere}</button>
      </div>
    </div>
  );
}
