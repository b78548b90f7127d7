import { Show } from 'solid-js';
import type { SessionView } from '../../../core/facts/views.ts';
import { hourText } from '../../words/moments.ts';
import { useSpeech } from '../../words/use-words.tsx';
import { Answer } from '../../desk/answer.tsx';
import { useDesk } from '../../desk/desk.ts';

/** Throws that nobody has: measured while no session was open. One tap gives all of them to who is throwing now. */
export function Unclaimed(props: { readonly session: SessionView | null }) {
  const desk = useDesk();
  const speech = useSpeech();
  const say = () => speech().words.bench.throws;
  const hour = (index: number) => hourText(desk.view().unclaimed.at(index)!.atMs, props.session?.timeZone ?? null, speech().language);
  const claim = (session: SessionView) => void desk.say('unclaimed', { kind: 'throws-claimed', session: session.id, through: desk.view().unclaimed.at(-1)!.place });
  const more = () => desk.view().unclaimedCount - desk.view().unclaimed.length;
  const when = () => (more() > 0 ? say().unclaimedNewest(hour(0), hour(-1), desk.view().unclaimed.length, more()) : say().unclaimedFrom(hour(0), hour(-1)));
  return (
    <Show when={desk.view().unclaimedCount > 0}>
      <div class="unclaimed">
        <p>
          <b>{speech().words.trade.unclaimed(desk.view().unclaimedCount)}</b> <span class="quiet">{when()}</span>
        </p>
        <Show when={props.session?.closedAtMs === null ? props.session : null} fallback={<p class="quiet">{say().claimNobody}</p>}>
          {(session) => <button type="button" onClick={() => claim(session())}>{say().claim(session().athlete.name)}</button>}
        </Show>
        <Answer corner="unclaimed" />
      </div>
    </Show>
  );
}
