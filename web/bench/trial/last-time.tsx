import { createResource, Show } from 'solid-js';
import type { SessionView, TrialView } from '../../../core/facts/views.ts';
import { answered, askForSession, askForSessions } from '../../live/recorded.ts';
import { dateText } from '../../words/moments.ts';
import { useSpeech } from '../../words/use-words.tsx';

type Repeatable = Pick<TrialView, 'intent' | 'grip' | 'cue' | 'family'>;

/** Before the first trial of a session: what the athlete's last session ended with, one tap away. */
export function LastTime(props: { readonly session: SessionView; readonly onRepeat: (trial: Repeatable) => void }) {
  const speech = useSpeech();
  const [last] = createResource(() => props.session.id, () => lastTrialBefore(props.session));
  return (
    <Show when={last()}>
      {(found) => (
        <button type="button" onClick={() => props.onRepeat(found().trial)}>
          {speech().words.bench.trial.lastTime(dateText(found().atMs, props.session.timeZone, speech().language))}
        </button>
      )}
    </Show>
  );
}

async function lastTrialBefore(session: SessionView): Promise<{ readonly atMs: number; readonly trial: Repeatable } | null> {
  const listed = await answered(askForSessions());
  const before = listed?.find(({ id, athleteId, trials, openedAtMs }) => id !== session.id && athleteId === session.athlete.id && trials.length > 0 && openedAtMs < session.openedAtMs);
  if (before === undefined) return null;
  const facts = (await answered(askForSession(before.id)))?.facts ?? [];
  const begun = facts.flatMap(({ said }) => (said.kind === 'trial-begun' && said.session === before.id ? [said] : [])).at(-1);
  return begun === undefined ? null : { atMs: before.openedAtMs, trial: begun };
}
