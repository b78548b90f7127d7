import { createStore } from 'solid-js/store';
import type { CoachSays } from '../../core/facts/coach.ts';
import type { Refusal, SayReply } from '../../core/facts/wire.ts';
import { freshId } from '../live/fresh-id.ts';
import { NO_ANSWER } from '../live/say.ts';
import type { Corner, Desk, Unsent } from './desk.ts';

interface Said {
  readonly waiting: number;
  readonly refusal: Refusal | null;
  /** What got no answer, the oldest first; each still waits to be sent again or let go. */
  readonly unsent: readonly Unsent[];
}
const NOTHING: Said = { waiting: 0, refusal: null, unsent: [] };

/** Keeps, for each corner, how many statements wait for the server, what it refused last, and what never reached it. */
export function createSaying(send: (says: CoachSays, request: string) => Promise<SayReply>): Pick<Desk, 'say' | 'waiting' | 'refusal' | 'dismiss' | 'unsent' | 'again'> & { readonly underway: () => boolean } {
  const [said, setSaid] = createStore<Partial<Record<Corner, Said>>>({});
  const of = (corner: Corner): Said => said[corner] ?? NOTHING;
  const all = (): readonly Said[] => Object.values(said);

  /** The request keeps its name however often it is sent, so it is stored once. */
  const ask = async (corner: Corner, one: Omit<Unsent, 'corner'>): Promise<void> => {
    setSaid(corner, { ...of(corner), waiting: of(corner).waiting + 1, refusal: null });
    const reply = await send(one.says, one.request);
    const lost = reply.kind === 'refused' && reply.code === NO_ANSWER;
    setSaid(corner, {
      waiting: of(corner).waiting - 1,
      refusal: reply.kind === 'refused' ? reply : of(corner).refusal,
      unsent: lost ? [...of(corner).unsent, { ...one, corner }] : of(corner).unsent,
    });
    if (!lost) one.answered(reply.kind === 'stored' ? reply.place : null);
  };

  return {
    say: (corner, says) => new Promise((answered) => { void ask(corner, { says, request: freshId(), answered }); }),
    waiting: (corner) => of(corner).waiting > 0,
    refusal: (corner) => of(corner).refusal,
    dismiss(corner) {
      const gone = of(corner).unsent;
      setSaid(corner, { ...of(corner), refusal: null, unsent: [] });
      for (const { answered } of gone) answered(null);
    },
    unsent: () => all().flatMap(({ unsent }) => unsent),
    async again(corner) {
      const sent = of(corner).unsent;
      setSaid(corner, { ...of(corner), refusal: null, unsent: [] });
      // oxlint-disable-next-line no-await-in-loop -- in the order in which they were said
      for (const { says, request, answered } of sent) await ask(corner, { says, request, answered });
    },
    underway: () => all().some(({ waiting, unsent }) => waiting > 0 || unsent.length > 0),
  };
}
