import { expect, test } from 'vitest';
import { said } from '../proved.ts';
import { fireAtAllDoors } from './all-doors.ts';

const CASES = { devices: 850_000, viewers: 80_000, hellos: 5_000, http: 65_000 };

test('a million cases at the doors of devices, screens and HTTP bring no crash, no fault and nothing unanswered', async () => {
  const { grownMiB, ...fired } = await fireAtAllDoors(CASES);
  said(`cases done: ${Object.entries(fired.done).map(([door, count]) => `${count} ${door}`).join(', ')}; ${fired.faults.length} faults; memory grown by ${grownMiB.toFixed(0)} MiB`);
  expect(fired).toEqual({ done: CASES, faults: [], status: 200 });
  expect(grownMiB).toBeLessThan(600);
});
