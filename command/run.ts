import { CommanderError } from 'commander';
import { EXIT, Failure, FoundWrong } from './failure.ts';
import { offpace } from './offpace.ts';
import { remark } from './talk.ts';

/** Runs one command as the whole of this program. */
export async function runAsProgram(args: readonly string[], home: string): Promise<never> {
  process.stdout.on('error', endWhenNobodyReads);
  process.exit(await runOffpace(args, home));
}

/**
 * Runs one command and says in one sentence why it could not.
 * @param home the folder in which data folders that nobody named lie
 * @returns the exit code
 */
export async function runOffpace(args: readonly string[], home: string): Promise<number> {
  try {
    await offpace(home).parseAsync(args, { from: 'user' });
    return EXIT.done;
  } catch (error) {
    if (error instanceof CommanderError && error.exitCode === 0) return EXIT.done;
    if (error instanceof FoundWrong) return error.exitCode;
    const { sentence, exitCode } = trouble(error);
    remark(sentence);
    await tellStarter(sentence);
    return exitCode;
  }
}

/** A failure that was foreseen is one sentence; a bug keeps its stack, for whoever mends it. */
function trouble(error: unknown): { readonly sentence: string; readonly exitCode: number } {
  if (error instanceof Failure) return { sentence: error.message, exitCode: error.exitCode };
  if (error instanceof CommanderError) return { sentence: asSentence(error.message), exitCode: EXIT.wronglyAsked };
  const { syscall, message, stack } = error as NodeJS.ErrnoException;
  return { sentence: syscall === undefined ? (stack ?? String(error)) : message, exitCode: EXIT.refused };
}

/** "error: unknown option '--prot'" and a guess on the next line. */
function asSentence(message: string): string {
  const [first = '', guess] = message.replace(/^error: /, '').replaceAll(/[.\s]+$/g, '').split('\n');
  const meant = guess === undefined ? '' : ` ${guess.replace('(Did', '(did').replace(/\)?$/, ')')}`;
  return `${first.charAt(0).toUpperCase()}${first.slice(1)}${meant}; --help lists what there is.`;
}

/** A program that started this one reads no terminal. */
function tellStarter(sentence: string): Promise<void> {
  return new Promise((resolve) => {
    if (process.send === undefined) resolve();
    else process.send({ kind: 'failed', sentence }, () => resolve());
  });
}

/** `offpace … | head` has read enough. */
function endWhenNobodyReads({ code }: NodeJS.ErrnoException): void {
  if (code === 'EPIPE') process.exit(EXIT.done);
}
