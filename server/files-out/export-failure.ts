/** Why nothing, or not all, was given out; the message is one sentence. */
export class ExportFailure extends Error {
  readonly code: 'unknown-session' | 'unknown-athlete' | 'erased';

  constructor(code: ExportFailure['code'], sentence: string) {
    super(sentence);
    this.code = code;
  }
}
