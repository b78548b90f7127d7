import { createSignal, type Accessor } from 'solid-js';
import type { ThrowView } from '../../../core/facts/views.ts';

/** What the dock opens above its row of acts, one at a time. */
export const SHEETS = ['trial', 'throw', 'arm', 'note', 'acts'] as const;
export type Sheet = (typeof SHEETS)[number];

/** The sheet that is open, and what stays of it while it is closed. */
export interface OpenSheet {
  readonly sheet: Accessor<Sheet | null>;
  readonly toggle: (sheet: Sheet) => void;
  readonly close: () => void;
  /** The throw that was the newest when the sheet was opened: another that comes in does not slip under the thumb. */
  readonly held: Accessor<ThrowView | null>;
  /** The newest throw, where the sheet holds an older one. */
  readonly newer: Accessor<ThrowView | null>;
  readonly holdNewest: () => void;
  /** A note that is being typed; it stays when the sheet is closed, and when what was typed did not reach the server. */
  readonly note: Accessor<string>;
  readonly setNote: (text: string) => void;
}

export function createOpenSheet(throws: Accessor<readonly ThrowView[]>): OpenSheet {
  const [sheet, setSheet] = createSignal<Sheet | null>(null);
  const [place, setPlace] = createSignal<number | null>(null);
  const [note, setNote] = createSignal('');
  const newest = () => throws().at(-1) ?? null;
  const held = () => throws().find((thrown) => thrown.place === place()) ?? newest();
  return {
    sheet,
    toggle: (wanted) => {
      setPlace(newest()?.place ?? null);
      setSheet((open) => (open === wanted ? null : wanted));
    },
    close: () => setSheet(null),
    held,
    newer: () => (newest()?.place === held()?.place ? null : newest()),
    holdNewest: () => setPlace(newest()?.place ?? null),
    note,
    setNote,
  };
}
