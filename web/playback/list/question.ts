import type { Criterion } from '../../../core/facts/session-search.ts';
import type { Words } from '../../words/words.ts';

/** What is looked for, as it is typed; an empty text asks nothing. */
export type Typed = Readonly<Record<Criterion, string>>;

export const FIELDS = ['athlete', 'from', 'to', 'stage', 'trial', 'note'] as const satisfies readonly Criterion[];

/** What the address of the list asks for. */
export function typedIn(search: string): Typed {
  const query = new URLSearchParams(search);
  return Object.fromEntries(FIELDS.map((field) => [field, query.get(field) ?? ''])) as unknown as Typed;
}

/** The same address with what is typed now. */
export function withTyped(search: string, typed: Typed): string {
  const query = new URLSearchParams(search);
  for (const field of FIELDS) {
    if (typed[field] === '') query.delete(field);
    else query.set(field, typed[field]);
  }
  return query.size === 0 ? '' : `?${query}`;
}

/** Every setting of the screen, without what was looked for. */
export function settingsOnly(search: string): string {
  return withTyped(search, typedIn(''));
}

/** What the server is asked. It knows grips by their names in facts: words of the viewer's language are turned into those. */
export function questionOf(typed: Typed, skip: number, words: Words): string {
  const question = new URLSearchParams({ skip: String(skip) });
  for (const field of FIELDS) {
    const text = typed[field].trim();
    if (text !== '') question.set(field, field === 'trial' ? inFactWords(text, words) : text);
  }
  return `?${question}`;
}

function inFactWords(text: string, { bench: { trial }, trade, plan }: Words): string {
  const named = [trial.seam, trial.spreads, trial.finger, trial.depths, plan.families.family, trade.intent].flatMap((all) => Object.entries<string>(all));
  const longestFirst = named.sort(([, a], [, b]) => b.length - a.length);
  return longestFirst.reduce((said, [fact, spoken]) => said.replaceAll(spoken.toLowerCase(), fact), text.toLowerCase());
}
