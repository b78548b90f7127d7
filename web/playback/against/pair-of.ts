import type { SessionView, ThrowView } from '../../../core/facts/views.ts';
import type { GapPairData, PairedGap } from '../../charts/gap-pair.ts';
import type { LetteredMark, LetteredPlaneData } from '../../charts/lettered-plane.ts';
import { gapPicture } from '../../wall/asked/gap-of.ts';
import { planeNames } from '../../wall/plane-of.ts';
import { movementRuling, numberText } from '../../words/numbers.ts';
import type { Speech } from '../../words/speech.ts';
import { sideWords, verticalWords } from '../../words/throw-words.ts';
import { tickWords } from '../strip-of.ts';

/** A throw that is laid over another, and the session it stands in. */
export interface Side {
  readonly thrown: ThrowView;
  readonly session: SessionView;
}
export type Pair = readonly [Side, Side];

/** The first is square and dashed, the second round and whole, wherever they are drawn. */
export const FORMS = [{ letter: '1', form: 'square' }, { letter: '2', form: 'round' }] as const;

/** Both throws on one plane, over the fastball and the target of the second where the first has the same; null where neither can be drawn. */
export function planeOfPair(pair: Pair, speech: Speech): { readonly data: LetteredPlaneData | null; readonly missing: readonly string[] } {
  const say = speech.words.playback.against;
  const marks = pair.map((side, index) => markOf(side, index, speech));
  const drawn = marks.filter((mark) => mark !== null);
  const { session, thrown } = pair[1];
  const missing = pair.flatMap(({ thrown: one }, index) => (marks[index] === null ? [say.onlyOne(speech.words.trade.throwNumber(one.number), whyNotDrawn(one, speech))] : []));
  if (drawn.length === 0) return { data: null, missing: [say.noPlane] };
  const sameTarget = session.stage === thrown.stage && pair[0].thrown.stage === thrown.stage && pair[0].session.athlete.id === session.athlete.id;
  return {
    missing,
    data: {
      marks: drawn, spreads: [null, null],
      plane: {
        generation: '', armSideOn: session.athlete.hand === 'left' ? 'left' : 'right',
        cloud: sameTarget && session.baseline.kind === 'baseline' ? session.baseline.cloud : [],
        hasBaseline: true, zone: sameTarget ? session.zone : null, ruling: movementRuling(speech.units),
        texts: { name: speech.words.plane.name, description: drawn.map(({ said }) => `${said}.`).join(' '), ...planeNames(speech) },
      },
    },
  };
}

function markOf({ thrown }: Side, index: number, speech: Speech): LetteredMark | null {
  const { separation, place, trial, fastball, inferred, miss, excluded } = thrown;
  if (excluded !== null || separation === null || typeof separation.verticalM !== 'number' || typeof separation.armSideM !== 'number') return null;
  const { verticalM, armSideM } = separation;
  const said = `${tickWords(thrown, speech)}: ${verticalWords(verticalM, speech)}, ${sideWords(armSideM, speech)}`;
  // Two sessions of two mounds can have throws of one place.
  return { ...FORMS[index]!, place: place * 2 + index, trial, fastball, inferred, onTarget: miss?.onTarget ?? null, verticalM, armSideM, said };
}

function whyNotDrawn({ excluded }: ThrowView, { words: { trade, playback } }: Speech): string {
  return excluded === null ? playback.against.noSeparation : trade.excluded.toLowerCase();
}

/** Both gap lines over the time from release; and why one is missing. */
export function gapsOfPair(pair: Pair, speech: Speech): { readonly data: GapPairData | null; readonly missing: readonly string[] } {
  const { playback: { against: say }, asked: { gapLine }, trade, measures } = speech.words;
  const gaps = pair.flatMap(({ thrown: { gap } }, index): PairedGap[] => {
    if (gap === null || typeof gap === 'string') return [];
    const { line, decisionS, decisionWidths } = gapPicture(gap, speech);
    return [{ ...FORMS[index]!, line, decisionS, decisionWidths }];
  });
  const widths = (value: number) => gapLine.widths(numberText(value, 1, speech.language));
  const missing = pair.flatMap(({ thrown }) => {
    const name = trade.throwNumber(thrown.number);
    if (thrown.gap === null) return [say.noGap(name, thrown.fastball ? trade.fastball.toLowerCase() : say.noSeparation)];
    return typeof thrown.gap === 'string' ? [say.noGap(name, gapLine.pathMissing(measures.missing[thrown.gap]))] : [];
  });
  const said = pair.flatMap(({ thrown: { gap, number } }) => (gap === null || typeof gap === 'string' ? [] : [say.gapOne(trade.throwNumber(number), widths(gap.decisionWidths), widths(gap.plateWidths))]));
  if (gaps.length === 0) return { data: null, missing };
  return { missing, data: { gaps, texts: { name: say.gap, description: say.gapDescription(said.join(' ')), milliseconds: 'ms', afterRelease: gapLine.afterRelease, widths: say.widthsAxis, decision: gapLine.decision } } };
}
