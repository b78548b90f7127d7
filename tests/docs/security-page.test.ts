import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';

const ROOT = new URL('../../', import.meta.url);
const PAGE = readFileSync(new URL('docs/security.md', ROOT), 'utf8');
const [held = '', notHeld = ''] = PAGE.slice(PAGE.indexOf('### Held')).split('### Not held');

/** The cells of the table rows that begin with an item of the standard. */
function rows(part: string): string[][] {
  return part.split('\n').filter((line) => /^\| \d/.test(line)).map((line) => line.split('|').slice(1, -1).map((cell) => cell.trim()));
}

/** Whether a test file has a test of exactly this title. */
function stands(file: string, title: string): boolean {
  const source = existsSync(new URL(file, ROOT)) ? readFileSync(new URL(file, ROOT), 'utf8') : '';
  return [`('${title}', `, `(\`${title}\`, `].some((written) => source.includes(written));
}

describe('The page on who may come in', () => {
  test('names for every item that it says is held a test that stands there', () => {
    const named = rows(held).map(([item = '', , , by = '']) => ({ item, test: /^`(tests\/[^`]+)` › (.+)$/.exec(by) }));
    expect(named.length).toBeGreaterThan(30);
    expect(named.filter(({ test: found }) => found === null || !stands(found[1]!, found[2]!)).map(({ item }) => item)).toEqual([]);
  });

  test('would find out that a test is gone', () => {
    expect(stands('tests/server/access/may.test.ts', 'what a screen says of itself gives up rights and never gains any')).toBe(true);
    expect(stands('tests/server/access/may.test.ts', 'what a screen says of itself')).toBe(false);
    expect(stands('tests/server/access/gone.test.ts', 'what a screen says of itself gives up rights and never gains any')).toBe(false);
  });

  test('says of every item once whether it is held, and why it is not', () => {
    const items = [...rows(held), ...rows(notHeld)].flatMap(([item = '']) => item.split(', '));
    expect(items.filter((item, index) => items.indexOf(item) !== index)).toEqual([]);
    expect(items.filter((item) => !/^\d{1,2}\.\d{1,2}\.\d{1,2}$/.test(item))).toEqual([]);
    expect(rows(notHeld).filter(([, , , why = '']) => why.length < 10)).toEqual([]);
  });

  test('names files and routes that are there', () => {
    for (const file of ['server/access/may.ts', 'tests/browser/let-in.spec.ts']) {
      expect(PAGE).toContain(`\`${file}\``);
      expect(existsSync(new URL(file, ROOT))).toBe(true);
    }
    const routes = readFileSync(new URL('server/api/access-routes.ts', ROOT), 'utf8');
    for (const [, method, address] of PAGE.matchAll(/^ {4}(POST|GET|DELETE) +\/api(\S+)/gm)) expect(routes).toContain(`routes.${method!.toLowerCase()}('${address!.replace('<id>', ':id')}'`);
  });
});
