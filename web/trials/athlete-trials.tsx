import { createEffect, createMemo, createSignal, For, Show } from 'solid-js';
import { mayThrow } from '../../core/coaching/arm-care.ts';
import { nowMs } from '../live/clock.ts';
import { rememberSetting } from '../asked-for.ts';
import { StandingFrame } from '../standing/frame.tsx';
import type { Standing } from '../standing/standing.ts';
import { useSpeech } from '../words/use-words.tsx';
import { armOn, todayOf } from './arm.ts';
import { chosenIn, chosenText, firstChoice, pairOf, touched } from './chosen.ts';
import { comparisonsOf } from './comparison-of.ts';
import { Follow } from './follow.tsx';
import { Pair } from './pair.tsx';
import type { AthleteRecord } from './record.ts';
import { rowsOf, type TrialRow } from './rows.ts';
import { TrialList } from './trial-list.tsx';

/** All trials of one athlete, and two of them side by side. */
export function AthleteTrials(props: { readonly record: AthleteRecord; readonly refresh: (session: string) => Promise<void> }) {
  const speech = useSpeech();
  const say = () => speech().words.trials.frame;
  const rows = createMemo(() => props.record.sessions.flatMap(rowsOf));
  const care = createMemo(() => armOn(props.record, todayOf(props.record, nowMs())));
  const opened = createMemo(() => {
    const arm = care();
    return comparisonsOf(props.record, arm.day, mayThrow(arm) ? arm : null);
  });
  const [chosen, setChosen] = createSignal(firstChoice(chosenIn(location.search), rows(), opened()));
  const pair = createMemo(() => pairOf(chosen(), rows()));
  const touch = (row: TrialRow): void => void setChosen((before) => touched(before, row, rows()));
  const [standing, setStanding] = createSignal<Standing>({ kind: 'live' });
  // The address says what is held against what, so that a link opens there.
  createEffect(() => rememberSetting('pair', chosenText(chosen())));
  createEffect(() => {
    document.title = `Offpace · ${say().title(props.record.athlete.name)}`;
  });
  return (
    <StandingFrame standing={framed(standing())}><div class="trials">
      <header class="trials-head">
        <h1>{props.record.athlete.name}</h1>
        <p class="quiet">{say().onTrials}</p>
        <For each={openSessions(props.record)}>{(id) => <Follow session={props.record.sessions.find(({ entry }) => entry.id === id)!} refresh={props.refresh} tell={setStanding} />}</For>
        <nav aria-label={say().otherScreens}>
          <For each={openSessions(props.record)}>{(id) => <a href={`/bench/${encodeURIComponent(moundOf(props.record, id))}`}>{speech().words.start.screens.bench}</a>}</For>
          <For each={openSessions(props.record)}>{(id) => <a href={`/plan/${encodeURIComponent(moundOf(props.record, id))}`}>{speech().words.start.screens.plan}</a>}</For>
          <a href="/playback">{say().sessions}</a>
        </nav>
      </header>
      <main class="trials-main">
        <Show when={rows().length > 0} fallback={<section class="trials-none"><h2>{say().none}</h2><Show when={mayThrow(care())}><p class="quiet">{say().noneWhy}</p></Show></section>}>
          <Show when={pair()} fallback={<Choosing rows={rows()} chosen={chosen()} />}>
            {(two) => <Pair record={props.record} a={two()[0]} b={two()[1]} opened={opened()} care={care()} refresh={props.refresh} />}
          </Show>
          <TrialList record={props.record} rows={rows()} chosen={chosen()} touch={touch} />
        </Show>
      </main>
    </div></StandingFrame>
  );
}

/** A device that is silent makes nothing here untrue: what was thrown has been thrown. */
function framed(standing: Standing): Standing {
  return standing.kind.startsWith('device') || standing.kind === 'closed' ? { kind: 'live' } : standing;
}

/** What is still to be chosen. */
function Choosing(props: { readonly rows: readonly TrialRow[]; readonly chosen: readonly string[] }) {
  const speech = useSpeech();
  const first = () => props.rows.find(({ key }) => key === props.chosen[0]);
  return (
    <section class="choosing">
      <p>
        <Show when={first()} fallback={speech().words.trials.frame.choose}>
          {(row) => speech().words.trials.frame.chooseAnother(speech().words.trade.stage[row().stage])}
        </Show>
      </p>
    </section>
  );
}

function openSessions({ sessions }: AthleteRecord): readonly string[] {
  return sessions.filter(({ entry }) => entry.closedAtMs === null).map(({ entry }) => entry.id);
}

function moundOf({ sessions }: AthleteRecord, id: string): string {
  return sessions.find(({ entry }) => entry.id === id)!.recorded.mound;
}
