import { test as base } from '@playwright/test';
import { connectCoach, type TestCoach } from './coach.ts';
import { connectDevice, type TestDevice } from './device.ts';
import { startServer, temporaryFolder, type TestServer } from './server.ts';

interface Parts {
  readonly server: TestServer;
  readonly coach: TestCoach;
  readonly device: TestDevice;
}

/** A test with a server of its own on an empty data folder, a coach, and a device on mound north-1; each is made when it is asked for. */
export const test = base.extend<Parts>({
  // oxlint-disable-next-line no-empty-pattern -- the runner reads from the pattern what a part needs: nothing
  server: async ({}, use) => {
    const { folder, remove } = temporaryFolder();
    const server = await startServer(folder);
    await use(server);
    await server.stop();
    remove();
  },
  coach: async ({ server }, use) => {
    const coach = await connectCoach(server, 'north-1');
    await use(coach);
    coach.close();
  },
  device: async ({ server }, use) => {
    const device = await connectDevice(server);
    await use(device);
    await device.close();
  },
});
