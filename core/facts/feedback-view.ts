import type { FeedbackMode, ThrowGuess } from './feedback-says.ts';

/** What Glance shows now. `waits`: quiet until so many more throws. */
export type FeedbackNow =
  | { readonly kind: 'nothing-thrown' }
  | { readonly kind: 'ask-first'; readonly place: number }
  | { readonly kind: 'full'; readonly place: number; readonly because: 'every-throw' | 'outside-band' | 'not-judged' | 'its-turn' }
  | { readonly kind: 'quiet-good'; readonly place: number }
  | { readonly kind: 'waits'; readonly more: number }
  | { readonly kind: 'summary'; readonly places: readonly number[]; readonly onTarget: number; readonly judged: number }
  | { readonly kind: 'no-feedback' };

/** Where a mode comes from and how sure that is; one line on Glance and Bench says it. */
export interface FeedbackSource {
  readonly source: 'schmidt-1989-winstein-1990' | 'sherwood-1988-cruz-2018' | 'practice-is-not-learning';
  readonly sure: 'old-small-tasks' | 'plausible' | 'agreed';
}

export interface FeedbackView {
  readonly mode: FeedbackMode;
  /** The athlete says what the throw was before the numbers come. */
  readonly askFirst: boolean;
  readonly now: FeedbackNow;
  /** What the athlete said of the newest throw that feedback is about; null where nothing was said. */
  readonly guess: ThrowGuess | null;
  readonly basis: FeedbackSource;
}
