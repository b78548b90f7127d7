import { expect, test } from 'vitest';
import { fireAtAllDoors } from './all-doors.ts';
import { apiRoutesThereAre } from './http-requests.ts';

const CASES = { devices: 12_000, viewers: 5_000, hellos: 200, http: 2_800 };

test('the routes under fire are those of the application', () => {
  expect(apiRoutesThereAre()).toContainEqual({ method: 'GET', path: '/api/sessions/:id' });
  expect(apiRoutesThereAre()).toContainEqual({ method: 'POST', path: '/api/open' });
});

test('20,000 cases at the doors of devices, screens and HTTP bring no crash, no fault and nothing unanswered', async () => {
  const { grownMiB, ...fired } = await fireAtAllDoors(CASES);
  expect(fired).toEqual({ done: CASES, faults: [], status: 200 });
  expect(grownMiB).toBeLessThan(300);
}, 300_000);
