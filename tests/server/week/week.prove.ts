import { expect, test } from 'vitest';
import { said } from '../../proved.ts';
import { weekOf } from './week.ts';

const SESSIONS = 12;
const THROWS = 60;
/** Of a closed session stays what lists and later sessions ask of it: its entry, its sums and what its trials have shown. */
const MOST_BYTES_A_SESSION = 40_000;
/** Days until everything that is made once, or kept up to a bound, is there. */
const SETTLED = 3;

test('a week of sessions and viewers leaves memory and open handles as they were', async () => {
  const evenings = await weekOf({ days: 7, sessionsOfDay: SESSIONS, throwsOfSession: THROWS, throwsAtHand: 500 });
  const settled = evenings.slice(SETTLED - 1);
  const grown = (settled.at(-1)!.heapBytes - settled[0]!.heapBytes) / ((settled.length - 1) * SESSIONS);
  said(`${7 * SESSIONS} sessions of ${THROWS} throws: heap in the evenings ${evenings.map(({ heapBytes }) => (heapBytes / 1e6).toFixed(1)).join(', ')} MB, ${(grown / 1000).toFixed(1)} kB more for each closed session since day ${SETTLED}; open handles ${JSON.stringify(settled.at(-1)!.handles)}`);
  expect(evenings.map(({ handles }) => handles)).toEqual(evenings.map(() => evenings[0]!.handles));
  expect(grown).toBeLessThan(MOST_BYTES_A_SESSION);
});
