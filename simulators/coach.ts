import { io, type Socket } from 'socket.io-client';
import type { CoachSays } from '../core/facts/coach.ts';
import type { MoundHead } from '../core/facts/views.ts';
import { withDifferences } from '../core/session/difference.ts';
import type { SayReply, SayRequest, ViewMessage, WatchReply, WatchRequest } from '../core/facts/wire.ts';

/** What a coach's tablet offers: the mound as it is, and saying something about it. */
export interface Tablet {
  /** Null until the server has answered for the first time. */
  readonly head: MoundHead | null;
  /** Says something; a server that does not answer is a refusal with the code `no-answer`. */
  say(says: CoachSays): Promise<SayReply>;
  /** Calls at every new head until called off. */
  onHead(then: (head: MoundHead) => void): () => void;
  close(): void;
}

interface FromServer {
  view: (message: ViewMessage) => void;
}
interface ToServer {
  watch: (request: WatchRequest, answer: (reply: WatchReply) => void) => void;
  say: (request: SayRequest, answer: (reply: SayReply) => void) => void;
}

const ANSWER_WITHIN_MS = 2_000;

/**
 * Connects as the Bench does. `name` has to be new for every start: it begins the name of each request, and a request said
 * twice is stored once.
 */
export function openTablet(address: string, mound: string, name: string, print: (line: string) => void): Tablet {
  const socket: Socket<FromServer, ToServer> = io(address);
  const listeners = new Set<(head: MoundHead) => void>();
  let head: MoundHead | null = null;
  let requests = 0;

  socket.on('connect', () => {
    socket.emit('watch', { mound, session: null, place: null, log: null }, (reply) => {
      if (reply.kind === 'refused') print(`coach: cannot watch ${mound}: ${reply.sentence}`);
    });
  });
  socket.on('view', (message) => {
    if (message.kind === 'snapshot') head = message.view;
    else if (head?.place === message.from) head = withDifferences(head, message.head);
    else return;
    for (const listener of listeners) listener(head);
  });

  return {
    get head() {
      return head;
    },
    async say(says) {
      requests += 1;
      try {
        return await socket.timeout(ANSWER_WITHIN_MS).emitWithAck('say', { request: `${name}-say-${requests}`, mound, says });
      } catch {
        return { kind: 'refused', code: 'no-answer', path: '', sentence: 'the server does not answer the coach' };
      }
    },
    onHead(then) {
      listeners.add(then);
      return () => listeners.delete(then);
    },
    close: () => void socket.close(),
  };
}
