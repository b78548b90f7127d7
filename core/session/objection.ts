/** Why a statement of a coach cannot be stored now: what, where, and what to do. */
export interface Objection {
  readonly code: string;
  readonly path: string;
  readonly sentence: string;
}
