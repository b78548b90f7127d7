import type { SessionView, ThrowView } from '../../core/facts/views.ts';
import { unbroken } from '../wall/unbroken.ts';
import { movementText, speedText } from '../words/numbers.ts';
import type { Speech } from '../words/speech.ts';
import { missWords, paceWords, sideWords, verticalWords, whatWords } from '../words/throw-words.ts';

/** One throw as its athlete reads it. */
export interface GlanceWords {
  /** Intent and trial. */
  readonly what: string;
  /** Whether it was on target, or what it was. */
  readonly lead: string;
  /** How the lead is marked; null where nothing is judged. */
  readonly onTarget: boolean | null;
  /** The one sentence; null where there is nothing to hold it against. */
  readonly sentence: string | null;
  /** What is not known about it, each a sentence. */
  readonly unknown: readonly string[];
}

/** The words of a throw. `showSpeed` decides whether anything about its speed is said. */
export function glanceWords(thrown: ThrowView, session: SessionView, showSpeed: boolean, speech: Speech): GlanceWords {
  const { glance } = speech.words;
  const what = whatWords(thrown, speech);
  const plain = { what, onTarget: null, sentence: null, unknown: [] };
  if (thrown.excluded !== null) return { ...plain, lead: speech.words.trade.excluded, sentence: glance.leftOut };
  if (thrown.problem !== null) return { ...plain, lead: glance.notMeasured };
  return {
    what,
    lead: leadOf(thrown, showSpeed, speech),
    onTarget: thrown.miss?.onTarget ?? null,
    sentence: sentenceOf(thrown, session, showSpeed, speech),
    unknown: unknownOf(thrown, session, showSpeed, speech),
  };
}

function leadOf(thrown: ThrowView, showSpeed: boolean, speech: Speech): string {
  if (thrown.miss !== null) return missWords(thrown.miss, speech);
  if (showSpeed && typeof thrown.speedMps === 'number') return speedText(thrown.speedMps, speech);
  return thrown.fastball ? speech.words.trade.fastball : speech.words.trade.throwNumber(thrown.number);
}

function sentenceOf({ separation, fastball, miss }: ThrowView, session: SessionView, showSpeed: boolean, speech: Speech): string | null {
  const { trade, plane, glance } = speech.words;
  if (separation === null) {
    if (session.baseline.kind === 'baseline') return null;
    return fastball ? `${trade.baselineForming(session.baseline.have, session.baseline.need)}.` : `${plane.noBaseline}.`;
  }
  const { verticalM, armSideM, speedMps } = separation;
  const said = [
    ...(typeof verticalM === 'number' ? [verticalWords(verticalM, speech)] : []),
    ...(typeof armSideM === 'number' ? [sideWords(armSideM, speech)] : []),
    ...(showSpeed && typeof speedMps === 'number' && (miss !== null || !fastball) ? [paceWords(speedMps, speech)] : []),
  ];
  return said.length === 0 ? null : glance.against(said.map(unbroken).join(', '));
}

function unknownOf(thrown: ThrowView, session: SessionView, showSpeed: boolean, speech: Speech): string[] {
  const { glance, measures, trade } = speech.words;
  const { verticalM, armSideM, inferred, standardErrors, fastball } = thrown;
  const missing = typeof verticalM !== 'number' ? verticalM : typeof armSideM !== 'number' ? armSideM : null;
  return [
    ...(missing !== null ? [glance.movement(measures.missing[missing])] : inferred ? [glance.movement(trade.inferred)] : []),
    ...(missing === null && standardErrors !== null ? [glance.giveOrTake(movementText(Math.max(standardErrors.verticalM, standardErrors.armSideM), speech, 1))] : []),
    ...(!fastball && session.zone === null ? [glance.noZone] : []),
    ...(showSpeed ? [] : [glance.speedHidden]),
  ];
}
