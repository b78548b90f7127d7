import { deviceFrameSchema, helloSchema, LARGEST_FRAME_BYTES, PROTOCOL_VERSION, type DeviceFrame, type Hello, type RefusalCode } from '../../core/facts/frames.ts';
import { complaint } from '../complaint.ts';

/** Why a frame is not taken. `final` says that its number, when it has one, shall never come again. */
export interface FrameRefusal {
  readonly kind: 'refusal';
  readonly code: RefusalCode;
  readonly path: string;
  readonly sentence: string;
  readonly sequence: number | null;
  readonly final: boolean;
}

/** A frame as JSON, not yet checked. */
interface Opened {
  readonly kind: 'opened';
  readonly value: unknown;
}

/** From the bytes of a message to JSON. A frame that is too large is read only for the number that it refuses. */
export function openFrame(bytes: Buffer, isBinary: boolean): Opened | FrameRefusal {
  if (isBinary) return refusal('not-text', '', 'Frames are text messages; send the JSON as text, not as binary.');
  const text = bytes.toString('utf8');
  const value = parsed(text);
  if (bytes.length > LARGEST_FRAME_BYTES) {
    const sentence = `The frame has ${bytes.length} bytes; the most is ${LARGEST_FRAME_BYTES}. Send fewer digits or fewer samples.`;
    return refusal('too-large', '', sentence, value);
  }
  return value === undefined ? refusal('not-json', '', 'The frame is not JSON; send one JSON object in each text message.') : { kind: 'opened', value };
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

export function readHello(value: unknown): Hello | FrameRefusal {
  if (field(value, 'kind') !== 'hello') {
    return { ...refusal('hello-first', 'kind', 'Say hello before anything else, then send this again.', value), final: false };
  }
  const protocol = field(value, 'protocol');
  if (protocol !== PROTOCOL_VERSION && protocol !== undefined) {
    return refusal('wrong-protocol', 'protocol', `This server speaks protocol ${PROTOCOL_VERSION}; say hello with that one.`);
  }
  const hello = helloSchema.safeParse(value);
  if (hello.success) return hello.data;
  const { path, sentence } = complaint(hello.error);
  return refusal('malformed', path, sentence);
}

export function readDeviceFrame(value: unknown): DeviceFrame | FrameRefusal {
  if (field(value, 'kind') === 'hello') return refusal('hello-twice', 'kind', 'This connection has said hello; open another one to say it anew.');
  const frame = deviceFrameSchema.safeParse(value);
  if (frame.success) return frame.data;
  const { path, sentence } = complaint(frame.error);
  return refusal('malformed', path, sentence, value);
}

function refusal(code: RefusalCode, path: string, sentence: string, value?: unknown): FrameRefusal {
  const sequence = sequenceOf(value);
  return { kind: 'refusal', code, path, sentence, sequence, final: sequence !== null };
}

/** The number that a broken throw or correction claims, when it can be read. */
function sequenceOf(value: unknown): number | null {
  const kind = field(value, 'kind');
  const sequence = field(value, 'sequence');
  const numbered = kind === 'throw' || kind === 'correction';
  return numbered && Number.isSafeInteger(sequence) && (sequence as number) >= 1 ? (sequence as number) : null;
}

function field(value: unknown, name: string): unknown {
  return typeof value === 'object' && value !== null ? (value as Record<string, unknown>)[name] : undefined;
}
