import { createEffect, createSignal, on, type Accessor } from 'solid-js';
import type { AthleteDays } from '../../core/facts/wire.ts';
import { askForAthleteDays } from './recorded.ts';

/**
 * What an athlete's arm has done over all mounds, asked for again whenever the mound's log has gone on; one question at a
 * time. Null until the server has answered about this athlete; the last answer stays while it is silent.
 */
export function useDays(athlete: Accessor<string | null>, place: Accessor<number>): Accessor<AthleteDays | null> {
  const [days, setDays] = createSignal<AthleteDays | null>(null);
  let asking = false;
  let again = false;
  const look = async (): Promise<void> => {
    const whose = athlete();
    if (whose === null) return;
    if (asking) {
      again = true;
      return;
    }
    asking = true;
    const answer = await askForAthleteDays(whose);
    asking = false;
    if (answer.kind === 'answer') setDays(answer.value);
    if (again) {
      again = false;
      await look();
    }
  };
  createEffect(on([athlete, place], () => void look()));
  return () => {
    const known = days();
    return known === null || known.athlete !== athlete() ? null : known;
  };
}
