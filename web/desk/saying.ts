import { createStore } from 'solid-js/store';
import type { CoachSays } from '../../core/facts/coach.ts';
import type { Refusal, SayReply } from '../../core/facts/wire.ts';
import type { Corner, Desk } from './desk.ts';

interface Said {
  readonly waiting: number;
  readonly refusal: Refusal | null;
}
const NOTHING: Said = { waiting: 0, refusal: null };

/** Keeps, for each corner, how many statements wait for the server and what it refused last. */
export function createSaying(send: (says: CoachSays) => Promise<SayReply>): Pick<Desk, 'say' | 'sayAll' | 'waiting' | 'refusal' | 'dismiss'> {
  const [said, setSaid] = createStore<Partial<Record<Corner, Said>>>({});
  const of = (corner: Corner): Said => said[corner] ?? NOTHING;

  const say: Desk['say'] = async (corner, says) => {
    setSaid(corner, { waiting: of(corner).waiting + 1, refusal: null });
    const reply = await send(says);
    setSaid(corner, { waiting: of(corner).waiting - 1, refusal: reply.kind === 'refused' ? reply : of(corner).refusal });
    return reply.kind === 'stored' ? reply.place : null;
  };

  const sayAll: Desk['sayAll'] = async (corner, all) => {
    for (const says of all) if ((await say(corner, says)) === null) return;
  };

  return {
    say, sayAll,
    waiting: (corner) => of(corner).waiting > 0,
    refusal: (corner) => of(corner).refusal,
    dismiss: (corner) => setSaid(corner, { ...of(corner), refusal: null }),
  };
}
