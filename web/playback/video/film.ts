import { createEffect, createSignal, on, onCleanup, type Accessor } from 'solid-js';
import { frameAt, frameFromRelease, frameTimesOf, fromReleaseS, type FrameTimes } from './frames.ts';
import { dropVideo, keepVideo, videoOf, type StoredVideo } from './stored-videos.ts';

type Trouble = 'unreadable' | 'unplayable' | 'not-kept';

/** The video beside one throw, and the frame of it that is shown. */
export interface Film {
  /** Undefined while it is looked for, null where there is none. */
  readonly stored: Accessor<StoredVideo | null | undefined>;
  /** Null until its frames were read. */
  readonly times: Accessor<FrameTimes | null>;
  readonly frame: Accessor<number>;
  readonly trouble: Accessor<Trouble | null>;
  readonly goTo: (frame: number) => void;
  /** Real seconds from release to what is shown; null where release is not set. */
  readonly fromReleaseS: Accessor<number | null>;
  readonly goFromRelease: (realS: number) => void;
  readonly choose: (file: File) => Promise<void>;
  readonly setRelease: () => Promise<void>;
  readonly setFilmed: (fps: number | null) => Promise<void>;
  readonly remove: () => Promise<void>;
  readonly cannotPlay: () => void;
}

/** Follows whichever throw is named; a throw's film opens at its release. @param onKept what lies beside which throw has changed */
export function createFilm(session: string, place: Accessor<number | null>, onKept: () => void): Film {
  const [stored, setStored] = createSignal<StoredVideo | null | undefined>();
  const [times, setTimes] = createSignal<FrameTimes | null>(null);
  const [frame, setFrame] = createSignal(0);
  const [trouble, setTrouble] = createSignal<Trouble | null>(null);
  let over = false;
  onCleanup(() => {
    over = true;
  });

  const show = async (of: number | null): Promise<void> => {
    setStored();
    setTimes(null);
    setFrame(0);
    setTrouble(null);
    const found = of === null ? undefined : await videoOf(session, of).catch(() => undefined);
    if (over || place() !== of) return;
    setStored(found ?? null);
    if (found === undefined) return;
    const read = await frameTimesOf(found.file);
    if (over || place() !== of || stored() !== found) return;
    setTimes(read);
    setTrouble(read.length === 0 ? 'unreadable' : null);
    setFrame(found.releaseS === null ? 0 : frameAt(read, found.releaseS));
  };
  createEffect(on(place, (of) => void show(of)));

  /** What is shown goes on being shown, also where the browser does not keep it. */
  const keep = async (video: StoredVideo): Promise<void> => {
    const of = place();
    if (of === null) return;
    const kept = await keepVideo(session, of, video).then(() => true, () => false);
    if (!kept) setTrouble('not-kept');
    onKept();
  };
  const change = async (part: Partial<StoredVideo>): Promise<void> => {
    const now = stored();
    if (now === null || now === undefined) return;
    setStored({ ...now, ...part });
    await keep({ ...now, ...part });
  };
  return {
    stored, times, frame, trouble,
    goTo: (wanted) => setFrame(Math.min(Math.max(0, wanted), Math.max(0, (times()?.length ?? 1) - 1))),
    fromReleaseS: () => {
      const [read, now] = [times(), stored()];
      return read === null || now === null || now === undefined ? null : fromReleaseS(read, frame(), now);
    },
    goFromRelease: (realS) => {
      const [read, releaseS] = [times(), stored()?.releaseS ?? null];
      if (read !== null && releaseS !== null) setFrame(frameFromRelease(read, realS, { releaseS, filmedFps: stored()!.filmedFps }));
    },
    async choose(file) {
      const of = place();
      const read = await frameTimesOf(file);
      if (over || of !== place()) return;
      if (read.length === 0) {
        setTrouble('unreadable');
        return;
      }
      setTrouble(null);
      setStored({ file, releaseS: null, filmedFps: null });
      setTimes(read);
      setFrame(0);
      await keep({ file, releaseS: null, filmedFps: null });
    },
    setRelease: () => change({ releaseS: times()?.[frame()] ?? null }),
    setFilmed: (filmedFps) => change({ filmedFps }),
    async remove() {
      const of = place();
      if (of === null) return;
      await dropVideo(session, of).catch(() => {});
      onKept();
      await show(of);
    },
    cannotPlay: () => setTrouble('unplayable'),
  };
}

/** A step of one film; the other goes along, from its own release where both have one. */
export function stepTogether(film: Film, other: Film | null, by: 1 | -1): void {
  film.goTo(film.frame() + by);
  if (other === null || other.times() === null) return;
  const realS = film.fromReleaseS();
  if (realS === null || other.fromReleaseS() === null) other.goTo(other.frame() + by);
  else other.goFromRelease(realS);
}
