import { expect, test } from 'vitest';
import { runNode } from './run-command.ts';

/** Three steps in a process of their own; the middle one ends with the given exit code. */
const threeSteps = (code: number) => `
  import { programStep, runSteps } from './scripts/steps/program-step.mjs';
  import { withoutStackTraces } from './scripts/prepare/trouble.mjs';
  const fail = programStep('middle', ['tests', 'house', 'exit.mjs'], ['${code}']);
  await withoutStackTraces(() => runSteps([['first', async () => {}], fail, ['last', async () => console.log('reached')]]));
`;

const run = (code: number) => runNode(['--input-type=module', '--eval', threeSteps(code)]).ended;

test('steps run in order, each with its time', async () => {
  const { code, out } = await run(0);
  expect(code).toBe(0);
  expect(out.match(/^── \w+/gm)).toEqual(['── first', '── first', '── middle', '── middle', '── last', '── last']);
  expect(out).toMatch(/── middle: passed in \d+\.\d s/);
  expect(out).toMatch(/All 3 steps passed in \d+\.\d s\.\n$/);
});

test('the first step that fails ends the run with its name, and nothing after it is tried', async () => {
  const { code, out, err } = await run(3);
  expect(code).toBe(1);
  expect(out).not.toContain('reached');
  expect(err).toBe('\nThe step "middle" failed (exit code 3); what it found stands above.\n');
});
