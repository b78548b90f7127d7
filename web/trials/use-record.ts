import { createSignal, onCleanup, type Accessor } from 'solid-js';
import { askForAthleteDays, askForSessionRecord, readable, type Answer } from '../live/recorded.ts';
import { askForRecord } from './ask-for-record.ts';
import { sessionsLacking, withSessions, type AthleteRecord } from './record.ts';

/** An athlete's record as a screen holds it. */
export interface HeldRecord {
  /** Null until the server has answered. */
  readonly answer: Accessor<Answer<AthleteRecord> | null>;
  readonly again: () => void;
  /** Reads one session anew, after it has grown. Resolves when it is shown; a server that does not answer leaves what is known. */
  readonly refresh: (session: string) => Promise<void>;
}

/** Asks for an athlete's record and keeps it for as long as the component lives. */
export function holdRecord(athlete: string): HeldRecord {
  const [answer, setAnswer] = createSignal<Answer<AthleteRecord> | null>(null);
  let over = false;
  onCleanup(() => {
    over = true;
  });
  const again = (): void => {
    setAnswer(null);
    void readable(askForRecord(athlete)).then((said) => over || setAnswer(said));
  };
  const refresh = async (session: string): Promise<void> => {
    const [grown, days] = await Promise.all([askForSessionRecord(session), askForAthleteDays(athlete)]);
    const known = answer();
    if (over || known?.kind !== 'answer' || grown.kind !== 'answer' || days.kind !== 'answer') return;
    const others = await Promise.all(sessionsLacking(known.value, grown.value).map(askForSessionRecord));
    if (over || others.some(({ kind }) => kind !== 'answer')) return;
    const found = others.flatMap((other) => (other.kind === 'answer' ? [other.value] : []));
    setAnswer((now) => (now?.kind === 'answer' ? { kind: 'answer', value: withSessions(now.value, [...found, grown.value], days.value) } : now));
  };
  again();
  return { answer, again, refresh };
}
