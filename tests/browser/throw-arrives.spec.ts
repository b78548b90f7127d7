import { expect, test } from '@playwright/test';
import { easyFrame, WORKED_THROWS } from './by-hand.ts';
import { changeupIsNext } from './changeup-next.ts';
import { connectCoach } from './coach.ts';
import { connectDevice } from './device.ts';
import { startProcess, temporaryFolder } from './server.ts';

test('a throw sent through the device door by a plain WebSocket client is seen on Wall and Glance', async ({ page, context }) => {
  const { folder, remove } = temporaryFolder();
  const server = await startProcess(folder);
  const device = await connectDevice(server);
  const coach = await connectCoach(server, 'north-1');
  try {
    await page.setViewportSize({ width: 1920, height: 1080 });
    await page.goto(`${server.address}/wall/north-1`);
    const glance = await context.newPage();
    await glance.setViewportSize({ width: 390, height: 844 });
    await glance.goto(`${server.address}/glance/north-1`);
    await changeupIsNext(coach, device);
    await expect(page.locator('.wall-count')).toContainText('5 throws');

    await device.throws(6, easyFrame(WORKED_THROWS[3]!));
    await expect(page.locator('.wall-place-words')).toHaveText('2 in deep, arm side');
    await expect(page.locator('.wall-pace-words')).toHaveText('11 mph slower');
    await expect(page.locator('.wall-count')).toContainText('6 throws');
    await expect(page.locator('g.mark.newest')).toHaveAttribute('data-on-target', 'no');
    await expect(glance.locator('.glance-what')).toHaveText('Changeup A');
    await expect(glance.locator('.glance-lead')).toHaveText('2 in deep, arm side');
    await expect(glance.locator('.glance-sentence')).toHaveText('Against your fastball: 12 in down, 7 in arm side, 11 mph slower.');

    await device.throws(7, easyFrame(WORKED_THROWS[0]!));
    await expect(page.locator('.wall-place-words')).toHaveText('On target');
    await expect(page.locator('g.mark.newest')).toHaveAttribute('data-on-target', 'yes');
    await expect(glance.locator('.glance-lead')).toHaveText('On target');
    await expect(glance.locator('.glance-throw')).toHaveAttribute('data-on-target', 'yes');
  } finally {
    coach.close();
    await device.close();
    await server.stop();
    remove();
  }
});
