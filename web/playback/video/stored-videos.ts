import { createStore, del, get, keys, set, type UseStore } from 'idb-keyval';

/** A video beside a throw, as this browser keeps it. It never leaves it. */
export interface StoredVideo {
  readonly file: File;
  /** On the clock of the file, in seconds; null until somebody has said which frame it is. */
  readonly releaseS: number | null;
  /** Frames a second of the camera, where the file plays slower than it was filmed; null where it plays as it was. */
  readonly filmedFps: number | null;
}

let store: UseStore | null = null;
const videos = (): UseStore => (store ??= createStore('offpace-videos', 'by-throw'));
const nameOf = (session: string, place: number): string => `${session} ${place}`;

export function videoOf(session: string, place: number): Promise<StoredVideo | undefined> {
  return get<StoredVideo>(nameOf(session, place), videos());
}

/** Replaces what lay there. Rejects where the browser has no room or keeps nothing. */
export async function keepVideo(session: string, place: number, video: StoredVideo): Promise<void> {
  await set(nameOf(session, place), video, videos());
}

export async function dropVideo(session: string, place: number): Promise<void> {
  await del(nameOf(session, place), videos());
}

/** The throws of a session beside which a video lies. */
export async function placesWithVideo(session: string): Promise<number[]> {
  const names = await keys<string>(videos());
  return names.filter((name) => name.startsWith(`${session} `)).map((name) => Number(name.slice(session.length + 1))).sort((a, b) => a - b);
}
