import { rememberSetting } from '../asked-for.ts';
import type { RecordingModel } from './recording-model.ts';
import { onceItRests } from './rests.ts';

/** The place of the log that the address names; null without one, or for what is none. */
export function placeAskedFor(setting: string): number | null {
  const asked = Number(new URLSearchParams(location.search).get(setting) ?? Number.NaN);
  return Number.isInteger(asked) && asked > 0 ? asked : null;
}

/** Everything in the address that is about one session, or two: the list keeps none of it. */
const OF_SESSIONS = ['throw', 'against', 'panel', 'beside', 'beside-throw', 'over'];

/** The list of sessions, with the settings of this screen. */
export function listAddress(): string {
  const query = new URLSearchParams(location.search);
  for (const own of OF_SESSIONS) query.delete(own);
  return `/playback${query.size === 0 ? '' : `?${query}`}`;
}

/** The address says where a paused playhead stands, so that a link opens there. */
export function rememberPlace(setting: string, { state, view }: RecordingModel): void {
  onceItRests(() => (state().playhead.mode === 'following' ? null : view().place), (place) => {
    if (state().playhead.mode !== 'playing') rememberSetting(setting, place === null ? null : String(place));
  });
}
