import { pino, type DestinationStream, type Logger } from 'pino';

/**
 * What the running server writes about itself, one JSON line an event. No line holds an athlete: neither facts nor addresses nor
 * frames go into it, and an error goes in by what it is and where it arose.
 */
export function openDiary(level: 'info' | 'silent', to: DestinationStream = pino.destination(1)): Logger {
  return pino({ level, base: null, serializers: { err: withoutPersons } }, to);
}

/**
 * Messages that we or the disk's library or the system wrote are kept. Those of the engine and of schemas are left out, because
 * they quote what they stumbled over: a name in the middle of a frame.
 */
function withoutPersons(error: unknown): Record<string, unknown> {
  if (!(error instanceof Error)) return { type: typeof error };
  const { code, syscall } = error as NodeJS.ErrnoException;
  const own = error.constructor === Error || syscall !== undefined || code?.startsWith('SQLITE_') === true;
  const frames = (error.stack ?? '').split('\n').filter((line) => /^\s+at /.test(line)).map((line) => line.trim());
  return { type: error.name, ...(code === undefined ? {} : { code }), ...(own ? { message: error.message } : {}), stack: frames };
}
