import { rememberSetting } from '../asked-for.ts';
import type { RecordingModel } from './recording-model.ts';
import { onceItRests } from './rests.ts';

/** The place of the log that the address names; null without one, or for what is none. */
export function placeAskedFor(setting: string): number | null {
  const asked = Number(new URLSearchParams(location.search).get(setting) ?? Number.NaN);
  return Number.isInteger(asked) && asked > 0 ? asked : null;
}

/** The address says where a paused playhead stands, so that a link opens there. */
export function rememberPlace(setting: string, { state, view }: RecordingModel): void {
  onceItRests(() => (state().playhead.mode === 'following' ? null : view().place), (place) => {
    if (state().playhead.mode !== 'playing') rememberSetting(setting, place === null ? null : String(place));
  });
}
