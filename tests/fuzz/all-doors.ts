import { expect } from 'vitest';
import { fireDevices } from './device-frames.ts';
import { apiRoutesThereAre, fireHttp } from './http-requests.ts';
import { serverUnderFire } from './server-under-fire.ts';
import { fireHellos, fireViewers } from './viewer-commands.ts';

const SEED = 20_260_401;

/** Memory that a server may take more after it was warmed up: what is stored takes some, garbage takes the rest. */
const MOST_GROWTH_BYTES = 400 * 2 ** 20;

/** Fires so many cases at every door of one server. A case that is not done, a fault that the server tells of itself, or its end, is a failure. */
export async function fireAtAllDoors(cases: { readonly devices: number; readonly viewers: number; readonly hellos: number; readonly http: number }): Promise<void> {
  const server = await serverUnderFire();
  const routes = apiRoutesThereAre();
  const before = server.memoryBytes();
  const done = {
    devices: await fireDevices(server, { count: cases.devices, seed: SEED }),
    viewers: await fireViewers(server, { count: cases.viewers, seed: SEED + 1 }),
    hellos: await fireHellos(server, { count: cases.hellos, seed: SEED + 2 }),
    http: await fireHttp(server, routes, { count: cases.http, seed: SEED + 3 }),
  };
  const grownBytes = server.memoryBytes() - before;
  process.stdout.write(`  fuzz cases done: ${JSON.stringify(done)}, ${routes.length} routes, memory grown by ${Math.round(grownBytes / 2 ** 20)} MiB, seed ${SEED}\n`);
  expect(done).toEqual(cases);
  expect(server.faults()).toEqual([]);
  expect(grownBytes).toBeLessThan(MOST_GROWTH_BYTES);
  expect((await fetch(`${server.address}/api/health`)).status).toBe(200);
}
