import { createContext, createSignal, useContext, type Accessor } from 'solid-js';
import type { CoachSays } from '../../core/facts/coach.ts';
import type { LiveMound } from '../live/use-mound.ts';

/** What an athlete can say from Glance, one thing at a time. */
export interface Voice {
  readonly say: (says: CoachSays) => Promise<void>;
  /** The last thing said did not reach the log. */
  readonly failed: Accessor<boolean>;
}

export function createVoice(send: LiveMound['say']): Voice {
  const [failed, setFailed] = createSignal(false);
  return {
    async say(says) {
      setFailed(false);
      const reply = await send(says);
      setFailed(reply.kind === 'refused');
    },
    failed,
  };
}

const VoiceContext = createContext<Voice>();
export const VoiceProvider = VoiceContext.Provider;

/** The voice around this part of Glance; a part outside of Glance is a bug. */
export function useVoice(): Voice {
  const voice = useContext(VoiceContext);
  if (voice === undefined) throw new Error('a part of Glance was drawn outside of Glance');
  return voice;
}
