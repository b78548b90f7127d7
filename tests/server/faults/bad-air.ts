import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect, onTestFinished } from 'vitest';
import { randomFrom } from '../../../simulators/random.ts';
import { linesIn, shownOf } from '../crash/file-check.ts';
import { NoteTaker } from '../crash/note-taker.ts';
import { StreamingDevice, TOKEN } from '../crash/streaming-device.ts';
import { WatchingScreen } from '../crash/watching.ts';
import { folderForTest } from '../folder.ts';
import { serverForTest } from '../running.ts';
import { faultProxy, type Fault } from './fault-proxy.ts';

const MOUNDS = ['north-1', 'south-2'];

export interface BadAir {
  readonly throws: number;
  readonly notes: number;
  readonly happened: Record<Fault, number>;
}

/** Of what socket.io sends, the events and their answers; what keeps the connection itself is TCP's to deliver. */
const anEvent = (text: string): boolean => /^4[23]/.test(text);

/**
 * On two mounds a device streams, a coach takes notes and a screen watches, each behind a proxy that cuts, delays, repeats and
 * reorders their frames. At last every throw and note is in the file once, and the screens show what the file holds.
 */
export async function throughBadAir(seed: number, throwsEach: number): Promise<BadAir> {
  const dataFolder = folderForTest();
  writeFileSync(path.join(dataFolder, 'device-token'), TOKEN);
  const server = await serverForTest({ dataFolder });
  const forDevices = await faultProxy(server.address, randomFrom(seed, 'devices'));
  const forScreens = await faultProxy(server.address, randomFrom(seed, 'screens'), anEvent);
  const devices = MOUNDS.map((mound) => new StreamingDevice(forDevices.address, mound));
  const coaches = MOUNDS.map((mound) => new NoteTaker(forScreens.address, mound));
  const screens = MOUNDS.map((mound) => new WatchingScreen(forScreens.address, mound));
  onTestFinished(() => [...devices, ...coaches, ...screens].forEach((one) => one.close()));
  await Promise.all(devices.map((device) => device.answered(throwsEach)));
  for (const proxy of [forDevices, forScreens]) proxy.calm();
  await Promise.all([...devices, ...coaches].map((one) => one.finish()));
  const lines = linesIn(dataFolder);
  for (const [index, mound] of MOUNDS.entries()) {
    const here = lines.filter((line) => line.mound === mound);
    expect(here.map(({ place }) => place)).toEqual(here.map((_, at) => at + 1));
    const numbers = here.flatMap(({ said }) => (said.kind === 'throw-measured' ? [said.source.sequence] : []));
    expect(numbers.toSorted((a, b) => a - b)).toEqual(Array.from({ length: devices[index]!.sent }, (_, at) => at + 1));
    const requests = here.flatMap(({ request, place }) => (request === null ? [] : [[request, place]]));
    expect(new Map(requests as [string, number][])).toEqual(coaches[index]!.acknowledged);
    const screen = screens[index]!;
    // oxlint-disable-next-line no-await-in-loop -- one mound after the other
    await screen.until((view) => view?.place === here.length);
    expect(screen.view).toEqual(shownOf(here));
  }
  const happened = { ...forDevices.happened };
  for (const fault of Object.keys(happened) as Fault[]) happened[fault] += forScreens.happened[fault];
  return { throws: devices.reduce((sum, { sent }) => sum + sent, 0), notes: coaches.reduce((sum, { acknowledged }) => sum + acknowledged.size, 0), happened };
}
