import type { CoachSays } from '../../core/facts/coach.ts';
import type { SayReply } from '../../core/facts/wire.ts';
import { connect } from './connection.ts';

/** Says one thing to a mound that this screen does not watch. */
export async function sayOnce(mound: string, session: string, says: CoachSays): Promise<SayReply> {
  const connection = connect(mound, session, {});
  try {
    return await connection.say(says);
  } finally {
    connection.close();
  }
}
