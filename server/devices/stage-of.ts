import type { Stage } from '../../core/facts/vocabulary.ts';
import { sessionIn, throwIn, type Ledger } from '../../core/session/ledger.ts';

export interface StageHere {
  readonly stage: Stage;
  readonly distanceM: number;
}

/**
 * The stage that a throw is judged by: with a place, that of the throw which stands there; with null, that of the session
 * which has the mound. Null where nobody has said.
 */
export function stageOf(ledger: Ledger, place: number | null): StageHere | null {
  if (place !== null) {
    const thrown = throwIn(ledger, place);
    return thrown === undefined || thrown.session === null ? null : (thrown.tags[thrown.session] ?? null);
  }
  return ledger.active === null ? null : (sessionIn(ledger, ledger.active) ?? null);
}
