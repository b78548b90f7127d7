import { FAMILIES, type Family } from '../facts/vocabulary.ts';
import { favoursNeither } from './fastball-efficiency.ts';
import { familyReasons, type FamilyInput, type FamilyReason } from './family-reasons.ts';

export interface FamilyFit {
  readonly family: Family;
  /** From 0 to 1: 1/(1 + exp(−Σ weights)); a half where nothing is known. */
  readonly degree: number;
  readonly reasons: readonly FamilyReason[];
}

/** What would move the ranking. */
export type WouldChange =
  | { readonly code: 'measure-efficiency' | 'measure-more-fastballs' | 'see-the-flight' }
  | { readonly code: 'try-it'; readonly family: Family; readonly throws: number };

export interface FamilyAdvice {
  /** `lead-with`: one family fits clearly better. `try-all`: all three in this order, which is the trade's answer between the thresholds. */
  readonly kind: 'lead-with' | 'try-all';
  /** Best first. */
  readonly ranking: readonly FamilyFit[];
  readonly wouldChange: readonly WouldChange[];
}

/** A lead smaller than this is none. House rule. */
const CLEAR_LEAD = 0.15;
/** Throws of a family after which trying it has said something. House rule; a split scatters most. */
const TRIED_ENOUGH: Readonly<Record<Family, number>> = { turnover: 15, 'seam-effect': 15, split: 25 };

/**
 * How well each family fits, the best first, with reasons and what would change the answer. It never rules one out: with
 * a fastball between the thresholds, or one whose interval straddles them, the answer is to try all three, in this order.
 */
export function rankFamilies(input: FamilyInput): FamilyAdvice {
  const ranking = FAMILIES.map((family): FamilyFit => fitOf(family, familyReasons(family, input))).sort((a, b) => b.degree - a.degree);
  const lead = ranking[0]!.degree - ranking[1]!.degree;
  const leads = lead >= CLEAR_LEAD && !stillBetween(input);
  return { kind: leads ? 'lead-with' : 'try-all', ranking, wouldChange: wouldChange(input, ranking) };
}

/** A fastball between the thresholds does not decide; only what was tried of every family does. */
function stillBetween({ efficiency, tried }: FamilyInput): boolean {
  return efficiency.kind === 'known' && favoursNeither(efficiency.mean) && FAMILIES.some((family) => throwsLeft(family, tried) > 0);
}

/** Throws of a family that are missing before trying it has said something. */
function throwsLeft(family: Family, tried: FamilyInput['tried']): number {
  return TRIED_ENOUGH[family] - (tried.find((one) => one.family === family)?.throws ?? 0);
}

function fitOf(family: Family, reasons: readonly FamilyReason[]): FamilyFit {
  const weight = reasons.reduce((sum, one) => sum + one.weight, 0);
  return { family, degree: 1 / (1 + Math.exp(-weight)), reasons };
}

function wouldChange({ efficiency, sight, tried }: FamilyInput, ranking: readonly FamilyFit[]): WouldChange[] {
  const straddles = ranking.some(({ reasons }) => reasons.some(({ code }) => code === 'straddles-95' || code === 'straddles-80'));
  const untried = ranking.flatMap(({ family }): WouldChange[] => {
    const throws = throwsLeft(family, tried);
    return throws > 0 ? [{ code: 'try-it', family, throws }] : [];
  });
  return [
    ...(efficiency.kind === 'unknown' ? [{ code: efficiency.because === 'too-few' ? 'measure-more-fastballs' : 'measure-efficiency' } as const] : []),
    ...(straddles ? [{ code: 'measure-more-fastballs' } as const] : []),
    ...(sight === 'spin-only' ? [{ code: 'see-the-flight' } as const] : []),
    ...untried,
  ];
}
