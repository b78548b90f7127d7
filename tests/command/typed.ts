import { vi } from 'vitest';
import { runOffpace } from '../../command/run.ts';

interface Ended {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** Runs a command in this process, as if it had been typed, and gives back what it said. */
export const typed = (...args: string[]): Promise<Ended> => typedHearing(() => {}, ...args);

/** The same, and tells of everything that is said the moment it is. */
export async function typedHearing(hear: (said: string) => void, ...args: string[]): Promise<Ended> {
  const said = { out: '', err: '' };
  const spies = ([['stdout', 'out'], ['stderr', 'err']] as const).map(([stream, into]) => vi.spyOn(process[stream], 'write').mockImplementation((text) => {
    said[into] += String(text);
    hear(String(text));
    return true;
  }));
  // A worker of the test runner has a parent of its own, which shall not hear of failures.
  const { send } = process;
  delete process.send;
  try {
    return { code: await runOffpace(args, '/home-of-the-project'), ...said };
  } finally {
    if (send !== undefined) process.send = send;
    for (const spy of spies) spy.mockRestore();
  }
}

/** The same as a program of its own, for one that is asked to stop: what runs in this process afterwards was not. */
export async function typedAlone(hear: (said: string) => void, ...args: string[]): Promise<Ended> {
  vi.resetModules();
  try {
    const alone = await import('./typed.ts');
    return await alone.typedHearing(hear, ...args);
  } finally {
    vi.resetModules();
  }
}
