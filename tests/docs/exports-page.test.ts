import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import type { Estimate, WindowView } from '../../core/facts/views.ts';
import { judgingOf } from '../../core/session/judged.ts';
import { sessionIn, thrownBy } from '../../core/session/ledger.ts';
import { sumsOf } from '../../core/session/sums.ts';
import { windowsOf } from '../../core/session/windows.ts';
import { exportQuestionSchema } from '../../server/api/export-question.ts';
import { COLUMNS, columnsOut } from '../../server/files-out/columns.ts';
import { UNIT_SYSTEMS, UNITS } from '../../server/files-out/units.ts';
import { seeded } from '../core/flight/noise.ts';
import { fiveFastballs, Story, ZONE } from '../core/session/story.ts';
import { logOf, tableOf } from '../server/files-out/given-out.ts';
import { folderForTest } from '../server/folder.ts';

const ROOT = new URL('../../', import.meta.url);
const PAGE = readFileSync(new URL('docs/exports.md', ROOT), 'utf8');

/** A session with two trials in turn, one throw of which does not count. */
function session(): Story {
  const chance = seeded(71);
  const story = new Story().open('s-1', 'ana').intent('s-1', 'four-seam');
  fiveFastballs(story);
  story.say({ kind: 'zone-set', session: 's-1', zone: ZONE, speedBand: null, reason: null });
  for (const words of ['late thumb', 'soft wrist']) story.say({ kind: 'trial-begun', session: 's-1', intent: 'changeup', grip: null, cue: { words, focus: null } });
  for (const [trial, count] of [['A', 4], ['B', 3], ['A', 5], ['B', 9]] as const) {
    story.say({ kind: 'trial-resumed', session: 's-1', trial });
    for (let one = 0; one < count; one += 1) story.throw(80 + chance.normal(), 8 + 2 * chance.normal(), -10 - 2 * chance.normal());
  }
  return story.say({ kind: 'throws-excluded', session: 's-1', places: [story.throw(60, 1, 1)], reason: 'slipped' });
}

interface Told {
  readonly trial: string;
  readonly size: WindowView['size'];
  readonly throws: number;
  readonly spread: { readonly semiMajor: number; readonly semiMinor: number; readonly area: number; readonly low: number; readonly high: number } | null;
  readonly onTarget: { readonly hits: number; readonly n: number; readonly low: number; readonly high: number } | null;
}
type Mean = { readonly mean: number; readonly low: number; readonly high: number } | null;

const meanOf = (told: Estimate): Mean => (told.kind === 'estimate' ? { mean: told.mean, low: told.low, high: told.high } : null);

/** The windows that core works out, in the form of the page's program. */
function expected(story: Story): unknown[] {
  const ledger = story.ledger();
  const [entry, thrown] = [sessionIn(ledger, 's-1')!, thrownBy(ledger, 's-1')];
  const { works } = sumsOf(entry, thrown, judgingOf(entry, thrown));
  return ['A', 'B'].flatMap((trial) => windowsOf(works[`mound/${trial}`]!.window, works[`mound/${trial}`]!.newest, true).map(({ size, count, speedMps, verticalM, armSideM, arrivalS, meanMiss, spread, onTarget }) => ({
    session: 's-1', stage: 'mound', trial, size, throws: count,
    speed: meanOf(speedMps), vertical: meanOf(verticalM), armSide: meanOf(armSideM), arrival: meanOf(arrivalS), miss: meanOf(meanMiss),
    spread: spread.kind === 'ellipse' ? { semiMajor: spread.semiMajorM, semiMinor: spread.semiMinorM, area: spread.areaM2, low: spread.areaLowM2, high: spread.areaHighM2 } : null,
    onTarget: onTarget.kind === 'share' ? { hits: onTarget.hits, n: onTarget.count, low: onTarget.low, high: onTarget.high } : null,
  })));
}

/** Where two trees of numbers differ by more than a billionth. */
function apart(one: unknown, other: unknown, where = ''): string[] {
  if (typeof one === 'number' && typeof other === 'number') return Math.abs(one - other) <= 1e-9 ? [] : [`${where}: ${one} and ${other}`];
  if (one === null || other === null || typeof one !== 'object' || typeof other !== 'object') return one === other ? [] : [`${where}: ${String(one)} and ${String(other)}`];
  return [...new Set([...Object.keys(one), ...Object.keys(other)])].flatMap((key) => apart((one as Record<string, unknown>)[key], (other as Record<string, unknown>)[key], `${where}/${key}`));
}

describe('The page about exports', () => {
  test('has a program that works out the windows of a session from its Parquet as the screens do, to a billionth', async () => {
    const story = session();
    const folder = folderForTest();
    writeFileSync(path.join(folder, 'throws.parquet'), await tableOf(logOf(story.facts), {}, 'si', 'parquet'));
    writeFileSync(path.join(folder, 'windows.mjs'), /^```js\n(.*?)^```$/ms.exec(PAGE)![1]!);
    symlinkSync(fileURLToPath(new URL('node_modules', ROOT)), path.join(folder, 'node_modules'));
    const told = JSON.parse(execFileSync(process.execPath, [path.join(folder, 'windows.mjs'), path.join(folder, 'throws.parquet')], { encoding: 'utf8' })) as Told[];
    expect(told).toHaveLength(8);
    expect(told.filter(({ spread }) => spread !== null)).toHaveLength(5);
    expect(told.some(({ onTarget }) => onTarget !== null && onTarget.hits > 0 && onTarget.hits < onTarget.n)).toBe(true);
    expect(apart(told, expected(story))).toEqual([]);
  });

  test('names every column with its unit and its meaning, as the files have them', async () => {
    const names = Object.fromEntries(UNIT_SYSTEMS.map((units) => [units, columnsOut({ units, coded: null })])) as Record<(typeof UNIT_SYSTEMS)[number], ReturnType<typeof columnsOut>>;
    const rows = names.imperial.map(({ name, type, meaning }, index) => {
      const column = COLUMNS[index];
      const same = names.metric[index]!.name === name && names.si[index]!.name === name;
      const called = same ? [name] : UNIT_SYSTEMS.map((units) => names[units][index]!.name);
      const unit = column?.quantity === undefined ? (column?.unit ?? '') : UNIT_SYSTEMS.map((units) => UNITS[units][column.quantity!].name).join(', ');
      const hidden = column?.tells === 'name' ? 'left out' : column?.tells === 'code' ? 'a code' : '';
      return `| ${[...new Set(called)].map((one) => `\`${one}\``).join(' ')} | ${type} | ${unit} | ${meaning} | ${hidden} |`;
    });
    const page = ['# The columns of a table of throws', '', 'Three names where the unit differs: imperial, metric, SI. What the words mean: [the words](../words.md). Written by `npx vitest run tests/docs -u`.', '', '| column | type | unit | meaning | without names |', '| --- | --- | --- | --- | --- |', ...rows, ''].join('\n');
    await expect(page).toMatchFileSnapshot(fileURLToPath(new URL('docs/exports/columns.md', ROOT)));
  });

  test('asks nothing that the server does not know, and leads to files that are there', () => {
    const asked = PAGE.split('\n').filter((line) => /^\| `(?:format|units|names|from)/.test(line)).flatMap((line) => [...line.split('|')[1]!.matchAll(/`(\w+)`/g)].map(([, name]) => name));
    expect(asked.toSorted()).toEqual(Object.keys(exportQuestionSchema.shape).toSorted());
    for (const [, question] of PAGE.matchAll(/\/throws\?([^']+)'/g)) expect(exportQuestionSchema.safeParse(Object.fromEntries(new URLSearchParams(question))).success).toBe(true);
    const linked = [...PAGE.matchAll(/\]\(([^)#]+)\)/g)].map(([, file]) => file!);
    expect(linked.filter((file) => !existsSync(new URL(`docs/${file}`, ROOT)))).toEqual([]);
  });
});
