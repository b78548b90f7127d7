import { chmodSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { browserOnPath, namedBrowser } from '../../scripts/steps/browser.mjs';

const folder = mkdtempSync(path.join(tmpdir(), 'offpace-browser-'));
afterAll(() => rmSync(folder, { recursive: true }));

function program(place: string, mode = 0o755): string {
  const full = path.join(folder, place);
  mkdirSync(path.dirname(full), { recursive: true });
  writeFileSync(full, '#!/bin/sh\n');
  chmodSync(full, mode);
  return full;
}

const onPath = (...folders: string[]) => browserOnPath(folders.map((name) => path.join(folder, name)).join(path.delimiter));

describe('the browser for browser tests', () => {
  test('is the one that OFFPACE_CHROMIUM names', () => {
    const own = program('own/my-chromium');
    expect(namedBrowser({ OFFPACE_CHROMIUM: own })).toBe(own);
    expect(namedBrowser({ OFFPACE_CHROMIUM: '' })).toBeNull();
    expect(namedBrowser({})).toBeNull();
  });

  test('a name where no program is, is said and never passed over', () => {
    expect(() => namedBrowser({ OFFPACE_CHROMIUM: '/nowhere/chromium' })).toThrow(
      'OFFPACE_CHROMIUM is "/nowhere/chromium", where there is no program; give the path of a Chromium, or unset it.',
    );
  });

  test('otherwise is found on the PATH, Chromium before any other of its family', () => {
    const chrome = program('first/google-chrome');
    const chromium = program('second/chromium');
    expect(onPath('first', 'second')).toBe(chromium);
    expect(onPath('first')).toBe(chrome);
  });

  test('without windows goes by a name of its own and is never taken for a whole one', () => {
    const shell = program('fourth/chromium-headless-shell');
    expect(browserOnPath(path.join(folder, 'fourth'), ['chromium-headless-shell'])).toBe(shell);
    expect(onPath('fourth')).toBeNull();
  });

  test('is not a file that cannot be run', () => {
    program('third/chromium', 0o644);
    expect(onPath('third')).toBeNull();
  });
});
