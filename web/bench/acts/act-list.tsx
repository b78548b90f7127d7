import { createMemo, For, Match, Show, Switch } from 'solid-js';
import type { Act } from '../../desk/last-acts.ts';
import { useDesk } from '../../desk/desk.ts';
import { hourText } from '../../words/moments.ts';
import { useSpeech } from '../../words/use-words.tsx';
import { actWords, whyNot } from './act-words.ts';

/** The last acts of this desk, the newest first: each with its way back, or why there is none. */
export function ActList(props: { readonly most: number }) {
  const desk = useDesk();
  const speech = useSpeech();
  const say = () => speech().words.bench.acts;
  return (
    <ol class="act-list" aria-label={say().title}>
      <For each={desk.lastActs.acts().slice(0, props.most)} fallback={<li class="quiet">{say().none}</li>}>{(act) => <Line act={act} />}</For>
    </ol>
  );
}

function Line(props: { readonly act: Act }) {
  const desk = useDesk();
  const speech = useSpeech();
  const say = () => speech().words.bench.acts;
  const hour = (atMs: number) => hourText(atMs, desk.session()?.timeZone ?? null, speech().language);
  const names = () => new Map(desk.view().openSessions.map(({ id, athleteName }) => [id, athleteName]));
  const said = createMemo(() => actWords(props.act, names(), speech().words));
  const undoing = createMemo(() => desk.lastActs.undoing(props.act));
  const barred = () => {
    const now = undoing();
    return now === 'never' || now === 'changed' || now === 'elsewhere' ? now : null;
  };
  return (
    <li data-undoing={undoing()}>
      <span class="quiet">{hour(props.act.atMs)}</span>
      <span class="act-said">{said()}</span>
      <Switch>
        <Match when={undoing() === 'can'}><button type="button" aria-label={say().undoWhole(said())} onClick={() => void desk.lastActs.undo(props.act)}>{say().undo}</button></Match>
        <Match when={undoing() === 'undone'}><em>{say().undone(hour(props.act.undoneAtMs!))}</em></Match>
        <Match when={undoing() === 'coming'}><em>{say().coming}</em></Match>
      </Switch>
      <Show when={barred()}>{(kind) => <small>{whyNot(props.act, kind(), speech().words)}</small>}</Show>
    </li>
  );
}
