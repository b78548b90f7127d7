import { writeFileSync } from 'node:fs';
import path from 'node:path';
import Database from 'libsql';
import { onTestFinished } from 'vitest';
import { runAdapter } from '../../adapters/run.ts';
import { folderForTest } from '../server/folder.ts';
import { summary } from '../server/frames.ts';
import type { TestServer } from '../server/running.ts';

export const DEVICE = { device: 'old-eye', mound: 'north-1', sight: 'spin-only', axis: 'none', units: { distance: 'ft', speed: 'mph', movement: 'in' } } as const;

/** A throw as it reaches an adapter. */
export const thrown = (sequence: number, more: object = {}) => ({ run: 'evening-1', kind: 'throw', sequence, time: 1_900_000_000_000 + sequence, body: summary(70 + sequence), ...more });

export interface RunningAdapter {
  readonly lines: readonly string[];
  /** Resolves as soon as a line like this was printed. */
  said(words: RegExp): Promise<void>;
  /** Asks it to stop. */
  stop(): Promise<{ readonly stored: number; readonly refused: number }>;
  /** Rejects with the one sentence for which it cannot go on. */
  readonly ended: ReturnType<RunningAdapter['stop']>;
}

/** An adapter as the command line runs it, from a file in a folder of its own, stopped with the test at the latest. */
export function adapt(server: Pick<TestServer, 'address' | 'tokenFile'>, from: object, more: object = {}): RunningAdapter {
  const file = path.join(folderForTest(), 'adapter.json');
  writeFileSync(file, JSON.stringify({ server: `${server.address.replace('http', 'ws')}/device`, tokenFile: server.tokenFile, device: DEVICE, from, ...more }));
  const stopping = new AbortController();
  const lines: string[] = [];
  let waiting: { readonly words: RegExp; readonly resolve: () => void }[] = [];
  const print = (line: string): void => {
    lines.push(line);
    waiting = waiting.filter(({ words, resolve }) => !words.test(line) || resolve());
  };
  const ended = runAdapter(file, print, stopping.signal);
  ended.catch(() => {});
  const stop = () => (stopping.abort(), ended);
  onTestFinished(async () => void (await stop().catch(() => null)));
  return {
    lines, ended, stop,
    said: (words) => (lines.some((line) => words.test(line)) ? Promise.resolve() : new Promise((resolve) => waiting.push({ words, resolve }))),
  };
}

/** Every frame that a server has stored of a device: run, number and the device's time, in the order of the log. */
export function storedIn({ dataFolder }: Pick<TestServer, 'dataFolder'>): string[] {
  const database = new Database(path.join(dataFolder, 'facts.db'));
  const rows = database.prepare("SELECT json_extract(said, '$.kind') AS kind, json_extract(said, '$.source.run') AS run, json_extract(said, '$.source.sequence') AS sequence, json_extract(said, '$.source.time') AS time FROM facts ORDER BY place").all() as { kind: string; run: string; sequence: number; time: number }[];
  database.close();
  return rows.map(({ kind, run, sequence, time }) => `${kind} ${run} ${sequence} at ${time}`);
}
