/** Takes away the bar that is drawn at this moment. */
let clearBar = (): void => {};

/** One line of what a command found, on standard output; a bar gives way to it. */
export function say(line: string): void {
  clearBar();
  process.stdout.write(`${line}\n`);
}

/** What a command found, for a program that reads it: one line of JSON. */
export function sayJson(found: unknown): void {
  say(JSON.stringify(found));
}

/** A word beside the result, on standard error: in a pipe it does not stand among what was asked for. */
export function remark(line: string): void {
  clearBar();
  process.stderr.write(`${line}\n`);
}

const BAR_CELLS = 24;
const DRAWN_EVERY_MS = 100;

/** How far a command has come. */
export interface Progress {
  at(done: number): void;
  /** Whoever says something next ends it too. */
  end(): void;
}

/** A bar on a terminal, nothing at all in a pipe. `of` is what is counted, such as "throws". */
export function progress(total: number, of: string, to: NodeJS.WriteStream = process.stderr): Progress {
  if (!to.isTTY || total === 0) return { at() {}, end() {} };
  let drawnMs = -Infinity;
  const clear = (): void => {
    to.write('\r\u001B[K');
    clearBar = () => {};
  };
  return {
    at(done) {
      const nowMs = performance.now();
      if (nowMs - drawnMs < DRAWN_EVERY_MS && done < total) return;
      drawnMs = nowMs;
      const full = Math.round((BAR_CELLS * Math.min(done, total)) / total);
      clear();
      clearBar = clear;
      to.write(`[${'#'.repeat(full)}${'.'.repeat(BAR_CELLS - full)}] ${done} of ${total} ${of}`);
    },
    end: () => clearBar(),
  };
}
