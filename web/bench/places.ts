import { createSignal, onCleanup, type Accessor } from 'solid-js';

/** The places of Bench. A narrow screen shows one of them, a tablet the throws and one more, a wide one the throws, the target and one more. */
const PLACES = ['throws', 'target', 'trial', 'session'] as const;
/** In a closed session nothing can begin any more: no trial. */
const PLACES_CLOSED = ['throws', 'target', 'session'] as const;
export type Place = (typeof PLACES)[number];
export type Columns = 1 | 2 | 3;

/** What can be chosen where so many columns fit: what is always there needs no choosing. */
export function placesIn(columns: Columns, closed: boolean): readonly Place[] {
  return (closed ? PLACES_CLOSED : PLACES).slice(columns - 1);
}

/** Of the places to choose from, the one that shows for the one that was chosen: one that is there anyway gives its room to the next. */
export function placeIn(places: readonly Place[], chosen: Place): Place {
  return places.includes(chosen) ? chosen : places[0]!;
}

/** Every place that shows beside the chosen one. */
export function shownIn(columns: Columns, place: Place): readonly Place[] {
  return [...PLACES.slice(0, columns - 1), place];
}

/** How many columns fit this screen; the style sheet uses the same two widths. */
export function useColumns(): Accessor<Columns> {
  const two = matchMedia('(min-width: 47rem)');
  const three = matchMedia('(min-width: 74rem)');
  const fit = (): Columns => (three.matches ? 3 : two.matches ? 2 : 1);
  const [columns, setColumns] = createSignal(fit());
  const look = () => setColumns(fit());
  for (const width of [two, three]) {
    width.addEventListener('change', look);
    onCleanup(() => width.removeEventListener('change', look));
  }
  return columns;
}
