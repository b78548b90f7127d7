import type { PassedGate, StageProgress } from '../../../core/facts/advice-view.ts';
import { dateText, isoDayText } from '../../words/moments.ts';
import { shareText } from '../../words/numbers.ts';
import type { Speech } from '../../words/speech.ts';

/** One or two words beside the name of a stage; none where no trial is worked on. */
export function gateMark({ work, passed }: StageProgress, { words: { bench: { way } } }: Speech): string {
  if (passed.length > 0) return work?.state.kind === 'open' ? way.passedOpen : way.passed;
  return work === null ? '' : work.state.kind === 'met' ? way.met : way.open;
}

/** What the gate asks for and what there is of it, each a sentence. */
export function gateSentences({ gate, hasZone, work, passed }: StageProgress, timeZone: string, speech: Speech): string[] {
  const { way } = speech.words.bench;
  if (work === null) return [];
  const { comfort, state } = work;
  const asked = gate.comfort || state.comfortAlone;
  const date = (atMs: number): string => dateText(atMs, timeZone, speech.language);
  const comfortable = comfort === null ? way.comfortAsk : (comfort.comfortable ? way.comfortYes : way.comfortNo)(date(comfort.atMs));
  return [
    ...(state.comfortAlone ? [hasZone ? way.comfortOnly : way.noZone] : [shareWords(gate.shareAbove!, work, speech)]),
    ...(asked ? [comfortable] : []),
    ...(state.kind === 'open' && passed.length > 0 ? [way.passedNotMet(date(passed.at(-1)!.atMs))] : []),
  ];
}

function shareWords(above: number, { hits, judged, shareLowerBound }: NonNullable<StageProgress['work']>, speech: Speech): string {
  const { way } = speech.words.bench;
  const asked = shareText(above, speech);
  return judged === 0 ? way.shareNone(asked) : way.share(hits, judged, boundText(shareLowerBound, speech), asked);
}

/** Rounded down: a bound never says more than it holds. */
function boundText(bound: number, speech: Speech): string {
  return shareText(Math.floor(bound * 100) / 100, speech);
}

/** What was thrown of it in this stage day by day, and when it was passed; the oldest first. */
export function gateHistory({ work, passed }: Pick<StageProgress, 'work' | 'passed'>, timeZone: string, speech: Speech): string[] {
  const { bench: { way }, trade } = speech.words;
  const days = (work?.days ?? []).map(({ day, throws, hits, judged }) => {
    const date = isoDayText(day, speech.language);
    return judged === 0 ? way.dayUnjudged(date, trade.throws(throws)) : way.day(date, hits, judged);
  });
  return [...days, ...passed.map((one) => passedWords(one, timeZone, speech))];
}

function passedWords({ atMs, trial, reason }: PassedGate, timeZone: string, { words: { bench: { way } }, language }: Speech): string {
  return `${way.passedAs(dateText(atMs, timeZone, language), trial)}${reason === null ? '' : way.because(reason)}`;
}
