import { LARGEST_FRAME_BYTES } from '../core/facts/frames.ts';
import { idSchema } from '../core/facts/spelling.ts';
import type { RecordedFrame } from '../device/client.ts';

/** What comes from a device by way of an adapter: a frame of the device protocol, with the run it belongs to beside it. */
export type Message =
  | { readonly kind: 'frame'; readonly run: string; readonly frame: RecordedFrame }
  | { readonly kind: 'heartbeat'; readonly run: string; readonly time: number }
  | NotTaken;

/** Something that cannot even be brought to the device door. */
interface NotTaken {
  readonly kind: 'refused';
  readonly code: 'not-json' | 'too-large' | 'malformed';
  readonly path: string;
  readonly sentence: string;
}

/** Reads one message as far as it has to be understood to be sent and answered; everything else is the door's to judge. */
export function readMessage(text: string): Message {
  if (Buffer.byteLength(text) > LARGEST_FRAME_BYTES) return refused('too-large', '', `The message is larger than ${LARGEST_FRAME_BYTES} bytes; send fewer digits or fewer samples.`);
  const value = parsed(text);
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return refused('not-json', '', 'The message is not JSON; send one JSON object in each.');
  const { run, ...frame } = value as Record<string, unknown>;
  const named = idSchema.safeParse(run);
  if (!named.success) return refused('malformed', 'run', 'The field run must name the life of the counter that sequence counts in: 1 to 64 letters, digits, dashes, dots or underscores.');
  const { kind, sequence, time } = frame;
  if (kind === 'heartbeat') return typeof time === 'number' ? { kind, run: named.data, time } : refused('malformed', 'time', 'The field time must be a number: milliseconds on the clock of the device.');
  if (kind !== 'throw' && kind !== 'correction') return refused('malformed', 'kind', 'The field kind must be "throw", "correction" or "heartbeat".');
  if (!Number.isSafeInteger(sequence) || (sequence as number) < 1) return refused('malformed', 'sequence', 'The field sequence must be a whole number from 1 on, without reuse in this run.');
  return { kind: 'frame', run: named.data, frame: frame as unknown as RecordedFrame };
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

function refused(code: NotTaken['code'], path: string, sentence: string): NotTaken {
  return { kind: 'refused', code, path, sentence };
}
