import { expect, type Page } from '@playwright/test';
import { easyFrame, WORKED_THROWS } from './by-hand.ts';
import { changeupIsNext } from './changeup-next.ts';
import { expectAccessible } from './fits.ts';
import { test } from './with-server.ts';

/** Milliseconds between frames, as unevenly as a phone films that has much else to do. */
const JERKY_MS = [40, 150, 12, 12, 12, 40, 40, 40, 40, 40, 40];

/** A few frames of a brightening square, filmed by the browser itself. */
async function filmed(page: Page, gapsMs: readonly number[]): Promise<Buffer> {
  const base64 = await page.evaluate(async (gaps) => {
    const canvas = Object.assign(document.createElement('canvas'), { width: 64, height: 48 });
    const paint = canvas.getContext('2d')!;
    const stream = canvas.captureStream(0);
    const [track] = stream.getVideoTracks() as [CanvasCaptureMediaStreamTrack];
    const recorder = new MediaRecorder(stream, { mimeType: 'video/webm;codecs=vp8' });
    const parts: Blob[] = [];
    recorder.ondataavailable = ({ data }) => parts.push(data);
    const stopped = new Promise((resolve) => { recorder.onstop = resolve; });
    recorder.start();
    for (const [index, gapMs] of gaps.entries()) {
      paint.fillStyle = `rgb(${index * 15}, 40, 80)`;
      paint.fillRect(0, 0, 64, 48);
      track.requestFrame();
      // oxlint-disable-next-line no-await-in-loop -- a film takes its time
      await new Promise((resolve) => setTimeout(resolve, gapMs));
    }
    recorder.stop();
    await stopped;
    const bytes = new Uint8Array(await new Blob(parts).arrayBuffer());
    return btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(''));
  }, gapsMs);
  return Buffer.from(base64, 'base64');
}

test('a video is laid beside a throw, stays in this browser, is stepped frame by frame, and stands beside that of the throw it is held against', async ({ page, server, coach, device }) => {
  await changeupIsNext(coach, device);
  for (const [index, worked] of WORKED_THROWS.entries()) await device.throws(6 + index, easyFrame(worked));
  await coach.say({ kind: 'session-closed', session: 's1' });
  const sent: string[] = [];
  page.on('request', (request) => {
    if (request.method() !== 'GET') sent.push(request.url());
  });
  await page.goto(`${server.address}/playback/s1?throw=10&panel=video`);
  const video = { name: 'wrist.webm', mimeType: 'video/webm', buffer: await filmed(page, JERKY_MS) };
  const film = page.locator('.film');
  const picture = film.locator('video');
  const shows = async (frame: number) => expect(picture.last()).toHaveAttribute('data-shown', String(frame));

  await page.getByLabel('Choose a video file').setInputFiles({ name: 'notes.txt', mimeType: 'text/plain', buffer: Buffer.from('no film') });
  await expect(page.getByText('No frames can be read from this file.')).toBeVisible();
  await page.getByLabel('Choose a video file').setInputFiles(video);
  await expect(film.locator('.film-position')).toHaveText(/^Frame 1 of \d+$/);
  for (const frame of [1, 2, 3, 4]) {
    await page.keyboard.press('.');
    await shows(frame);
  }
  await page.keyboard.press(',');
  await shows(3);
  await page.keyboard.press(',');
  await shows(2);
  await page.keyboard.press('r');
  await expect(film.locator('.film-position')).toContainText('Frame 3 of');
  await expect(film.locator('.film-position')).toContainText('release');
  await page.getByRole('button', { name: 'A frame on' }).click();
  await expect(film.locator('.film-position')).toContainText(/\+\d+ ms from release$/);
  const [asPlayed] = /\d+(?= ms)/.exec((await film.locator('.film-position').textContent())!)!;
  await page.getByRole('combobox', { name: 'Filmed at' }).selectOption('1000');
  await expect(film.locator('.film-position')).not.toContainText(`+${asPlayed} ms`);

  await page.keyboard.press('h');
  await page.keyboard.press('ArrowRight');
  await expect(page.getByText('No video lies beside this throw yet.')).toBeVisible();
  await page.getByLabel('Choose a video file').setInputFiles(video);
  await expect(film).toHaveCount(2);
  await expect(film.first()).toContainText('Throw 6, held');
  await page.keyboard.press('.');
  await shows(1);
  await page.keyboard.press('r');
  await page.keyboard.press('.');
  // Each from its own release: the held one goes on from its own third frame.
  await expect(film.last().locator('.film-position')).toContainText('Frame 3 of');
  await expect(film.first().locator('.film-position')).not.toContainText('Frame 3 of');
  await expectAccessible(page);

  await page.reload();
  await expect(film).toHaveCount(2);
  await expect(film.last().locator('.film-position')).toHaveText(/^Frame 2 of \d+, release$/);
  await film.last().getByRole('button', { name: 'Take this video away' }).click();
  await expect(page.locator('.with-video button')).toHaveText(['6']);
  expect(sent.filter((address) => !address.includes('/socket.io/'))).toEqual([]);
});
