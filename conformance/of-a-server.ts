import { Line } from './line.ts';
import type { Finding } from './rule.ts';
import { helloWith, SERVER_RULES, type Visit } from './server-rules.ts';

export interface ServerAsked {
  /** Of the device door, such as ws://127.0.0.1:8080/device. */
  readonly url: string;
  readonly token: string;
  /** Throws are stored on it, so it should be one of its own. */
  readonly mound: string;
  /** Before the names of the runs, which must be new to the server. */
  readonly runs: string;
  /** How long an answer may take. */
  readonly waitMs: number;
  /** Called with how many rules have been looked at. */
  onRule?(count: number): void;
}

/**
 * Plays a device's part against a server and says of every rule of the protocol whether the server keeps it.
 * A few dozen throws are stored on the mound. A server that cannot be reached breaks the first rule.
 */
export async function askServer(asked: ServerAsked): Promise<Finding[]> {
  const findings: Finding[] = [];
  for (const [index, { rule, sentence, visit }] of SERVER_RULES.entries()) {
    const lines: Line[] = [];
    const seen = await visit(visitOf(asked, `${asked.runs}-${index + 1}`, lines)).catch((error: Error) => error.message || String(error));
    await Promise.all(lines.map((line) => line.close()));
    findings.push({ rule, sentence, outcome: seen === null ? 'kept' : 'broken', seen });
    asked.onRule?.(findings.length);
  }
  return findings;
}

function visitOf({ url, token, mound, waitMs }: ServerAsked, run: string, lines: Line[]): Visit {
  return {
    async open() {
      const line = await Line.open(url, waitMs);
      lines.push(line);
      return line;
    },
    hello: (changed = {}) => helloWith({ mound, token }, run, changed),
  };
}
