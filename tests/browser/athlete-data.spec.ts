import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from '@playwright/test';
import { backUp } from '../../server/log/backup.ts';
import { CHANGEUP, coachAtMound, LEFT_HANDER, tablet, tabTo, testServer, throws, withMound } from './bench-mound.ts';
import { opening } from './coach.ts';
import { expectAccessible } from './fits.ts';

withMound();

test('a coach saves what is kept of an athlete, erases it by typing the name, and hears what still holds it', async ({ page }) => {
  const coach = await coachAtMound();
  await coach.say(opening('one', LEFT_HANDER));
  await throws(CHANGEUP, 2);
  await coach.say({ kind: 'session-closed', session: 'one' });
  await coach.say(opening('two'));
  await coach.say({ kind: 'note-written', session: 'two', text: 'throws after Ione Castellan', place: null });
  await coach.say({ kind: 'session-closed', session: 'two' });
  const { dataFolder } = testServer();
  backUp(dataFolder, path.join(dataFolder, 'backups', 'tuesday'));

  await page.setViewportSize({ width: 390, height: 844 });
  await tablet(page);
  await page.getByRole('button', { name: 'Open another session' }).click();
  await page.getByRole('button', { name: /^Ione Castellan/ }).click();
  await tabTo(page, page.getByRole('button', { name: 'Save or erase the data of Ione Castellan' }));
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'Data of Ione Castellan' })).toBeFocused();
  await expectAccessible(page, 'the data of an athlete');

  const saving = page.waitForEvent('download');
  await page.getByRole('link', { name: 'Save everything as a file' }).click();
  const saved = await saving;
  expect(saved.suggestedFilename()).toBe('offpace-ione.jsonl');
  const lines = readFileSync(await saved.path(), 'utf8').trimEnd().split('\n');
  // The last says that somebody else took the mound, and not who.
  expect(lines.length).toBe(6);
  expect(lines[1]).toContain('Ione Castellan');

  const name = page.getByLabel('To erase, type the name: Ione Castellan');
  await name.fill('Ione');
  await name.press('Enter');
  await expect(page.getByText('Type the name exactly as it stands above.')).toBeVisible();
  expect(await (await fetch(`${testServer().address}/api/athletes/ione/sessions`)).json()).toHaveLength(1);
  await name.fill('Ione Castellan');
  await page.getByRole('button', { name: 'Erase for good' }).click();
  await expect(page.getByRole('heading', { name: 'Erased' })).toBeFocused();
  await expect(page.locator('main')).toContainText('2 throws and all that was said in 1 session, on north-1.');
  await expect(page.getByRole('listitem')).toHaveText(['backups/tuesday/facts.db']);
  await expect(page.locator('main')).toContainText('1 note or remark about somebody else has this name in it. It stays.');
  await expectAccessible(page, 'what was erased');
  await page.getByRole('button', { name: 'Back' }).click();
  await expect(page.getByRole('button', { name: /^Wren Abelow/ })).toBeVisible();
  await expect(page.getByRole('button', { name: /^Ione Castellan/ })).toHaveCount(0);
  coach.close();
});
