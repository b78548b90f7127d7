import { vi } from 'vitest';
import { runOffpace } from '../../command/run.ts';

interface Ended {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** Runs a command in this process, as if it had been typed, and gives back what it said. */
export const typed = (...args: string[]): Promise<Ended> => typedHearing(() => {}, ...args);

/** The same, and tells of every remark the moment it is made. */
export async function typedHearing(hear: (remark: string) => void, ...args: string[]): Promise<Ended> {
  const said = { out: '', err: '' };
  const spies = [
    vi.spyOn(process.stdout, 'write').mockImplementation((text) => Boolean((said.out += String(text)))),
    vi.spyOn(process.stderr, 'write').mockImplementation((text) => {
      said.err += String(text);
      hear(String(text));
      return true;
    }),
  ];
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
