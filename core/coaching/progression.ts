import type { GateState, StageAdvice } from '../facts/advice-view.ts';
import type { ArmCare } from '../facts/care-view.ts';
import type { Gate } from '../facts/plan-says.ts';
import { STAGES, type Stage } from '../facts/vocabulary.ts';
import { mayThrow } from './arm-care.ts';

/** What must be shown before a stage counts as passed. The coach may set it; going on is the coach's to say. */
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

/** Whether a stage's gate is met, and if not what is missing. A gate that asks for nothing is met. */
export function gateState({ gate, hasZone, comfortable, hits, judged, shareLowerBound }: StageWork): GateState {
  const asked = hasZone ? gate.shareAbove : null;
  const comfortAsked = gate.comfort || asked === null;
  const needs: GateState['needs'][number][] = [];
  if (comfortAsked && comfortable !== true) needs.push({ code: comfortable === null ? 'ask-comfort' : 'not-comfortable' });
  if (asked !== null && shareLowerBound <= asked) needs.push({ code: 'share-not-shown', above: asked, lowerBound: shareLowerBound, hits, judged });
  return { kind: needs.length === 0 ? 'met' : 'open', needs, comfortAlone: asked === null };
}

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
