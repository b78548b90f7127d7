import type { CoachSays } from '../../../core/facts/coach.ts';
import { modeWords } from '../../words/feedback-words.ts';
import type { Words } from '../../words/words.ts';
import type { Act } from '../../desk/last-acts.ts';

/** An act in a few words, as whoever said it would know it again. */
export function actWords({ says, numbers, count, athlete }: Pick<Act, 'says' | 'numbers' | 'count' | 'athlete'>, names: ReadonlyMap<string, string>, words: Words): string {
  const { bench: { acts: { said }, way }, trade, arm, observed } = words;
  const who = athlete ?? '';
  const thrown = throwsWords(numbers, count, words);
  switch (says.kind) {
    case 'session-opened': return said.opened(says.athlete.name);
    case 'session-closed': return said.closed(who);
    case 'mound-passed': return said.passed(names.get(says.session) ?? says.session);
    case 'intent-set': return said.intent(trade.intent[says.intent]);
    case 'trial-begun': return said.begun(trade.intent[says.intent]);
    case 'trial-resumed': return said.resumed(says.trial);
    case 'trial-left': return said.left;
    case 'stage-set': return said.stage(trade.stage[says.stage]);
    case 'zone-set': return said.zone;
    case 'zone-removed': return said.zoneAway;
    case 'observation-ticked': return said.ticked(observed.what[says.what]);
    case 'baseline-renewed': return said.baseline;
    case 'throws-excluded': return said.excluded(thrown, says.reason);
    case 'throws-restored': return said.restored(thrown);
    case 'throws-tagged': return said.tagged(thrown, taggedWords(says, words));
    case 'throws-moved': return said.moved(thrown);
    case 'throws-claimed': return said.claimed(trade.unclaimed(count));
    case 'throw-bookmarked': return (says.on ? said.bookmarked : said.unmarked)(thrown);
    case 'note-written': return said.note(says.text);
    case 'arm-reported': return said.arm(arm.saidWhere(arm.said[says.said], says.areas.map((area) => arm.area[area])));
    case 'pain-answered': return said.painAnswered;
    case 'comfort-said': return said.comfort(way.comfort[says.comfortable ? 'yes' : 'no']);
    case 'feedback-set': return said.feedback(modeWords(says.mode, words));
    case 'decision-set': return said.decision;
    case 'gate-set': return said.gate(trade.stage[says.stage]);
    case 'gate-passed': return said.passedGate(trade.stage[says.stage]);
    case 'count-planned': return said.planned;
    default: return said.other;
  }
}

function throwsWords(numbers: readonly number[], count: number, { trade }: Words): string {
  return count === 1 && numbers.length === 1 ? trade.throwNumber(numbers[0]!) : trade.throws(count);
}

function taggedWords({ intent, trial }: Extract<CoachSays, { kind: 'throws-tagged' }>, { trade, bench }: Words): string {
  const meant = intent === null ? trade.noIntent : trade.intent[intent];
  return trial === null ? meant : `${meant}, ${bench.throws.inTrialShort(trial)}`;
}

/** Why an act cannot be taken back; null where it can, or has been. */
export function whyNot(act: Act, undoing: 'never' | 'changed' | 'elsewhere', { bench: { acts: say } }: Words): string {
  if (undoing === 'changed') return say.changed;
  if (undoing === 'elsewhere') return say.elsewhere(act.athlete ?? '');
  if (act.taking.kind !== 'never') return '';
  const { because } = act.taking;
  return because === 'stays' && act.says.kind in say.stays ? say.stays[act.says.kind as keyof typeof say.stays] : say.because[because];
}
