import type { ThrowBody } from '../core/facts/frames.ts';
import type { DeviceClient, RecordedFrame } from '../device/client.ts';
import { faultOfNext, type Fault } from './faults.ts';
import { misread } from './misread.ts';
import type { Random } from './random.ts';

const SILENCE_MS = 8_000;

interface DeliveryOptions {
  readonly client: Pick<DeviceClient, 'record' | 'repeat' | 'drop' | 'fallSilent'>;
  readonly faults: readonly Fault[];
  readonly random: Random;
  readonly print: (line: string) => void;
}

/** Numbers the throws of one device and hands them to its client, well or, on request, badly. */
export interface Delivery {
  /** Returns the number of the throw. */
  deliver(timeMs: number, body: ThrowBody): number;
  /** Hands over whatever is still held back. */
  finish(): void;
  /** Frames handed over so far: each becomes at most one fact. */
  readonly handedOver: number;
}

export function deliveryBy({ client, faults, random, print }: DeliveryOptions): Delivery {
  let sequence = 0;
  let handedOver = 0;
  let heldBack: (() => void)[] = [];
  const next = (): number => (sequence += 1);
  const hand = (frame: RecordedFrame): void => {
    handedOver += 1;
    client.record(frame);
  };
  const finish = (): void => {
    const before = heldBack;
    heldBack = [];
    for (const handOver of before) handOver();
  };

  const deliver = (timeMs: number, body: ThrowBody): number => {
    const number = next();
    const fault = faultOfNext(faults, random);
    const frame = (what: ThrowBody): RecordedFrame => ({ kind: 'throw', sequence: number, time: timeMs, body: what });
    if (fault !== null) print(`device: fault ${fault} at throw ${number}`);
    const fromBefore = heldBack;
    heldBack = [];
    switch (fault) {
      case null:
        hand(frame(body));
        break;
      case 'dropped':
        hand(frame(body));
        client.drop();
        break;
      case 'repeated':
        hand(frame(body));
        client.repeat(number);
        break;
      case 'late':
        heldBack.push(() => hand(frame(body)));
        break;
      case 'corrected':
        hand(frame(misread(body, random)));
        heldBack.push(() => hand({ kind: 'correction', sequence: next(), time: timeMs, corrects: { sequence: number }, reason: 'measured again from the recording', body }));
        break;
      case 'misread':
        hand(frame(misread(body, random)));
        break;
      case 'silent':
        client.fallSilent(SILENCE_MS);
        hand(frame(body));
        break;
    }
    for (const handOver of fromBefore) handOver();
    return number;
  };
  return { deliver, finish, get handedOver() { return handedOver; } };
}
