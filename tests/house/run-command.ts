import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const HOUSE = fileURLToPath(new URL('../..', import.meta.url));

interface Ended {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** A command typed in the project's folder, as npm would run it. */
interface Command {
  readonly said: (words: RegExp) => Promise<RegExpExecArray>;
  readonly interrupt: () => void;
  readonly ended: Promise<Ended>;
}

/** Starts Node with these arguments; `said` waits for words on stdout and fails when the command ends without them. */
export function runNode(args: readonly string[]): Command {
  const { npm_lifecycle_event: _, INIT_CWD: __, ...env } = process.env;
  const child = spawn(process.execPath, args, { cwd: HOUSE, env, stdio: ['ignore', 'pipe', 'pipe'] });
  let out = '';
  let err = '';
  child.stderr.on('data', (piece: Buffer) => {
    err += piece.toString();
  });
  child.stdout.on('data', (piece: Buffer) => {
    out += piece.toString();
  });
  const ended = new Promise<Ended>((resolve) => {
    child.on('close', (code) => resolve({ code, out, err }));
  });
  const said = (words: RegExp) =>
    new Promise<RegExpExecArray>((resolve, reject) => {
      const look = () => {
        const found = words.exec(out);
        if (found !== null) resolve(found);
      };
      child.stdout.on('data', look);
      look();
      void ended.then(({ code }) => reject(new Error(`ended with ${code} before it said ${words}:\n${out}\n${err}`)));
    });
  return { said, interrupt: () => child.kill('SIGINT'), ended };
}
