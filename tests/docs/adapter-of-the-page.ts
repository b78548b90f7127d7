import { createInterface } from 'node:readline';
import type { Duplex } from 'node:stream';
import type { Forwarder } from '../../adapters/forward.ts';
import { readMessage } from '../../adapters/message.ts';

/** Takes one message a line from a stream until it ends, and answers each frame with a line. */
export async function fromLines(stream: Duplex, forwarder: Forwarder): Promise<void> {
  for await (const line of createInterface({ input: stream })) {
    const message = readMessage(line);
    if (message.kind === 'heartbeat') {
      forwarder.heartbeat(message.run, message.time);
      continue;
    }
    const answer = message.kind === 'frame' ? await forwarder.forward(message.run, message.frame) : message;
    if (answer === null) return;
    stream.write(`${JSON.stringify(answer)}\n`);
  }
}
