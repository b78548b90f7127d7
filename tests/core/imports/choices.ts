import type { Athlete } from '../../../core/facts/coach.ts';
import type { Field, Side } from '../../../core/imports/fields.ts';
import type { ImportChoices, Layout } from '../../../core/imports/layout.ts';

export const ABLE: Athlete = { id: 'able-1', name: 'Invented Able', hand: 'right', birthYear: 2001, mainFastball: 'four-seam', units: 'imperial', language: 'en' };
export const PENA: Athlete = { ...ABLE, id: 'pena-2', name: 'Inventada Peña', hand: 'left', language: 'es' };

/** What a coach chooses for a file; the athlete once for all rows. */
export const CHOICES: ImportChoices = {
  athlete: ABLE, athletes: {}, intents: {}, mound: 'north-1', stage: 'mound', distanceM: 18.44, effort: 'full', timeZone: 'America/Chicago', day: '2024-05-03', device: 'file', sight: 'full-flight', axis: 'none',
};

/** A layout by hand: each column is its field, its unit and where it is positive. */
export function layoutOf(columns: readonly (readonly [field: Field | null, unit?: string, towards?: Side])[], more: Partial<Layout> = {}): Layout {
  return {
    form: 'separated', separator: ',', decimal: '.', ...more,
    columns: columns.map(([field, unit, towards], index) => ({ header: field ?? `unread ${index}`, field, unit: unit ?? null, towards: towards ?? null })),
  };
}
