import { expect } from '@playwright/test';
import { opening } from './coach.ts';
import { test } from './with-server.ts';

const SCREENS = ['/', '/wall/north-1', '/bench/north-1', '/glance/north-1', '/plan/north-1', '/trials/wren', '/playback', '/playback/s-1', '/report/s-1', '/import', '/gallery', '/certificate', '/open', '/nowhere'];

test('every screen asks its own server alone, for everything, and the browser finds nothing that its rules forbid', async ({ page, server, coach, device }) => {
  await coach.say(opening('s-1'));
  await device.throws(1, { summary: { releaseSpeed: 82.4, verticalBreak: 7.5, horizontalBreak: -13.2 } });
  const asked: string[] = [];
  page.on('request', (request) => asked.push(request.url()));
  page.on('websocket', (line) => asked.push(line.url()));
  const faults: string[] = [];
  page.on('pageerror', (error) => faults.push(`${page.url()}: ${error.message}`));
  page.on('console', (message) => {
    // That there is nothing at an address is told by the browser as well as by the screen.
    if (message.type() === 'error' && !message.text().includes('status of 404')) faults.push(`${page.url()}: ${message.text()}`);
  });
  for (const address of SCREENS) {
    await page.goto(server.address + address);
    await page.waitForLoadState('load');
    await expect(page.locator('h1').first()).toBeVisible();
  }
  const hosts = asked.map((address) => new URL(address)).filter(({ protocol }) => /^(?:http|ws)s?:$/.test(protocol)).map(({ host }) => host);
  expect(faults).toEqual([]);
  expect(new Set(hosts)).toEqual(new Set([new URL(server.address).host]));
});
