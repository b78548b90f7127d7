import type { Socket } from 'node:net';
import { connect, type IPublishPacket } from 'mqtt';
import { AdapterFailure, type Answer, type Forwarder } from './forward.ts';
import { readMessage } from './message.ts';

export interface MqttOptions {
  /** Such as mqtt://127.0.0.1:1883, or mqtts:// where it is encrypted. */
  readonly broker: string;
  /** What the device publishes to; the answers go to the same with /answers behind it. */
  readonly topic: string;
  /** The same for ever: by it the broker knows what it still has to deliver. */
  readonly clientId: string;
  readonly username?: string;
  readonly password?: string;
}

/** For the kernel to ask whether the broker is still there. */
const ASK_AFTER_MS = 30_000;

/**
 * Takes frames from an MQTT topic until it is told to stop. A frame is acknowledged to the broker once the device door has answered
 * it, so what comes while the server or this program is away stays with the broker and comes in its order.
 * @throws {AdapterFailure} when broker or door will not have it
 */
export async function fromMqtt({ broker, topic, clientId, username, password }: MqttOptions, forwarder: Forwarder, print: (line: string) => void, stop: AbortSignal): Promise<void> {
  const client = connect(broker, {
    clientId, clean: false, reconnectPeriod: 1000,
    // Its own pings would go unread while a frame waits for the server; the kernel asks instead.
    keepalive: 0,
    ...(username === undefined ? {} : { username }), ...(password === undefined ? {} : { password }),
  });
  const ended = new Promise<void>((resolve, reject) => {
    if (stop.aborted) resolve();
    stop.addEventListener('abort', () => resolve(), { once: true });
    client.on('error', ({ message, code }: Error & { readonly code?: unknown }) => {
      // A number is the broker's own reason for not letting anybody in; everything else mends itself.
      if (typeof code === 'number') reject(new AdapterFailure(`The broker ${broker} refuses this adapter (${message}); check username and password.`));
      else print(`adapter: no connection to ${broker} (${message}); trying again`);
    });
    client.on('connect', () => {
      (client.stream as unknown as Socket).setKeepAlive?.(true, ASK_AFTER_MS);
      client.subscribe(topic, { qos: 1 }, (error, granted) => {
        if (error !== null || granted?.[0]?.qos === 128) reject(new AdapterFailure(`The broker ${broker} does not let this adapter read ${topic}; give it that right.`));
        else print(`adapter: reads ${topic} at ${broker}`);
      });
    });
    // Where the line to the broker breaks, it delivers again what still waits for its answer here: one after the other.
    let before: Promise<unknown> = Promise.resolve();
    client.handleMessage = (packet, acknowledge) => {
      before = before.then(() => take(packet)).then((isAnswered) => isAnswered && acknowledge(), reject);
    };
  });

  async function take({ payload }: IPublishPacket): Promise<boolean> {
    const message = readMessage(payload.toString());
    switch (message.kind) {
      case 'heartbeat':
        forwarder.heartbeat(message.run, message.time);
        return true;
      case 'refused':
        tell({ ...message, sequence: null });
        return true;
      case 'frame': {
        const answer: Answer | null = await forwarder.forward(message.run, message.frame);
        if (answer !== null) tell({ run: message.run, sequence: message.frame.sequence, ...answer });
        return answer !== null;
      }
    }
  }

  /** Not waited for: the broker's word on it would come behind the frame that is being answered. */
  function tell(answer: object): void {
    client.publish(`${topic}/answers`, JSON.stringify(answer), { qos: 1 });
  }

  try {
    await ended;
  } finally {
    forwarder.close();
    await client.endAsync(true);
  }
}
