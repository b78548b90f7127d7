import { fireDevices } from './device-frames.ts';
import { apiRoutesThereAre, fireHttp } from './http-requests.ts';
import { serverUnderFire } from './server-under-fire.ts';
import { fireHellos, fireViewers } from './viewer-commands.ts';

const SEED = 20_260_401;

export interface Cases {
  readonly devices: number;
  readonly viewers: number;
  readonly hellos: number;
  readonly http: number;
}

export interface Fired {
  readonly done: Cases;
  /** What the server tells of faults of its own, its end among them. */
  readonly faults: readonly string[];
  /** Of the server, after all cases against before: what is stored takes some, garbage takes the rest. */
  readonly grownMiB: number;
  /** Of a question about its health afterwards. */
  readonly status: number;
}

/** Fires so many cases at every door of one server. Throws at the first that is not dealt with as it must be. */
export async function fireAtAllDoors(cases: Cases): Promise<Fired> {
  const server = await serverUnderFire();
  const routes = apiRoutesThereAre();
  const before = server.memoryBytes();
  const done = {
    devices: await fireDevices(server, { count: cases.devices, seed: SEED }),
    viewers: await fireViewers(server, { count: cases.viewers, seed: SEED + 1 }),
    hellos: await fireHellos(server, { count: cases.hellos, seed: SEED + 2 }),
    http: await fireHttp(server, routes, { count: cases.http, seed: SEED + 3 }),
  };
  const grownMiB = Math.round((server.memoryBytes() - before) / 2 ** 20);
  const { status } = await fetch(`${server.address}/api/health`);
  process.stdout.write(`  fuzz cases done: ${JSON.stringify(done)}, ${routes.length} routes, memory grown by ${grownMiB} MiB, seed ${SEED}\n`);
  return { done, faults: server.faults(), grownMiB, status };
}
