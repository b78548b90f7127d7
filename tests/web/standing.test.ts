import { expect, test } from 'vitest';
import { isRightEnded } from '../../web/standing/standing.ts';

test('only who may see no longer has lost the right to; a server in trouble takes it from nobody', () => {
  expect(['not-let-in', 'not-theirs-to-see', 'no-view', 'internal', 'malformed', 'too-many-screens', 'too-fast'].filter((code) => isRightEnded({ code }))).toEqual(['not-let-in', 'not-theirs-to-see']);
});
