import { LARGEST_FRAME_BYTES, PROTOCOL_VERSION, type RefusalCode, type ServerFrame, type ThrowBody } from '../core/facts/frames.ts';
import { BODIES, UNITS } from './bodies.ts';
import { inWords, type Heard, type Line } from './line.ts';

/** How a rule meets the server: each takes a run of its own, so that no rule rests on another. */
export interface Visit {
  /** A connection that has not said hello. */
  open(): Promise<Line>;
  hello(changed?: object): object;
}

/** A rule of the protocol for servers, and a visit that shows whether it is kept: null, or what was seen instead. */
export interface ServerRule {
  readonly rule: string;
  readonly sentence: string;
  visit(visit: Visit): Promise<string | null>;
}

const TIME = 1_932_829_513_000;

export const SERVER_RULES: readonly ServerRule[] = [
  {
    rule: 'welcome',
    sentence: 'A hello with the token is answered with welcome, and of a new run nothing is settled.',
    visit: async (visit) => {
      const line = await visit.open();
      line.say(visit.hello());
      return wants(await line.next(), 'a welcome with settledThrough 0 and no gaps', (frame) => frame.kind === 'welcome' && frame.settledThrough === 0 && frame.gaps.length === 0);
    },
  },
  ...(['path', 'constant', 'summary'] as const).map((shape): ServerRule => ({
    rule: `stores-${shape}`,
    sentence: `A throw told as ${shape} is answered with stored and its number.`,
    visit: async (visit) => isStored(await told(await welcomed(visit), thrown(1, BODIES[shape])), 1),
  })),
  {
    rule: 'answers-again',
    sentence: 'The same frame sent again is answered as stored again.',
    visit: async (visit) => {
      const line = await welcomed(visit);
      await told(line, thrown(1));
      return isStored(await told(line, thrown(1)), 1);
    },
  },
  {
    rule: 'keeps-what-is-stored',
    sentence: 'The same number with another content is finally refused, and what is stored stays.',
    visit: async (visit) => {
      const line = await welcomed(visit);
      await told(line, thrown(1));
      return isRefused(await told(line, thrown(1, BODIES.constant)), 'body-differs', { sequence: 1, final: true }) ?? isStored(await told(line, thrown(1)), 1);
    },
  },
  {
    rule: 'names-the-fault',
    sentence: 'A throw that is not in the protocol is finally refused, and path leads to the place.',
    visit: async (visit) => isRefused(await told(await welcomed(visit), thrown(1, { summary: { releaseSpeed: 'fast' } })), 'malformed', { sequence: 1, final: true, path: 'body.summary.releaseSpeed' }),
  },
  {
    rule: 'settles-what-it-refused',
    sentence: 'A number that was finally refused stays refused, whatever comes under it.',
    visit: async (visit) => {
      const line = await welcomed(visit);
      await told(line, thrown(1, { summary: {} }));
      return isRefused(await told(line, thrown(1)), 'refused-before', { sequence: 1, final: true });
    },
  },
  {
    rule: 'refuses-the-impossible',
    sentence: 'A throw of 400 mph is finally refused as impossible.',
    visit: async (visit) => isRefused(await told(await welcomed(visit), thrown(1, { summary: { releaseSpeed: 400 } })), 'impossible', { sequence: 1, final: true }),
  },
  {
    rule: 'survives-broken-frames',
    sentence: 'Text that is not JSON, a binary message and a frame that is too large are each refused, and the connection lives.',
    visit: async (visit) => {
      const line = await welcomed(visit);
      line.sayText('{"kind":');
      const notJson = isRefused(await line.next(), 'not-json', { sequence: null, final: false });
      line.sayBinary(Buffer.from(JSON.stringify(thrown(1))));
      const notText = isRefused(await line.next(), 'not-text', { sequence: null, final: false });
      line.sayText(`${JSON.stringify(thrown(1))}${' '.repeat(LARGEST_FRAME_BYTES)}`);
      const tooLarge = isRefused(await line.next(), 'too-large', { sequence: 1, final: true });
      return notJson ?? notText ?? tooLarge ?? isStored(await told(line, thrown(2)), 2);
    },
  },
  {
    rule: 'hello-first',
    sentence: 'A throw before the hello is refused without settling its number; after the hello it is taken.',
    visit: async (visit) => {
      const line = await visit.open();
      const early = isRefused(await told(line, thrown(1)), 'hello-first', { final: false });
      line.say(visit.hello());
      await line.next();
      return early ?? isStored(await told(line, thrown(1)), 1);
    },
  },
  {
    rule: 'one-hello',
    sentence: 'A second hello on a connection is refused.',
    visit: async (visit) => {
      const line = await welcomed(visit);
      line.say(visit.hello());
      return isRefused(await line.next(), 'hello-twice', { final: false });
    },
  },
  {
    rule: 'turns-a-wrong-token-away',
    sentence: 'A hello with a wrong token is refused and the connection closed with code 1008.',
    visit: async (visit) => isTurnedAway(await visit.open(), visit.hello({ token: 'not-the-token' }), 'wrong-token', 1008),
  },
  {
    rule: 'turns-another-protocol-away',
    sentence: 'A hello in another version of the protocol is refused and the connection closed with code 1008.',
    visit: async (visit) => isTurnedAway(await visit.open(), visit.hello({ protocol: PROTOCOL_VERSION + 1 }), 'wrong-protocol', 1008),
  },
  {
    rule: 'one-device-on-a-mound',
    sentence: 'A second device on the mound is refused and its connection closed with code 1013.',
    visit: async (visit) => {
      await welcomed(visit);
      return isTurnedAway(await visit.open(), visit.hello({ device: 'conformance-second' }), 'mound-busy', 1013);
    },
  },
  {
    rule: 'newest-connection-wins',
    sentence: 'When the same device connects again, the older connection is closed with code 4001.',
    visit: async (visit) => {
      const older = await welcomed(visit);
      await welcomed(visit);
      const heard = await older.next();
      return heard.kind === 'closed' && heard.code === 4001 ? null : `A close with code 4001 was awaited; seen was ${inWords(heard)}.`;
    },
  },
  {
    rule: 'corrects',
    sentence: 'A correction of a stored throw is stored; one of a throw that is not there is refused but not settled; one of a correction is finally refused.',
    visit: async (visit) => {
      const line = await welcomed(visit);
      await told(line, thrown(1));
      const mended = isStored(await told(line, correction(2, 1)), 2);
      const missing = isRefused(await told(line, correction(3, 9)), 'nothing-to-correct', { sequence: 3, final: false });
      return mended ?? missing ?? isRefused(await told(line, correction(4, 2)), 'nothing-to-correct', { sequence: 4, final: true });
    },
  },
  {
    rule: 'welcomes-back',
    sentence: 'After a reconnect the welcome of the same run says through which number all is settled, and which gaps lie above it.',
    visit: async (visit) => {
      const hello = visit.hello();
      const line = await visit.open();
      line.say(hello);
      await line.next();
      for (const sequence of [1, 2, 4]) await told(line, thrown(sequence));
      await line.close();
      const again = await visit.open();
      again.say(hello);
      return wants(await again.next(), 'a welcome with settledThrough 2 and gaps [[3,3]]', (frame) => frame.kind === 'welcome' && frame.settledThrough === 2 && JSON.stringify(frame.gaps) === '[[3,3]]');
    },
  },
];

/** A hello of this device with a run of its own. */
export function helloWith(who: { readonly mound: string; readonly token: string }, run: string, changed: object): object {
  return { kind: 'hello', protocol: PROTOCOL_VERSION, device: 'conformance', run, ...who, sight: 'full-flight', axis: 'none', units: UNITS, ...changed };
}

async function welcomed(visit: Visit): Promise<Line> {
  const line = await visit.open();
  line.say(visit.hello());
  const heard = await line.next();
  if (heard.kind !== 'frame' || heard.frame.kind !== 'welcome') throw new Error(`A welcome was awaited first; seen was ${inWords(heard)}.`);
  return line;
}

function thrown(sequence: number, body: ThrowBody | object = BODIES.summary): object {
  return { kind: 'throw', sequence, time: TIME + sequence * 20_000, body };
}

function correction(sequence: number, corrects: number): object {
  return { kind: 'correction', sequence, time: TIME + sequence * 20_000, corrects: { sequence: corrects }, body: BODIES.constant };
}

async function told(line: Line, frame: object): Promise<Heard> {
  line.say(frame);
  return line.next();
}

function wants(heard: Heard, awaited: string, holds: (frame: ServerFrame) => boolean): string | null {
  return heard.kind === 'frame' && holds(heard.frame) ? null : `Awaited was ${awaited}; seen was ${inWords(heard)}.`;
}

function isStored(heard: Heard, sequence: number): string | null {
  return wants(heard, `stored for number ${sequence}`, (frame) => frame.kind === 'stored' && frame.sequence === sequence);
}

function isRefused(heard: Heard, code: RefusalCode, rest: { readonly sequence?: number | null; readonly final: boolean; readonly path?: string }): string | null {
  return wants(heard, `refused with code ${code} and ${JSON.stringify(rest)}`, (frame) => frame.kind === 'refused' && frame.code === code && Object.entries(rest).every(([key, value]) => frame[key as keyof typeof frame] === value));
}

async function isTurnedAway(line: Line, hello: object, code: RefusalCode, closeCode: number): Promise<string | null> {
  line.say(hello);
  const refused = isRefused(await line.next(), code, { final: false });
  if (refused !== null) return refused;
  const heard = await line.next();
  return heard.kind === 'closed' && heard.code === closeCode ? null : `A close with code ${closeCode} was awaited; seen was ${inWords(heard)}.`;
}
