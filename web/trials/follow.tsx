import { createEffect, createMemo } from 'solid-js';
import { useMound } from '../live/use-mound.ts';
import { StandingWord } from '../standing/frame.tsx';
import { standingOf, type Standing } from '../standing/standing.ts';
import type { FoldedSession } from './record.ts';

/** Keeps an open session up to date, and says how what is shown of it relates to now. One question at a time. */
export function Follow(props: { readonly session: FoldedSession; readonly refresh: (session: string) => Promise<void>; readonly tell: (standing: Standing) => void }) {
  const { recorded, entry } = props.session;
  const live = useMound(recorded.mound, recorded.session);
  let known = recorded.place;
  let wanted = known;
  let asking = false;
  const askAgain = async (): Promise<void> => {
    asking = true;
    while (known < wanted) {
      const asked = wanted;
      await props.refresh(recorded.session);
      known = asked;
    }
    asking = false;
  };
  createEffect(() => {
    wanted = live.view()?.place ?? wanted;
    if (wanted > known && !asking) void askAgain();
  });
  const standing = createMemo(() => standingOf(live.view(), live.link()));
  createEffect(() => props.tell(standing()));
  return <StandingWord standing={standing()} timeZone={entry.timeZone} />;
}
