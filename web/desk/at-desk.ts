import type { Accessor } from 'solid-js';
import type { MoundView } from '../../core/facts/views.ts';
import type { LiveMound } from '../live/use-mound.ts';
import type { Desk } from './desk.ts';
import { createLastActs } from './last-acts.ts';
import { createSaying } from './saying.ts';

/** The desk of a mound: what is said at it is answered in its corner, and noted, so that it can be taken back. */
export function createDesk(mound: string, view: Accessor<MoundView>, live: Pick<LiveMound, 'say'>): Desk {
  const saying = createSaying(live.say);
  let newestOwn = 0;
  const own: Desk['say'] = async (corner, says) => {
    const place = await saying.say(corner, says);
    newestOwn = Math.max(newestOwn, place ?? 0);
    return place;
  };
  const lastActs = createLastActs(mound, view, (says) => own('acts', says));
  /** The view, if it holds all that was said here; else nobody knows what will have stood before. */
  const before = () => (saying.underway() || view().place < newestOwn ? null : view());
  const sayAfter = async (...[corner, says, stood]: [...Parameters<Desk['say']>, MoundView | null]) => {
    const place = await own(corner, says);
    if (place !== null) lastActs.noted(says, stood, place);
    return place;
  };
  return {
    mound, view, lastActs,
    session: () => view().session,
    say: (corner, says) => sayAfter(corner, says, before()),
    async sayAll(corner, all) {
      const stood = before();
      // oxlint-disable-next-line no-await-in-loop -- each is said once the one before it is on disk
      for (const says of all) if ((await sayAfter(corner, says, stood)) === null) return;
    },
    waiting: saying.waiting, refusal: saying.refusal, dismiss: saying.dismiss, unsent: saying.unsent, again: saying.again,
  };
}
