import { createEffect, createSignal, on, onCleanup, type Accessor } from 'solid-js';
import type { SessionsFound } from '../../../core/facts/session-search.ts';
import { askForFound, type Answer } from '../../live/recorded.ts';

/** What was found so far, page after page, for the newest question. */
export interface Found {
  /** Null until the first answer; the last one stays until the next has come. */
  readonly answer: Accessor<Answer<SessionsFound> | null>;
  readonly more: () => void;
  readonly again: () => void;
}

/** Asks one question at a time: while one is under way only the newest of those typed meanwhile waits. */
export function createFound(questionFrom: (skip: number) => string): Found {
  const [answer, setAnswer] = createSignal<Answer<SessionsFound> | null>(null);
  let asking = false;
  let stale = false;
  let over = false;
  onCleanup(() => {
    over = true;
  });
  const ask = async (): Promise<void> => {
    if (asking) {
      stale = true;
      return;
    }
    asking = true;
    do {
      stale = false;
      const next = await askForFound(questionFrom(0));
      if (over) return;
      if (!stale) setAnswer(next);
    } while (stale);
    asking = false;
  };
  const more = async (): Promise<void> => {
    const before = answer();
    if (before?.kind !== 'answer' || asking) return;
    const asked = questionFrom(0);
    const next = await askForFound(questionFrom(before.value.sessions.length));
    if (over || asked !== questionFrom(0)) return;
    setAnswer(next.kind === 'answer' ? { kind: 'answer', value: { ...next.value, sessions: [...before.value.sessions, ...next.value.sessions] } } : next);
  };
  createEffect(on(() => questionFrom(0), () => void ask()));
  return { answer, more: () => void more(), again: () => void ask() };
}
