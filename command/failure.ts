/** How a command ends, for whoever calls it from a script. */
export const EXIT = { done: 0, refused: 1, wronglyAsked: 2, brokenOff: 130 } as const;

/** Why a command did not do what was asked: one sentence that says what, where, and what to do. */
export class Failure extends Error {
  readonly exitCode: number;

  constructor(sentence: string, exitCode: number = EXIT.refused) {
    super(sentence);
    this.exitCode = exitCode;
  }
}

/** What a command found is wrong, and has been said in full already. */
export class FoundWrong extends Failure {
  constructor() {
    super('');
  }
}

/** @throws {Failure} which tells a script that the command itself was typed wrongly */
export function wronglyAsked(sentence: string): never {
  throw new Failure(sentence, EXIT.wronglyAsked);
}
