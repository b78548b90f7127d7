import { test } from 'vitest';
import { fireAtAllDoors } from './all-doors.ts';

test('a million cases at the doors of devices, screens and HTTP bring no crash, no fault and nothing unanswered', async () => {
  await fireAtAllDoors({ devices: 850_000, viewers: 80_000, hellos: 5_000, http: 65_000 });
});
