import { stripVTControlCharacters } from 'node:util';

/** Something a person can mend: shown as one sentence, never as a stack trace. */
export class Trouble extends Error {
  /**
   * @param {string} sentence what is wrong, where, and what to do
   * @param {number} exitCode 2 when the command was given wrongly, 1 for everything else
   */
  constructor(sentence, exitCode = 1) {
    super(sentence);
    this.name = 'Trouble';
    this.exitCode = exitCode;
  }
}

/**
 * Runs a command; trouble becomes its sentence on stderr and its exit code.
 * @param {() => Promise<void>} command
 */
export async function withoutStackTraces(command) {
  try {
    await command();
  } catch (error) {
    if (!(error instanceof Trouble)) throw error;
    process.stderr.write(`${error.message}\n`);
    process.exit(error.exitCode);
  }
}

/**
 * What a failed tool said, without the lines that only tell where in the tool's own code it was.
 * @param {string} output
 * @param {number} [mostLines]
 */
export function showOutput(output, mostLines = 200) {
  const told = stripVTControlCharacters(output).trim().split('\n').filter((line) => !/^(?:npm error)?\s+at .+[:)]/.test(line));
  process.stderr.write(`${told.slice(0, mostLines).join('\n')}\n`);
}
