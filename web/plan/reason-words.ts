import type { FamilyAdvice, FamilyFit, WouldChange } from '../../core/coaching/families.ts';
import type { FamilyReason } from '../../core/coaching/family-reasons.ts';
import type { FastballEfficiency } from '../../core/coaching/fastball-efficiency.ts';
import { numberText, shareText } from '../words/numbers.ts';
import { asSentence } from '../words/sentence.ts';
import type { Speech } from '../words/speech.ts';

type Weighs = 'for' | 'against' | 'note';
export interface SaidReason {
  readonly weighs: Weighs;
  readonly words: string;
}

/** A weight smaller than this moves no order: the reason is there to be known. */
const SILENT_WEIGHT = 0.05;
/** Where words change. House rule: the degree itself stands beside them. */
const FITS_WELL = 0.65;
const FITS_LESS = 0.35;

/** The answer in a line: which family first, or all three in turn. */
export function answerWords({ kind, ranking }: FamilyAdvice, { words: { plan } }: Speech): string {
  return plan.families.answer[kind](plan.families.family[ranking[0]!.family]);
}

export function degreeText(degree: number, { language }: Speech): string {
  return numberText(degree, 2, language);
}

export function fitWords(degree: number, { words: { plan } }: Speech): string {
  const { fits } = plan.families;
  return degree >= FITS_WELL ? fits.well : degree <= FITS_LESS ? fits.less : fits.some;
}

/** Reasons that hold for all three alike: said once, because they order nothing. */
function sharedCodes({ ranking }: FamilyAdvice): readonly FamilyReason['code'][] {
  const [first, ...others] = ranking;
  return (first?.reasons ?? []).map(({ code }) => code).filter((code) => others.every(({ reasons }) => reasons.some((one) => one.code === code)));
}

/** What is said of all three at once, as whole sentences. */
export function sharedWords(advice: FamilyAdvice, speech: Speech): readonly string[] {
  const shared = sharedCodes(advice);
  return advice.ranking[0]!.reasons.filter(({ code }) => shared.includes(code)).map((reason) => asSentence(reasonWords(reason, speech)));
}

/** What speaks for or against one family alone, the heaviest first. */
export function ownReasons({ reasons }: FamilyFit, advice: FamilyAdvice, speech: Speech): readonly SaidReason[] {
  const shared = sharedCodes(advice);
  return reasons.filter(({ code }) => !shared.includes(code))
    .sort((a, b) => Math.abs(b.weight) - Math.abs(a.weight))
    .map((reason) => ({ weighs: weighsOf(reason.weight), words: reasonWords(reason, speech) }));
}

function weighsOf(weight: number): Weighs {
  if (Math.abs(weight) < SILENT_WEIGHT) return 'note';
  return weight > 0 ? 'for' : 'against';
}

function reasonWords({ code, numbers }: FamilyReason, speech: Speech): string {
  const { reason } = speech.words.plan.families;
  switch (code) {
    case 'efficiency-favours':
    case 'efficiency-speaks-against':
    case 'efficiency-between':
      return reason[code](shareText(numbers['mean']!, speech));
    case 'tried-near-target':
    case 'tried-off-target':
      return reason[code](speech.words.trade.throws(numbers['throws']!));
    case 'tried-too-few':
      return reason[code](numbers['throws']!, numbers['need']!);
    default:
      return reason[code];
  }
}

/** What would move the ranking, one sentence each. Advice to throw is left out where none may be given. */
export function changeWords(changes: readonly WouldChange[], mayThrow: boolean, speech: Speech): readonly string[] {
  const { change, family, tryCount } = speech.words.plan.families;
  const kinds = [...new Set(changes.flatMap(({ code }) => (code === 'try-it' ? [] : [code])))].filter((code) => mayThrow || code !== 'measure-more-fastballs');
  const toTry = changes.flatMap((one) => (one.code === 'try-it' ? [tryCount(family[one.family], one.throws)] : []));
  return [...kinds.map((code) => change[code]), ...(mayThrow && toTry.length > 0 ? [change['try-it'](toTry.join(', '))] : [])];
}

/** "93 % (91 to 95)", or why it is not known. */
export function efficiencyWords(efficiency: FastballEfficiency, speech: Speech): string {
  const { frame } = speech.words.plan;
  if (efficiency.kind === 'unknown') return frame.efficiencyUnknown[efficiency.because];
  const bare = (share: number): string => numberText(share * 100, 0, speech.language);
  return frame.interval(shareText(efficiency.mean, speech), bare(efficiency.low), bare(efficiency.high));
}
