import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { writeIntoPage } from '../../studies/evidence-page.ts';
import { missedBy, sectionText } from '../../studies/section.ts';
import { shareOf } from '../../studies/share.ts';

describe('a bound', () => {
  it('that is kept says nothing, and one that is missed says by how much', () => {
    expect(missedBy('normal', shareOf(2, 100), { atMost: 0.02 })).toEqual([]);
    expect(missedBy('found', shareOf(83, 100), { atLeast: 0.83 })).toEqual([]);
    expect(missedBy('beside', shareOf(99, 100), null)).toEqual([]);
    expect(missedBy('normal', shareOf(3, 100), { atMost: 0.025 })).toEqual(['normal: 3.00 ± 1.71 % where at most 2.5 % was promised.']);
    expect(missedBy('found', shareOf(82, 100), { atLeast: 0.83 })).toEqual(['found: 82.00 ± 3.84 % where at least 83 % was promised.']);
  });

  it('that was missed stands under its table', () => {
    const section = { title: 'T', about: ['About.'], header: ['a', 'b'], rows: [['1', '2']], missed: ['too many.'] };
    expect(sectionText(section)).toBe('### T\n\nAbout.\n\n| a | b |\n| --- | --- |\n| 1 | 2 |\n\n**Missed: too many.**');
  });
});

describe('the page that shows the study', () => {
  let folder: string;
  beforeAll(() => (folder = mkdtempSync(path.join(tmpdir(), 'offpace-page-'))));
  afterAll(() => rmSync(folder, { recursive: true }));

  it('gets the new output in place of the old, and keeps what stands around it', () => {
    const file = path.join(folder, 'page.md');
    const begin = '<!-- study: what stands between these lines is written by `npm run study` -->';
    writeFileSync(file, `before\n${begin}\nold\n<!-- study: end -->\nafter\n`);
    writeIntoPage(file, 'new');
    writeIntoPage(file, 'newer\n');
    expect(readFileSync(file, 'utf8')).toBe(`before\n${begin}\n\nnewer\n\n<!-- study: end -->\nafter\n`);
  });

  it('that has lost its place is refused', () => {
    const file = path.join(folder, 'lost.md');
    writeFileSync(file, 'nothing');
    expect(() => writeIntoPage(file, 'new')).toThrow('has lost the two lines');
  });
});
