import { runNode } from './run-command.ts';

/** The line of a start that tells where a screen is. */
export function addressOf(screen: string): RegExp {
  return new RegExp(`^ +${screen} +(http://127\\.0\\.0\\.1:\\d+)/\\S*$`, 'm');
}

export interface WarmStart {
  /** Until the server answered with the Wall. */
  readonly tookMs: number;
  readonly status: number;
  readonly page: string;
  readonly out: string;
  readonly err: string;
}

/** Starts the server over a new data folder, asks it for the Wall, and stops it. */
export async function warmStart(dataFolder: string): Promise<WarmStart> {
  const startedMs = performance.now();
  const command = runNode(['scripts/offpace.mjs', 'serve', '--port', '0', '--data', dataFolder]);
  const [, address] = await command.said(addressOf('Wall'));
  const answer = await fetch(`${address}/wall/north-1`);
  const tookMs = performance.now() - startedMs;
  const page = await answer.text();
  command.interrupt();
  const { out, err } = await command.ended;
  return { tookMs, status: answer.status, page, out, err };
}
