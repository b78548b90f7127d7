import { createMemo, createSignal, For, Show } from 'solid-js';
import type { ArmCare } from '../../core/facts/care-view.ts';
import type { SayReply } from '../../core/facts/wire.ts';
import { drawTwoTrials } from '../charts/two-trials.ts';
import { sayOnce } from '../live/say-once.ts';
import { Drawn } from '../wall/drawn.tsx';
import { useSpeech } from '../words/use-words.tsx';
import { cloudOfRows, cloudOfTaken, cloudsData } from './clouds.ts';
import { comparisonOfPair, movedSince, sharedDays, type OpenedComparison } from './comparison-of.ts';
import { entryNames, rowNames, sessionDate } from './names.ts';
import { NextThrows } from './next-throws.tsx';
import { daysToAdd, nextNumber, statementsToOpen, statementToAdd, type Statement } from './opening.ts';
import type { AthleteRecord } from './record.ts';
import type { TrialRow } from './rows.ts';
import { Verdict } from './verdict.tsx';

const TEXT_PX = 15;

export interface PairProps {
  readonly record: AthleteRecord;
  /** The older trial, and the newer one. */
  readonly a: TrialRow;
  readonly b: TrialRow;
  readonly opened: readonly OpenedComparison[];
  readonly care: ArmCare;
  readonly refresh: (session: string) => Promise<void>;
}

/** Two trials of one stage: the verdict where their comparison was opened, else the way to open it; and both clouds. */
export function Pair(props: PairProps) {
  const speech = useSpeech();
  const say = () => speech().words.trials;
  const shared = createMemo(() => sharedDays(props.record, props.a, props.b));
  const comparison = createMemo(() => comparisonOfPair(props.opened, shared(), props.a.stage));
  const names = createMemo(() => {
    const found = comparison();
    return found === null ? rowNames(props.a, props.b, speech()) : entryNames(found.entry);
  });
  const stage = () => speech().words.trade.stage[props.a.stage];
  const { saying, refusal, sayAll } = useSaying(props.refresh);
  const nextK = () => nextNumber(props.opened, (shared()[0]?.session ?? props.record.sessions[0]!).recorded.mound);
  const toOpen = createMemo(() => statementsToOpen(shared(), props.a.stage, nextK(), props.a.work === props.b.work));
  const newer = () => props.record.sessions.find(({ entry }) => entry.id === props.b.session)!;
  const clouds = createMemo(() => {
    const found = comparison();
    const letters = found === null ? { a: props.a.letter, b: props.b.letter } : entryNames(found.entry);
    const thrown = found === null ? cloudOfRows(props.a, props.b) : cloudOfTaken(found.taken);
    return cloudsData(thrown, found?.entry.zone ?? newer().entry.zone, newer(), names(), letters, speech());
  });
  const open = () => {
    const statements = toOpen();
    if (typeof statements !== 'string') void sayAll(statements);
  };
  return (
    <section class="pair" aria-labelledby="pair-title" data-k={comparison()?.entry.k ?? ''}>
      <Show when={comparison()} fallback={<NotOpened stage={stage()} title={say().frame.against(names().b, names().a)} toOpen={toOpen()} k={nextK()} saying={saying()} open={open} />}>
        {(found) => (
          <>
            <Verdict found={found()} names={names()} stage={stage()} timeZone={newer().entry.timeZone} />
            <Moved moved={movedSince(found(), props.record)} k={nextK()} saying={saying()} open={open} />
            <For each={daysToAdd(found(), shared())}>
              {(day) => <p class="add-day"><button type="button" disabled={saying()} onClick={() => void sayAll(statementToAdd({ mound: found().mound, openedIn: found().openedIn, k: found().entry.k }, day, props.a.stage))}>{say().pair.addDay(sessionDate(day.session, speech()))}</button></p>}
            </For>
            <NextThrows found={found()} care={props.care} names={names()} />
          </>
        )}
      </Show>
      <Show when={refusal()}>{(sentence) => <p class="refused" role="alert">{say().pair.wrong} {sentence()}</p>}</Show>
      <figure class="clouds">
        <Drawn class="clouds-plane" draw={(svg, { width, height }) => drawTwoTrials(svg, clouds(), { width, height, textPx: TEXT_PX })} />
        <figcaption class="quiet small">{say().pair.square(names().a)}, {say().pair.round(names().b)}, {say().pair.filled}</figcaption>
      </figure>
    </section>
  );
}

interface Opening {
  readonly k: number;
  readonly saying: boolean;
  readonly open: () => void;
}

function NotOpened(props: Opening & { readonly stage: string; readonly title: string; readonly toOpen: readonly Statement[] | string }) {
  const speech = useSpeech();
  const say = () => speech().words.trials;
  const obstacle = () => {
    const { noDay, sameWork, noZone, noBaseline } = say().pair;
    return { 'no-day': noDay, 'same-work': sameWork, 'no-zone': noZone, 'no-baseline': noBaseline }[props.toOpen as string] ?? null;
  };
  return (
    <div class="not-opened">
      <p class="over quiet">{say().verdict.notOpened(props.stage)}</p>
      <h2 id="pair-title">{props.title}</h2>
      <Show when={obstacle()} fallback={<><p>{say().pair.opens}</p><p><button type="button" class="main" disabled={props.saying} onClick={() => props.open()}>{say().pair.open(props.k)}</button></p></>}>
        {(why) => <p>{why()}</p>}
      </Show>
    </div>
  );
}

/** The comparison keeps what it fixed; what has changed since gets a new one. */
function Moved(props: Opening & { readonly moved: 'zone' | 'baseline' | null }) {
  const speech = useSpeech();
  const say = () => speech().words.trials.pair;
  return (
    <Show when={props.moved}>
      {(moved) => (
        <div class="moved">
          <p>{moved() === 'zone' ? say().zoneMoved : say().baselineMoved}</p>
          <p><button type="button" disabled={props.saying} onClick={() => props.open()}>{say().openNew(props.k)}</button></p>
        </div>
      )}
    </Show>
  );
}

/** Says statements one after the other, stops at a refusal, and reads anew what has changed. */
function useSaying(refresh: PairProps['refresh']) {
  const [saying, setSaying] = createSignal(false);
  const [refusal, setRefusal] = createSignal<string | null>(null);
  const sayAll = async (statements: readonly Statement[]): Promise<void> => {
    setSaying(true);
    setRefusal(null);
    for (const { mound, session, says } of statements) {
      // oxlint-disable-next-line no-await-in-loop -- each rests on the one before it
      const reply: SayReply = await sayOnce(mound, session, says);
      if (reply.kind === 'stored') continue;
      setRefusal(reply.sentence);
      break;
    }
    await refresh(statements[0]!.session);
    setSaying(false);
  };
  return { saying, refusal, sayAll };
}
