import { WebSocket } from 'ws';
import { serverFrameSchema, type ServerFrame } from '../../core/facts/frames.ts';

/** What a device can do wrong, each against one rule. */
export type Fault =
  | 'no-hello' | 'new-run-each-time' | 'throw-before-heartbeat' | 'one-heartbeat' | 'unknown-field' | 'numbers-fall' | 'other-content-again'
  | 'takes-every-refusal-as-final' | 'sends-refused-again' | 'forgets-unanswered' | 'ignores-welcome' | 'always-returns';

/** A device program as somebody would write it in an afternoon, with at most one fault. It throws until it is stopped. */
export function thirtyLineDevice(url: string, fault: Fault | null, given = { token: 'secret', mound: 'north-1' }): () => void {
  const kept = new Map<number, object>();
  let [sequence, connections, stopped] = [0, 0, false];
  let socket: WebSocket | null = null;
  let welcomed = false;
  const timers = new Set<NodeJS.Timeout>();
  const after = (ms: number, act: () => void): void => void timers.add(setTimeout(act, ms));
  const say = (frame: object): void => socket!.send(JSON.stringify(frame));

  const connect = (): void => {
    if (stopped) return;
    connections += 1;
    welcomed = false;
    socket = new WebSocket(url);
    const run = fault === 'new-run-each-time' ? `run-${connections}` : 'run-1';
    socket.on('open', () => (fault === 'no-hello' ? say({ kind: 'heartbeat', time: 1 }) : say({ kind: 'hello', protocol: 1, device: 'thirty', run, ...given, sight: 'spin-only', axis: 'none', units: { distance: 'm', speed: 'km/h', movement: 'cm' } })));
    socket.on('message', (data) => hear(serverFrameSchema.parse(JSON.parse(String(data)))));
    socket.on('error', () => {});
    socket.on('close', (code) => {
      welcomed = false;
      if (code !== 4001 || fault === 'always-returns') after(5, connect);
    });
  };

  const hear = (frame: ServerFrame): void => {
    if (frame.kind === 'welcome') greeted(frame);
    else if (frame.kind === 'stored') kept.delete(frame.sequence!);
    else if (frame.final ? fault === 'sends-refused-again' : fault !== 'takes-every-refusal-as-final') after(5, () => sendAgain(frame.sequence!));
    else kept.delete(frame.sequence!);
  };

  const sendAgain = (number: number): void => {
    const frame = kept.get(number);
    if (frame !== undefined && welcomed) say(fault === 'other-content-again' ? { ...frame, time: 99 } : frame);
  };

  const greeted = ({ settledThrough, gaps, heartbeatSeconds }: Extract<ServerFrame, { kind: 'welcome' }>): void => {
    welcomed = true;
    const seen = gaps.at(-1)?.[1] ?? settledThrough;
    const missing = (number: number): boolean => number > settledThrough && (number > seen + 1 || number === seen + 1 && gaps.length === 0 || gaps.some(([from, to]) => number >= from && number <= to));
    if (fault !== 'ignores-welcome') for (const number of kept.keys()) if (!missing(number)) kept.delete(number);
    if (fault === 'forgets-unanswered') kept.clear();
    const beat = (): void => {
      if (!welcomed) return;
      say({ kind: 'heartbeat', time: sequence });
      if (fault !== 'one-heartbeat') after(heartbeatSeconds * 1000, beat);
    };
    if (fault === 'throw-before-heartbeat') after(40, beat);
    else beat();
    for (const number of [...kept.keys()].toSorted((a, b) => a - b)) sendAgain(number);
  };

  const pitch = (): void => {
    sequence += 1;
    const number = fault === 'numbers-fall' ? 1000 - sequence : sequence;
    kept.set(number, { kind: 'throw', sequence: number, time: 1000 * sequence, body: { summary: { releaseSpeed: 128 } }, ...(fault === 'unknown-field' ? { colour: 'red' } : {}) });
    if (welcomed) say(kept.get(number)!);
    if (!stopped) after(10, pitch);
  };

  connect();
  pitch();
  return () => {
    stopped = true;
    for (const timer of timers) clearTimeout(timer);
    socket?.terminate();
  };
}
