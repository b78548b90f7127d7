import { createSignal, createUniqueId, For, Show } from 'solid-js';
import type { SessionView, ThrowView } from '../../../core/facts/views.ts';
import { ThrowNumbers } from '../../throw-numbers/throw-numbers.tsx';
import { readingText, speedText } from '../../words/numbers.ts';
import { bandWords, missWords, sideWords, verticalWords } from '../../words/throw-words.ts';
import type { Speech } from '../../words/speech.ts';
import { useSpeech } from '../../words/use-words.tsx';
import { unbroken } from '../../wall/unbroken.ts';
import { ThrowMark } from './throw-mark.tsx';

/** One throw in one line; the whole line chooses it, and a button at its end opens its numbers below. */
export function ThrowLine(props: { readonly thrown: ThrowView; readonly session: SessionView; readonly chosen: boolean; readonly onToggle: () => void }) {
  const speech = useSpeech();
  const id = createUniqueId();
  const [open, setOpen] = createSignal(false);
  const say = () => speech().words.bench.throws;
  const intent = () => (props.thrown.intent === null ? speech().words.trade.noIntent : speech().words.trade.intent[props.thrown.intent]);
  return (
    <li class="throw-line" classList={{ out: props.thrown.excluded !== null, chosen: props.chosen, untagged: props.thrown.intent === null }}>
      <input id={id} type="checkbox" checked={props.chosen} aria-label={say().select(props.thrown.number)} onChange={() => props.onToggle()} />
      <label for={id}>
        <span class="throw-number">{props.thrown.number}</span>
        <span class="throw-what">
          <b>{intent()}</b> <Show when={props.thrown.fastball}><span class="throw-trial">{say().fastball}</span></Show>
          <Show when={!props.thrown.fastball && props.thrown.trial}>{(letter) => <span class="throw-trial">{say().inTrialShort(letter())}</span>}</Show>
        </span>
        <span class="throw-speed">{readingText(props.thrown.speedMps, (mps) => speedText(mps, speech()), speech())}</span>
        <span class="throw-where">{whereWords(props.thrown, speech())}</span>
        <span class="throw-verdict"><ThrowMark thrown={props.thrown} /> {verdictWords(props.thrown, speech())}</span>
        <span class="throw-marks">
          <For each={marksOf(props.thrown, props.session, speech())}>{(mark) => <em>{mark}</em>}</For>
        </span>
      </label>
      <button
        type="button" class="throw-open" aria-expanded={open()} aria-controls={open() ? `${id}-numbers` : undefined} onClick={() => setOpen(!open())}
        aria-label={speech().words.throwNumbers.open(speech().words.trade.throwNumber(props.thrown.number))}
      ><svg viewBox="-8 -8 16 16" aria-hidden="true"><path d="M-5,-2.5L0,2.5L5,-2.5" /></svg></button>
      <Show when={open()}><div id={`${id}-numbers`} class="throw-opened"><ThrowNumbers thrown={props.thrown} session={props.session} level="h3" /></div></Show>
    </li>
  );
}

/** The separation in words; for a throw without one, nothing. */
function whereWords({ separation, fastball }: ThrowView, speech: Speech): string {
  if (separation === null || fastball) return '';
  const vertical = readingText(separation.verticalM, (metres) => verticalWords(metres, speech), speech);
  const side = readingText(separation.armSideM, (metres) => sideWords(metres, speech), speech);
  return unbroken(vertical === side ? vertical : `${vertical}, ${side}`);
}

function verdictWords({ miss, fastball }: ThrowView, speech: Speech): string {
  return fastball || miss === null ? '' : unbroken(missWords(miss, speech));
}

/** What sets this throw apart from an ordinary one. */
function marksOf(thrown: ThrowView, session: SessionView, speech: Speech): string[] {
  const { words } = speech;
  const say = words.bench.throws;
  return [
    ...(thrown.excluded === null ? [] : [say.excludedBecause(thrown.excluded)]),
    ...(thrown.stage === session.stage ? [] : [words.trade.stage[thrown.stage]]),
    ...paceOff(thrown, session, speech),
    ...(thrown.corrected ? [say.corrected] : []),
    ...(thrown.inferred ? [say.inferred] : []),
    ...(thrown.taggedLater ? [say.taggedLater] : []),
    ...(thrown.problem === null ? [] : [words.measures.missing.problem]),
    ...session.notes.filter(({ place }) => place === thrown.place).map(({ text }) => say.noteShown(text)),
  ];
}

/** Only a pace outside its band is worth a word here, and how far only against the band of the stage that is thrown now. */
function paceOff({ fastball, miss, separation, stage }: ThrowView, { speedBand, stage: now }: SessionView, speech: Speech): string[] {
  if (fastball || miss?.paceOnTarget !== false || speedBand === null || stage !== now || typeof separation?.speedMps !== 'number') return [];
  return [bandWords(separation.speedMps, speedBand, speech)];
}
