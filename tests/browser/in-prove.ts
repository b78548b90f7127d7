import type { TestDetails } from '@playwright/test';

/** Marks what the long checks run beside the everyday ones: the same as another test here, in one more state, theme or language. */
export function inProve(is = true): TestDetails {
  return is ? { tag: '@prove' } : {};
}
