import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { watch } from 'chokidar';
import type { Forwarder } from './forward.ts';
import { readMessage } from './message.ts';

/** A file that has not grown for so long is whole. */
const WHOLE_AFTER_MS = 300;

/**
 * Takes files of JSON lines from a folder until it is told to stop: each line one frame. A file whose frames are all stored goes to `done`,
 * any other to `refused`, with the reasons beside it. A file stays where it is until the device door has answered every line.
 * @throws {AdapterFailure} when the door will not have it
 */
export async function fromFolder(folder: string, forwarder: Forwarder, print: (line: string) => void, stop: AbortSignal, wholeAfterMs = WHOLE_AFTER_MS): Promise<void> {
  for (const below of ['done', 'refused']) mkdirSync(path.join(folder, below), { recursive: true });
  const waiting = new Set<string>();
  let wake = (): void => {};
  const watcher = watch(folder, {
    depth: 0,
    ignored: (place, stats) => stats?.isFile() === true && !/^[^.].*\.jsonl$/.test(path.basename(place)),
    awaitWriteFinish: { stabilityThreshold: wholeAfterMs, pollInterval: Math.min(50, wholeAfterMs) },
  });
  watcher.on('add', (file) => {
    waiting.add(file);
    wake();
  });
  watcher.on('error', (error) => print(`adapter: ${(error as Error).message}`));
  watcher.on('ready', () => print(`adapter: takes *.jsonl from ${folder}`));
  stop.addEventListener('abort', () => {
    forwarder.close();
    wake();
  }, { once: true });

  try {
    while (!stop.aborted) {
      const [file] = [...waiting].toSorted();
      if (file === undefined) await new Promise<void>((resolve) => (wake = resolve));
      else if (waiting.delete(file) && existsSync(file)) await take(file, forwarder, print);
    }
  } finally {
    forwarder.close();
    await watcher.close();
  }
}

async function take(file: string, forwarder: Forwarder, print: (line: string) => void): Promise<void> {
  const lines = readFileSync(file, 'utf8').split(/\r?\n/);
  const reasons: string[] = lines.every((line) => line.trim() === '') ? ['The file holds no line; write one JSON object a line.'] : [];
  for (const [index, line] of lines.entries()) {
    if (line.trim() === '') continue;
    const message = readMessage(line);
    if (message.kind === 'heartbeat') continue;
    const answer = message.kind === 'frame' ? await forwarder.forward(message.run, message.frame) : message;
    if (answer === null) return;
    if (answer.kind === 'refused') reasons.push(`line ${index + 1}: ${answer.code}${answer.path === '' ? '' : ` at ${answer.path}`}: ${answer.sentence}`);
  }
  const to = freeName(path.join(path.dirname(file), reasons.length === 0 ? 'done' : 'refused'), path.basename(file));
  if (reasons.length > 0) writeFileSync(`${to}.reason.txt`, `${reasons.join('\n')}\n`);
  renameSync(file, to);
  print(`adapter: ${path.basename(file)} is ${reasons.length === 0 ? 'stored' : `refused: ${reasons[0]}`}`);
}

/** Nothing that lies there already is written over. */
function freeName(folder: string, name: string): string {
  const { name: stem, ext } = path.parse(name);
  for (let count = 1; ; count += 1) {
    const place = path.join(folder, count === 1 ? name : `${stem}-${count}${ext}`);
    if (!existsSync(place)) return place;
  }
}
