import type { MoundView, ThrowView } from '../../core/facts/views.ts';
import { linesOf } from '../charts/lines.ts';
import { speedText } from '../words/numbers.ts';
import type { Speech } from '../words/speech.ts';
import { missWords, paceWords, sideWords, verticalWords } from '../words/throw-words.ts';

/** The last throw as the Wall says it: first what matters most. Few words: they are read from six metres. */
export interface LastThrowWords {
  readonly lead: string;
  /** Its pace against the fastball, or its speed; null where the lead says it. */
  readonly pace: string | null;
}

/** Letters that a line of the last throw's words holds, and lines that there are above the windows. */
const LEAD_LETTERS = 10;
const LEAD_LINES = 5;
/** Kept for the pace, whether it needs them or not, so that it stands where it stood. */
const PACE_LINES = 2;

/** Whether the pace has room below the words of the last throw where the windows are shown: they say the pace as well. */
export function paceFitsAboveWindows({ lead, pace }: LastThrowWords): boolean {
  return linesOf(lead, LEAD_LETTERS).length + (pace === null ? 0 : PACE_LINES) <= LEAD_LINES;
}

/** The newest throw of the session shown, excluded or not; null before the first. */
export function lastThrow(view: MoundView): ThrowView | null {
  return view.throws.at(-1) ?? null;
}

/** The words of one throw of a view. */
export function lastThrowWords(thrown: ThrowView, speech: Speech): LastThrowWords {
  const { words } = speech;
  if (thrown.excluded !== null) return { lead: words.trade.excluded, pace: null };
  if (thrown.problem !== null) return { lead: words.measures.missing.problem, pace: null };
  const speed = typeof thrown.speedMps === 'number' ? speedText(thrown.speedMps, speech) : null;
  if (thrown.fastball) return { lead: words.trade.fastball, pace: speed };
  const { separation } = thrown;
  const pace = typeof separation?.speedMps === 'number' ? paceWords(separation.speedMps, speech) : speed;
  return { lead: leadOf(thrown, speech), pace };
}

function leadOf({ separation, miss, verticalM, armSideM, intent }: ThrowView, speech: Speech): string {
  const { trade, measures } = speech.words;
  if (miss !== null) return missWords(miss, speech);
  if (separation !== null && typeof separation.verticalM === 'number' && typeof separation.armSideM === 'number') {
    return `${verticalWords(separation.verticalM, speech)}, ${sideWords(separation.armSideM, speech)}`;
  }
  if (typeof verticalM !== 'number') return measures.movementIs(measures.missing[verticalM]);
  if (typeof armSideM !== 'number') return measures.movementIs(measures.missing[armSideM]);
  return intent === null ? trade.noIntent : trade.intent[intent];
}
