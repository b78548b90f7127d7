import { createResource, Show } from 'solid-js';
import type { Fact } from '../../../core/facts/fact.ts';
import type { SessionListing } from '../../../core/facts/wire.ts';
import type { SessionView, TrialView } from '../../../core/facts/views.ts';
import { dateText } from '../../words/moments.ts';
import { useSpeech } from '../../words/use-words.tsx';
import { fetchedList } from '../fetched.ts';

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
  const listed = await fetchedList<SessionListing>('/api/sessions');
  const before = listed?.find(({ id, athleteId, trials, openedAtMs }) => id !== session.id && athleteId === session.athlete.id && trials.length > 0 && openedAtMs < session.openedAtMs);
  if (before === undefined) return null;
  const facts = await recordedFacts(before.id);
  const begun = facts.flatMap(({ said }) => (said.kind === 'trial-begun' && said.session === before.id ? [said] : [])).at(-1);
  return begun === undefined ? null : { atMs: before.openedAtMs, trial: begun };
}

async function recordedFacts(session: string): Promise<readonly Fact[]> {
  try {
    const reply = await fetch(`/api/sessions/${encodeURIComponent(session)}`);
    return reply.ok ? ((await reply.json()) as { readonly facts: readonly Fact[] }).facts : [];
  } catch {
    return [];
  }
}
