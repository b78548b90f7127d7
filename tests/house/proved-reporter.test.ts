import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import type { TestModule, Vitest } from 'vitest/node';
import { ProvedReporter } from '../../scripts/steps/proved-reporter.mjs';
import { folderForTest } from '../server/folder.ts';

/** One run of the long checks of some files, each with one check that found something. */
function ran(page: string, files: readonly string[], isPart: boolean): void {
  const reporter = new ProvedReporter(page);
  reporter.onInit({ filenamePattern: isPart ? [...files] : [], config: {} } as unknown as Vitest);
  const modules = files.map((file) => {
    const check = { id: `of ${file}`, fullName: `what ${file} holds`, diagnostic: () => ({ duration: 2000 }), result: () => ({ state: 'passed' }) };
    return { relativeModuleId: file, children: { allTests: () => [check] } } as unknown as TestModule;
  });
  for (const file of files) reporter.onUserConsoleLog({ content: `found in ${file}\n`, taskId: `of ${file}`, type: 'stdout', time: 0, size: 0 });
  reporter.onTestRunEnd(modules);
}

const sections = (page: string): string[] => [...readFileSync(page, 'utf8').matchAll(/^## (.+)$/gm)].map(([, file]) => file!);

test('a long check that is run by itself begins the page where there is none', () => {
  const page = path.join(folderForTest(), 'prove.md');
  ran(page, ['tests/a.prove.ts'], true);
  expect(readFileSync(page, 'utf8')).toMatch(/^# What the long checks found\n[\s\S]*\n## tests\/a\.prove\.ts\n\nRun on .+\.\n\n- passed, 2 s: what tests\/a\.prove\.ts holds\n {2}- found in tests\/a\.prove\.ts\n$/);
});

test('it writes its own section and leaves the others, and a whole run writes all of it anew', () => {
  const page = path.join(folderForTest(), 'prove.md');
  ran(page, ['tests/a.prove.ts', 'tests/c.prove.ts'], false);
  const before = readFileSync(page, 'utf8').replaceAll('passed, 2 s', 'passed, 9 s');
  writeFileSync(page, before);
  ran(page, ['tests/b.prove.ts'], true);
  expect(sections(page)).toEqual(['tests/a.prove.ts', 'tests/b.prove.ts', 'tests/c.prove.ts']);
  expect(readFileSync(page, 'utf8').match(/passed, \d s/g)).toEqual(['passed, 9 s', 'passed, 2 s', 'passed, 9 s']);
  ran(page, ['tests/b.prove.ts'], false);
  expect(sections(page)).toEqual(['tests/b.prove.ts']);
});
