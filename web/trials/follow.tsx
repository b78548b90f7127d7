import { createEffect, createMemo } from 'solid-js';
import { followPlace } from '../live/follow-place.ts';
import { useMound } from '../live/use-mound.ts';
import { StandingWord } from '../standing/frame.tsx';
import { standingOf, type Standing } from '../standing/standing.ts';
import type { FoldedSession } from './record.ts';

/** Keeps an open session up to date, and says how what is shown of it relates to now. */
export function Follow(props: { readonly session: FoldedSession; readonly refresh: (session: string) => Promise<void>; readonly tell: (standing: Standing) => void }) {
  const { recorded, entry } = props.session;
  const live = useMound(recorded.mound, recorded.session);
  followPlace(live.view, recorded.place, async () => {
    await props.refresh(recorded.session);
    return true;
  });
  const standing = createMemo(() => standingOf(live.view(), live.link()));
  createEffect(() => props.tell(standing()));
  return <StandingWord standing={standing()} timeZone={entry.timeZone} />;
}
