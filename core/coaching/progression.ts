import type { ArmCare } from '../facts/care-view.ts';
import { STAGES, type Stage } from '../facts/vocabulary.ts';
import { mayThrow } from './arm-care.ts';

/** What must be shown before a stage counts as passed. The coach may set it; going on is the coach's to say. */
export interface Gate {
  /** The athlete says that the grip is comfortable. */
  readonly comfort: boolean;
  /** The on-target share must be over this, or null for comfort alone. */
  readonly shareAbove: number | null;
}
export const DEFAULT_GATE: Gate = { comfort: true, shareAbove: 0.5 };

/** One trial in one stage, over all its days. */
export interface StageWork {
  readonly stage: Stage;
  readonly gate: Gate;
  /** A stage without a zone is judged by comfort alone. */
  readonly hasZone: boolean;
  /** As the athlete last said; null when not asked. */
  readonly comfortable: boolean | null;
  readonly hits: number;
  readonly judged: number;
  /** Lower bound of the on-target share that holds at every look; 0 before a throw. */
  readonly shareLowerBound: number;
}

type GateNeed =
  | { readonly code: 'ask-comfort' | 'not-comfortable' }
  | { readonly code: 'share-not-shown'; readonly above: number; readonly lowerBound: number; readonly hits: number; readonly judged: number };

export interface GateState {
  readonly kind: 'met' | 'open';
  readonly needs: readonly GateNeed[];
  /** No zone here, or none asked for: the gate is comfort alone, and the screen says so. */
  readonly comfortAlone: boolean;
}

/** Whether a stage's gate is met, and if not what is missing. A gate that asks for nothing is met. */
export function gateState({ gate, hasZone, comfortable, hits, judged, shareLowerBound }: StageWork): GateState {
  const asked = hasZone ? gate.shareAbove : null;
  const comfortAsked = gate.comfort || asked === null;
  const needs: GateNeed[] = [];
  if (comfortAsked && comfortable !== true) needs.push({ code: comfortable === null ? 'ask-comfort' : 'not-comfortable' });
  if (asked !== null && shareLowerBound <= asked) needs.push({ code: 'share-not-shown', above: asked, lowerBound: shareLowerBound, hits, judged });
  return { kind: needs.length === 0 ? 'met' : 'open', needs, comfortAlone: asked === null };
}

export type StageAdvice =
  | { readonly kind: 'no-advice'; readonly because: Exclude<ArmCare['kind'], 'under' | 'near'> }
  | { readonly kind: 'stay'; readonly stage: Stage; readonly gate: GateState }
  | { readonly kind: 'go-on' | 'go-back'; readonly from: Stage; readonly to: Stage; readonly gate: GateState }
  | { readonly kind: 'last-stage'; readonly gate: GateState };

/**
 * Where to work next: on when the gate is met, back one stage when the grip is not comfortable here (it is learned where
 * nothing hangs on it), else where one is. None while the arm's state forbids advice to throw.
 */
export function stageAdvice(care: ArmCare, work: StageWork): StageAdvice {
  if (!mayThrow(care)) return { kind: 'no-advice', because: care.kind };
  const gate = gateState(work);
  const at = STAGES.indexOf(work.stage);
  const [before, after] = [STAGES[at - 1], STAGES[at + 1]];
  if (gate.kind === 'met') return after === undefined ? { kind: 'last-stage', gate } : { kind: 'go-on', from: work.stage, to: after, gate };
  if (work.comfortable === false && before !== undefined) return { kind: 'go-back', from: work.stage, to: before, gate };
  return { kind: 'stay', stage: work.stage, gate };
}
