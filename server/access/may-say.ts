import type { CoachSays } from '../../core/facts/coach.ts';
import type { Speaker } from '../../core/facts/wire.ts';

/** Why somebody may not say something, in the form that every objection has. */
interface NotTheirs {
  readonly code: 'not-theirs-to-say';
  readonly path: string;
  readonly sentence: string;
}

/**
 * Whether a statement belongs to who says it; null when it does. An athlete speaks of what only an athlete knows: comfort,
 * soreness and pain, and what the throw felt like. Everything else is the coach's, the answer to reported pain above all.
 * The connection says whose it is and is believed: this keeps a screen to its task, it does not tell people apart.
 */
export function notTheirs(speaker: Speaker, says: CoachSays): NotTheirs | null {
  switch (says.kind) {
    case 'arm-reported':
    case 'comfort-said': {
      const from = speaker === 'athlete' ? 'glance' : 'bench';
      return says.from === from ? null : { code: 'not-theirs-to-say', path: 'from', sentence: `What is said here is said from ${from}.` };
    }
    case 'throw-guessed':
      return null;
    default:
      return speaker === 'coach' ? null : { code: 'not-theirs-to-say', path: 'kind', sentence: 'From Glance an athlete says how the arm feels and what the throw was; the coach says the rest on Bench.' };
  }
}
