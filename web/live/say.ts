import type { Socket } from 'socket.io-client';
import type { CoachSays } from '../../core/facts/coach.ts';
import type { SayReply, SayRequest } from '../../core/facts/wire.ts';
import { freshId } from './fresh-id.ts';

const ANSWER_WITHIN_MS = 4000;
const ASK_TIMES = 3;

/** Code of the refusal that a screen gives itself when the server does not answer. */
export const NO_ANSWER = 'no-answer';

/** Says it until it is answered: the request keeps its name, so that it is stored once however often it is asked. */
export async function sayTo(socket: Socket, mound: string, says: CoachSays, name = freshId()): Promise<SayReply> {
  const request: SayRequest = { request: name, mound, says };
  for (let asked = 0; asked < ASK_TIMES; asked += 1) {
    const reply = await socket.timeout(ANSWER_WITHIN_MS).emitWithAck('say', request).catch(() => null) as SayReply | null;
    if (reply !== null) return reply;
  }
  return { kind: 'refused', code: NO_ANSWER, path: '', sentence: 'The server did not answer; nothing is known to be stored. Check the connection and say it again.' };
}
