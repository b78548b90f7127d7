import { createMemo, For, Show } from 'solid-js';
import { GripBall } from '../grip/grip-ball.tsx';
import { gripWords } from '../grip/grip-words.ts';
import { dateText } from '../words/moments.ts';
import { useSpeech } from '../words/use-words.tsx';
import type { Chosen } from './chosen.ts';
import { sessionDate } from './names.ts';
import type { AthleteRecord, FoldedSession } from './record.ts';
import { missMeanWords, onTargetWords, spreadWords } from './row-words.ts';
import type { TrialRow } from './rows.ts';

interface Choosing {
  readonly chosen: Chosen;
  readonly touch: (row: TrialRow) => void;
}

/** All trials, newest first, by session; each can be chosen for a comparison. */
export function TrialList(props: Choosing & { readonly record: AthleteRecord; readonly rows: readonly TrialRow[] }) {
  const speech = useSpeech();
  const sessions = createMemo(() => props.record.sessions.filter(({ entry }) => props.rows.some(({ session }) => session === entry.id)).map(({ entry }) => entry.id));
  return (
    <section class="trial-rows" aria-labelledby="all-trials">
      <h2 id="all-trials">{speech().words.trials.frame.all}</h2>
      <For each={sessions()}>
        {(id) => <SessionTrials session={props.record.sessions.find(({ entry }) => entry.id === id)!} rows={props.rows.filter(({ session }) => session === id)} hand={props.record.athlete.hand} chosen={props.chosen} touch={props.touch} />}
      </For>
      <p class="quiet small">{speech().words.trials.frame.missIs}</p>
    </section>
  );
}

function SessionTrials(props: Choosing & { readonly session: FoldedSession; readonly rows: readonly TrialRow[]; readonly hand: 'right' | 'left' }) {
  const speech = useSpeech();
  const say = () => speech().words.trials.frame;
  const id = () => encodeURIComponent(props.session.entry.id);
  return (
    <section class="session-trials">
      <header>
        <h3>{sessionDate(props.session, speech())}</h3>
        <a href={`/playback/${id()}`}>{say().playBack}</a>
        <a href={`/report/${id()}`}>{say().report}</a>
      </header>
      <ol>
        <For each={props.rows.map(({ key }) => key)}>
          {(key) => <Show when={props.rows.find((row) => row.key === key)}>{(row) => <Row row={row()} hand={props.hand} chosen={props.chosen} touch={props.touch} />}</Show>}
        </For>
      </ol>
    </section>
  );
}

function Row(props: Choosing & { readonly row: TrialRow; readonly hand: 'right' | 'left' }) {
  const speech = useSpeech();
  const words = () => speech().words;
  const say = () => words().trials.frame;
  return (
    <li class="trial-row" classList={{ chosen: props.chosen.includes(props.row.key) }} data-trial={props.row.key}>
      <label>
        <input type="checkbox" checked={props.chosen.includes(props.row.key)} aria-label={say().compare(props.row.letter, words().trade.stage[props.row.stage], dateText(props.row.atMs, props.row.timeZone, speech().language))} onChange={() => props.touch(props.row)} />
        <span class="letter" aria-hidden="true">{props.row.letter}</span>
        <span class="ball"><Show when={props.row.grip}>{(grip) => <GripBall grip={grip()} hand={props.hand} />}</Show></span>
        <span class="what">
          <strong>{words().trade.intent[props.row.intent]}</strong>
          <span class="quiet"> {words().trade.stage[props.row.stage]}</span>
          <span class="grip">{gripWords(props.row.grip, words())}</span>
          <Show when={props.row.cue}>{(cue) => <span class="cue">{words().bench.trial.cueSaid(cue().words)}</span>}</Show>
        </span>
      </label>
      <Numbers row={props.row} />
    </li>
  );
}

/** How it went, each number with its interval. */
function Numbers(props: { readonly row: TrialRow }) {
  const speech = useSpeech();
  const say = () => speech().words.trials.frame;
  const excluded = () => (props.row.excluded === 0 ? '' : `, ${say().excluded(props.row.excluded)}`);
  return (
    <dl class="trial-numbers">
      <div><dt>{speech().words.playback.columns.throws}</dt><dd>{props.row.throws.length - props.row.excluded}{excluded()}</dd></div>
      <div><dt>{say().onTarget}</dt><dd>{onTargetWords(props.row.all.onTarget, speech())}</dd></div>
      <div><dt>{say().spread}</dt><dd>{spreadWords(props.row.all.spread, speech())}</dd></div>
      <div><dt>{say().meanMiss}</dt><dd>{missMeanWords(props.row.all.meanMiss, speech())}</dd></div>
    </dl>
  );
}
