import { createMemo, createSignal, For, Show } from 'solid-js';
import { mayThrow } from '../../core/coaching/arm-care.ts';
import type { ArmCare } from '../../core/facts/care-view.ts';
import type { SayReply } from '../../core/facts/wire.ts';
import { drawLetteredPlane } from '../charts/lettered-plane.ts';
import { sayOnce } from '../live/say-once.ts';
import { trialWords } from '../grip/grip-words.ts';
import { Drawn } from '../wall/drawn.tsx';
import { useSpeech } from '../words/use-words.tsx';
import type { OpenedComparison, SharedDay } from './comparison-of.ts';
import { sessionDate } from './names.ts';
import { NextThrows } from './next-throws.tsx';
import { statementToAdd, type Statement } from './opening.ts';
import type { AthleteRecord } from './record.ts';
import type { TrialRow } from './rows.ts';
import { sideBySide, type SideBySide } from './side-by-side.ts';
import { Verdict } from './verdict.tsx';

const TEXT_PX = 15;

interface PairProps {
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
  const beside = createMemo(() => sideBySide(props.record, props.a, props.b, props.opened, speech()));
  const { saying, refusal, sayAll } = useSaying(props.refresh);
  const open = () => {
    const { toOpen } = beside();
    if (typeof toOpen !== 'string') void sayAll(toOpen);
  };
  const stage = () => speech().words.trade.stage[props.a.stage];
  const title = () => say().frame.against(beside().names.b, beside().names.a);
  return (
    <section class="pair" aria-labelledby="pair-title" data-k={beside().comparison?.entry.k ?? ''}>
      <div class="pair-said">
        <Show when={beside().comparison} fallback={<NotOpened stage={stage()} title={title()} toOpen={beside().toOpen} advise={mayThrow(props.care)} k={beside().nextK} saying={saying()} open={open} />}>
          {(found) => (
            <>
              <Verdict found={found()} names={beside().names} stage={stage()} timeZone={beside().timeZone} advise={mayThrow(props.care)} />
              <Moved moved={beside().moved} k={beside().nextK} saying={saying()} open={open} />
              <AddDays beside={beside()} saying={saying()} sayAll={sayAll} />
              <NextThrows found={found()} care={props.care} names={beside().names} />
            </>
          )}
        </Show>
        <Show when={refusal()}>{(sentence) => <p class="refused" role="alert">{say().pair.wrong} {sentence()}</p>}</Show>
      </div>
      <Clouds beside={beside()} />
    </section>
  );
}

function Clouds(props: { readonly beside: SideBySide }) {
  const speech = useSpeech();
  const say = () => speech().words.trials.pair;
  return (
    <figure class="clouds">
      <Drawn class="clouds-plane" draw={(svg, { width, height }) => drawLetteredPlane(svg, props.beside.clouds, { width, height, textPx: TEXT_PX })} />
      <figcaption class="small">
        <span class="key-square">{say().marks(props.beside.names.a, trialWords(props.beside.first, speech().words))}</span>
        <span class="key-round">{say().marks(props.beside.names.b, trialWords(props.beside.second, speech().words))}</span>
        <span class="quiet">{say().filled}</span>
      </figcaption>
    </figure>
  );
}

/** Days that hold both trials and are not in the comparison yet. */
function AddDays(props: { readonly beside: SideBySide; readonly saying: boolean; readonly sayAll: (statements: readonly Statement[]) => Promise<void> }) {
  const speech = useSpeech();
  const add = (day: SharedDay): void => {
    const { mound, openedIn, entry } = props.beside.comparison!;
    void props.sayAll(statementToAdd({ mound, openedIn, k: entry.k }, day, entry.stage));
  };
  return (
    <For each={props.beside.daysToAdd}>
      {(day) => <p><button type="button" disabled={props.saying} onClick={() => add(day)}>{speech().words.trials.pair.addDay(sessionDate(day.session, speech()))}</button></p>}
    </For>
  );
}

interface Opening {
  readonly k: number;
  readonly saying: boolean;
  readonly open: () => void;
}

function NotOpened(props: Opening & { readonly stage: string; readonly title: string; readonly toOpen: readonly Statement[] | string; readonly advise: boolean }) {
  const speech = useSpeech();
  const say = () => speech().words.trials;
  const obstacle = () => {
    const { noDay, throwBoth, sameWork, noZone, noBaseline } = say().pair;
    return { 'no-day': props.advise ? `${noDay} ${throwBoth}` : noDay, 'same-work': sameWork, 'no-zone': noZone, 'no-baseline': noBaseline }[props.toOpen as string] ?? null;
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
    if (statements[0] !== undefined) await refresh(statements[0].session);
    setSaying(false);
  };
  return { saying, refusal, sayAll };
}
