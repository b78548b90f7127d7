import type { Fact } from '../facts/fact.ts';

/** When what a fact tells happened, milliseconds since 1970: what came out of a file happened when the file says, anything else when it arrived. */
export function ownTimeMs({ atMs, said }: Fact): number {
  switch (said.kind) {
    case 'session-imported': return said.openedAtMs;
    case 'throw-imported': return said.source.time;
    default: return atMs;
  }
}
