import type { Field } from './fields.ts';
import type { ImportChoices, Layout } from './layout.ts';

export type LayoutLack = 'no-speed' | 'no-day' | 'no-athlete' | 'body-and-columns';

/** What is still missing before rows can be read; null when nothing is. */
export function lacks({ columns }: { readonly columns: readonly Pick<Layout['columns'][number], 'field'>[] }, { athlete, day }: Pick<ImportChoices, 'athlete' | 'day'>): LayoutLack | null {
  const has = (field: Field): boolean => columns.some((column) => column.field === field);
  const shapes = [has('releaseSpeed'), has('path'), has('body')].filter(Boolean).length;
  if (shapes === 0) return 'no-speed';
  if (has('body') && shapes > 1) return 'body-and-columns';
  if (!has('moment') && !has('date') && day === null) return 'no-day';
  if (!has('athlete') && athlete === null) return 'no-athlete';
  return null;
}
